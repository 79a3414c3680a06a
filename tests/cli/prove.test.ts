// `prove` as a maker runs it: on a folder that `make` wrote, and on one that something happened to.
import { cpSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { patience, projectFolder, run, Workshop } from './run.ts';

const shop = new Workshop();
const samples = { cup: 'tapered-cup/cup', canister: 'canister/canister', pot: 'pot/pot', mug: 'mug/mug' };
const names = Object.keys(samples) as (keyof typeof samples)[];

interface Proof {
  readonly pass: boolean;
  readonly checks: readonly {
    readonly rule: string;
    readonly value: number;
    readonly limit: number;
    readonly pass: boolean;
  }[];
}

beforeAll(async () => {
  for (const name of names) {
    const job = join(projectFolder, 'samples', `${samples[name]}.job.json`);
    await run(['make', job, '--no-pictures', '--out', shop.at(name)]);
  }
}, patience.timeout);
afterAll(() => shop.clear());

const report = (name: string): { readonly proof: Proof } => JSON.parse(shop.read(`${name}/report.json`));
const prove = async (name: string, ...args: string[]) => run(['prove', shop.at(name), ...args]);
const proofOf = async (name: string, ...args: string[]): Promise<Proof> =>
  JSON.parse((await prove(name, '--json', ...args)).out);
const failed = ({ checks }: Proof): string[] => checks.filter(({ pass }) => !pass).map(({ rule }) => rule);

/** A copy of the cup's folder, changed. */
function copy(name: string, change: (folder: string) => void): string {
  cpSync(shop.at('cup'), shop.at(name), { recursive: true });
  change(name);
  return name;
}

describe('prove', { timeout: patience.timeout }, () => {
  test.each(names)(
    'holds on a sample as made, with the same figures that make measured: %s',
    async (name) => {
      const { status, out, lines } = await prove(name, '--json');
      expect(status).toBe(0);
      expect(lines).toEqual([]);
      const proof: Proof = JSON.parse(out);
      expect(proof.pass).toBe(true);
      expect(proof).toEqual(report(name).proof);
    },
  );

  test('shows a table: each row with what was measured, its limit and the verdict', async () => {
    const { out } = await prove('cup');
    const rows = out.trimEnd().split('\n');
    expect(rows[0]).toMatch(/^rule +measured +limit +verdict +what$/);
    expect(out).toMatch(/^seam-position +0(?:\.000\d)? mm +at most 0\.01 mm +holds +/m);
    expect(out).toMatch(/^overlap +6\.000\d mm +at least 6 mm +holds +/m);
    expect(rows.at(-1)).toBe(`holds: all ${rows.length - 2} rows`);
  });

  test('ends with 1 and names the row that fails', async () => {
    const name = copy('moved', (to) => {
      const cut = shop.read(`${to}/wrap.cut.svg`);
      shop.write(
        `${to}/wrap.cut.svg`,
        cut.replace(/C([\d.]+)/, (_, x) => `C${Number(x) + 0.2}`),
      );
    });
    const { status, out, lines } = await prove(name);
    expect(status).toBe(1);
    expect(out).toMatch(/^as-guide +0\.\d+ mm +at most 0\.01 mm +FAILS/m);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain('FAILS at as-guide');
  });

  test('takes another blank, from wherever it is', async () => {
    const stations = [
      { height: 0, across: 62.5 },
      { height: 150, girth: 271 },
    ];
    const other = shop.write('other/cup.blank.json', { use: 'other', footRound: 6, lipRound: 1.5, stations });
    const proof = await proofOf('cup', '--blank', other);
    expect(failed(proof)).toContain('seam-lines');
    expect((await proofOf('cup', '--blank', shop.at('cup/blank.json'))).pass).toBe(true);
  });

  test('needs the job, the blank and the files, nothing else', async () => {
    const name = copy('bare', (to) => {
      for (const file of readdirSync(shop.at(to)))
        if (!/^(job|blank)\.json$|^wrap\.(cut|guide)\.svg$/.test(file)) rmSync(shop.at(`${to}/${file}`));
    });
    const proof = await proofOf(name);
    expect(proof.pass).toBe(true);
    // How the pattern closes is then seen in the files themselves.
    const rows = (checks: Proof['checks']) => checks.filter(({ rule }) => rule === 'repeats');
    expect(rows(proof.checks)).toEqual(rows(report('cup').proof.checks));
  });

  test('does not take other cut files in the folder for pieces of the wrap', async () => {
    const name = copy('crowded', (to) => {
      shop.write(`${to}/collar.cut.svg`, shop.read(`${to}/wrap.cut.svg`));
      shop.write(`${to}/template.guide.svg`, '<svg/>');
    });
    expect((await proofOf(name)).pass).toBe(true);
  });

  test('ends with 1 where the files of the wrap are gone', async () => {
    const name = copy('gone', (to) => {
      for (const file of ['wrap.cut.svg', 'wrap.guide.svg']) rmSync(shop.at(`${to}/${file}`));
    });
    expect(failed(await proofOf(name))).toEqual(['files']);
  });

  test.each([
    ['a folder without a job', () => shop.write('empty/note.txt', 'x') && 'empty', 'no-job'],
    [
      'a list that tells of no vessel',
      () => shop.write('none/names.json', { rows: [{ folder: '../../..' }] }) && 'none',
      'no-vessels',
    ],
    ['no folder at all', () => 'nowhere', 'unreadable'],
    ['a job that is none', () => copy('broken', (to) => shop.write(`${to}/job.json`, '{')), 'json'],
    [
      'a blank that is missing',
      () => copy('blankless', (to) => rmSync(shop.at(`${to}/blank.json`))),
      'unreadable',
    ],
  ])('ends with 2 for %s', async (_, make, rule) => {
    const { status, out, lines } = await prove(make(), '--json');
    expect(status).toBe(2);
    expect(lines).toHaveLength(1);
    expect(JSON.parse(out).checks[0].rule).toContain(rule);
  });
});
