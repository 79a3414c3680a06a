// Vessels of a list that differ, their pieces on sheets that they share: all there, proved, and failing where one is spoiled.
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { tightBox } from '../../src/geometry/measure.ts';
import { type Ran, run, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => shop.clear());

const job = {
  name: '{name}',
  blank: {
    stations: [
      { height: 0, girth: '{foot}' },
      { height: 50, girth: '{lip}' },
    ],
    use: 'other',
  },
  film: { minWidth: 0.2, minPiece: 0.5 },
  lettering: [{ text: '{name}', capHeight: 9, at: { turn: 0.5, along: 25 }, apart: false }],
  artwork: { file: 'dots.svg' },
  sheet: { across: 300, up: 200, margin: 5 },
};
const dots =
  '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="25mm" viewBox="0 0 30 25"><circle cx="15" cy="12" r="4" fill="#17566b"/></svg>';

const inShop = (...args: readonly string[]): Promise<Ran> => run(args, { cwd: shop.folder });
const textOf = (file: string): string => readFileSync(shop.at(file), 'utf8');

let made: Ran;
beforeAll(async () => {
  shop.write('cup.job.json', job);
  shop.write('dots.svg', dots);
  shop.write('names.csv', 'name;foot;lip\nPebble;240;250\nKelp;225;262\nTern;252;252\nMoor;240;246\n');
  made = await inShop('names', 'cup.job.json', 'names.csv', '--out', 'cups', '--json');
}, 120_000);

const sheets = () =>
  (
    JSON.parse(made.out).shared.sets as {
      readonly rows: readonly string[];
      readonly sheets: readonly {
        readonly file: string;
        readonly pieces: readonly { readonly id: string }[];
      }[];
    }[]
  ).flatMap((set) => set.sheets);

describe('cups of a list that differ', () => {
  test('share sheets, every piece on one, as large as in its own file', () => {
    const pieces = sheets().flatMap(({ file, pieces: own }) => own.map(({ id }) => ({ file, id })));
    expect(new Set(pieces.map(({ id }) => id))).toEqual(
      new Set(['pebble.wrap.1', 'kelp.wrap.1', 'tern.wrap.1', 'moor.wrap.1']),
    );
    // Four pieces of some 260 x 56 mm, three at most to a sheet of 290 x 190 mm within its margins; of two films.
    expect(sheets()).toHaveLength(4);
    const outline = (file: string, id?: string) =>
      readSvg(textOf(`cups/${file}`), file)
        .groups.filter(({ role }) => role === 'outline')
        .flatMap(({ paths }) => paths.filter((path) => id === undefined || path.id === id))
        .flatMap(({ contours }) => contours);
    for (const { file, id } of pieces) {
      const [folder = ''] = id.split('.');
      const sides = (box: ReturnType<typeof tightBox>) =>
        [box.maxX - box.minX, box.maxY - box.minY].sort((a, b) => a - b);
      const [onSheet, own] = [outline(file, id), outline(`${folder}/wrap.cut.svg`)].map((all) =>
        sides(tightBox(all)),
      );
      expect(onSheet?.[0]).toBeCloseTo(own?.[0] ?? 0, 3);
      expect(onSheet?.[1]).toBeCloseTo(own?.[1] ?? 0, 3);
    }
  });

  test('are told of in the list, with the sheets and their picture', () => {
    const { shared, files } = JSON.parse(made.out);
    expect(shared.proved).toBe(true);
    const own = files.filter(({ line }: { line?: number }) => line === undefined);
    expect(own.map(({ file }: { file: string }) => file)).toEqual(
      expect.arrayContaining(['sheet-1.cut.svg', 'sheet-2.cut.svg', 'sheets.svg']),
    );
    expect(textOf('cups/index.html')).toContain('href="sheet-1.cut.svg"');
    expect(textOf('cups/pebble/job-sheet.html')).toContain('with those of the other vessels');
  });

  test('are proved with their sheets; a piece moved, and a sheet lost, are named', async () => {
    const whole = await inShop('prove', 'cups');
    expect([whole.status, whole.lines]).toEqual([0, []]);
    expect(whole.out).toMatch(/pebble .* holds[\s\S]*sheet-overlap .* holds/);
    const kept = textOf('cups/sheet-1.cut.svg');
    // A list made anew with fewer rows leaves sheets that are not of it.
    writeFileSync(shop.at('cups/sheet-9.cut.svg'), kept);
    const older = await inShop('prove', 'cups');
    expect([older.status, older.lines]).toEqual([
      0,
      [expect.stringMatching(/sheet-9\.cut\.svg: not of this make/)],
    ]);
    rmSync(shop.at('cups/sheet-9.cut.svg'));
    // One node of the first outline, 0.2 mm to the right.
    const spoiled = kept.replace(
      /(data-role="outline"[\s\S]*? d="M)([-\d.]+)/,
      (_, before, x) => before + (Number(x) + 0.2),
    );
    expect(spoiled).not.toBe(kept);
    writeFileSync(shop.at('cups/sheet-1.cut.svg'), spoiled);
    const moved = await inShop('prove', 'cups');
    expect([moved.status, moved.lines]).toEqual([1, [expect.stringContaining('FAILS at sheet-lines')]]);
    rmSync(shop.at('cups/sheet-1.cut.svg'));
    const lost = await inShop('prove', 'cups');
    expect([lost.status, lost.lines]).toEqual([1, [expect.stringContaining('sheet-pieces')]]);
  }, 60_000);
});

test('for a cutter that is told the axis of its knife and was off by its test piece, sheets are proved by both', async () => {
  const cutter = { knifeOffset: 0.25, compensate: true, runOn: 0.5, measured: { across: 150.6, up: 149.5 } };
  const { artwork: _, ...plain } = job;
  shop.write('knife.job.json', { ...plain, cutter });
  shop.write('two.csv', 'name;foot;lip\nPebble;240;250\nKelp;225;262\n');
  expect((await inShop('names', 'knife.job.json', 'two.csv', '--out', 'knife')).status).toBe(0);
  // 300 mm across for a machine that makes 150.6 of 150.
  const [, width] = /width="([\d.]+)mm"/.exec(textOf('knife/sheet-1.cut.svg')) ?? [];
  expect(Number(width)).toBeCloseTo((300 * 150) / 150.6, 3);
  const whole = await inShop('prove', 'knife');
  expect([whole.status, whole.lines]).toEqual([0, []]);
  expect(whole.out).toMatch(/sheet-lines .* holds[\s\S]*knife-tip .* holds/);
  // The lines themselves in place of the axis: the tip would cut beside them.
  writeFileSync(shop.at('knife/sheet-1.cut.svg'), textOf('knife/sheet-1.guide.svg'));
  expect((await inShop('prove', 'knife')).status).toBe(1);
}, 60_000);
