// --json on what is refused: one document on standard output all the same.
import { afterAll, describe, expect, test } from 'vitest';
import { aJob, patience, run, Workshop } from './run.ts';

const shop = new Workshop();
shop.write('good.job.json', aJob());
afterAll(() => shop.clear());

describe('refused with --json', () => {
  test.each([
    { args: ['make', 'nosuch.job.json', '--json'], rule: 'unreadable' },
    { args: ['make', 'good.job.json', '--units', 'cm', '--json'], rule: 'units' },
    { args: ['make', '--json'], rule: 'usage' },
  ])('the findings are the one document on standard output: $args', patience, async ({ args, rule }) => {
    const { status, out, lines } = await run(args, { cwd: shop.folder });
    expect(status).toBe(2);
    const { checks } = JSON.parse(out);
    expect(checks.map((check: { rule: string; level: string }) => [check.rule, check.level])).toEqual([
      [rule, 'stop'],
    ]);
    expect(lines.length).toBe(1);
  });
});
