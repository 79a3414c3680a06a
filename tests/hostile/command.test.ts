// The command given drawings and readings changed at random: a status that a maker knows, words, and nothing written where it
// refuses; and the largest of hostile drawings, in a heap of half the 2 GB that nothing may take.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { patience, run, Workshop } from '../cli/run.ts';
import { rounds } from './fuzz.ts';
import { mutatedJson, mutatedSvg, pick, randomFrom } from './mutate.ts';

const workshop = new Workshop();
afterAll(() => workshop.clear());

const cases = join(import.meta.dirname, '../cases/artwork');
const drawings = readdirSync(cases).flatMap((folder) =>
  readdirSync(join(cases, folder))
    .filter((file) => file.endsWith('.svg'))
    .map((file) => readFileSync(join(cases, folder, file), 'utf8')),
);

interface Tried {
  readonly seed: number;
  readonly status: number | null;
  readonly lines: readonly string[];
}

async function tried(seed: number, args: readonly string[]): Promise<Tried | undefined> {
  const before = workshop.state();
  const { status, lines } = await run(args, { cwd: workshop.folder });
  const isKnown = status === 0 || status === 1 || status === 2;
  const isTold = status === 0 || lines.length > 0;
  const isClean = status !== 2 || workshop.state().join() === before.join();
  return isKnown && isTold && isClean ? undefined : { seed, status, lines };
}

test('drawings and readings changed at random end in 0, 1 or 2, and 2 writes nothing', patience, async () => {
  const faults: Tried[] = [];
  const seen = new Set<string>();
  const blank: unknown = JSON.parse(workshop.read('cup.blank.json'));
  for (let seed = 1; seed <= rounds(24); seed++) {
    const random = randomFrom(seed);
    let text = pick(random, drawings);
    for (let i = 0; i <= random() * 4; i++) text = mutatedSvg(text, random);
    workshop.write('art.svg', text);
    workshop.write('read.blank.json', mutatedJson(blank, random) as object);
    for (const args of [
      ['inspect', 'art.svg', '--art-across', '40mm', '--out', `seen-${seed}`],
      ['unroll', 'read.blank.json', '--out', `flat-${seed}`],
    ]) {
      const fault = await tried(seed, args);
      if (fault) faults.push(fault);
    }
  }
  for (const name of readdirSync(workshop.folder)) seen.add(name.replace(/-\d+$/, ''));
  expect(faults).toEqual([]);
  expect([...seen]).toEqual(expect.arrayContaining(['seen', 'flat']));
});

const svg = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40">${body}</svg>`;

test.each([
  { what: 'a million groups in one another', body: '<g>'.repeat(1e6) + '</g>'.repeat(1e6) },
  { what: 'ten million segments', body: `<path d="M0 0${'l1 1'.repeat(1e7)}z"/>` },
])('$what end in words within a heap of 1 GB', patience, async ({ body }) => {
  workshop.write('large.svg', svg(body));
  const { status, lines } = await run(['inspect', 'large.svg'], {
    cwd: workshop.folder,
    node: ['--max-old-space-size=1024'],
  });
  expect(status).toBe(2);
  expect(lines.join('\n')).toMatch(/large\.svg/);
});
