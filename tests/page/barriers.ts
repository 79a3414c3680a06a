// The page before an accessibility engine.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core (Deque Systems, WCAG 2.2 A and AA) finds that is serious or worse, each with its place. */
export async function barriers(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe);
  const found = await page.evaluate(async () => {
    const engine = (globalThis as unknown as { axe: { run: (how: object) => Promise<AxeFound> } }).axe;
    // What holds is only counted.
    const { violations } = await engine.run({ resultTypes: ['violations'] });
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .flatMap(({ id, nodes }) =>
        nodes.map(({ target, failureSummary }) => `${id}: ${target}: ${failureSummary}`),
      );
  });
  return found;
}

interface AxeFound {
  readonly violations: readonly {
    readonly id: string;
    readonly impact: string;
    readonly nodes: readonly { readonly target: readonly string[]; readonly failureSummary: string }[];
  }[];
}
