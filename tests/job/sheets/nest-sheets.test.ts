// Sheets of a batch: every piece on one, none over another, as far apart and from the edges as asked; proved, and spoiled.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../../src/deliver/read-svg.ts';
import { moveContour } from '../../../src/geometry/affine.ts';
import type { Contour } from '../../../src/geometry/contour.ts';
import { signedArea, tightBox } from '../../../src/geometry/measure.ts';
import { NearestFinder } from '../../../src/geometry/nearest.ts';
import { pointAt } from '../../../src/geometry/segment.ts';
import { askedOf } from '../../../src/job/proof/proof.ts';
import { type NestedSheets, nestSheets } from '../../../src/job/sheets/nest-sheets.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { proofOf } from '../../../src/prove/proof.ts';
import { expectWithin } from '../../closeness.ts';
import { paperArea } from '../../geometry/libraries.ts';
import { leafTile, madeOf, type Typed } from '../a-job.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 110, across: 80 },
  ],
};
const twoColours = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M4 15Q10 6 16 15Q10 24 4 15Z" fill="#17566b"/><path d="M24 6C30 2 36 8 32 14C28 18 22 12 24 6Z" fill="#d4532f"/></svg>`;

/** A short search, so that the tests stay quick. */
const search = { trials: 15_000 };

async function sheetsOf(typed: Typed) {
  const made = await madeOf(typed);
  const { drafts, draft, blank } = made;
  const pieces = drafts.map(({ cut, guide, mark, turned }) => ({
    stem: mark === '' ? 'wrap' : `wrap-${mark}`,
    cut,
    guide,
    turned,
  }));
  const nested = await nestSheets({ job: draft.job, pieces }, search);
  const prove = (texts: NestedSheets['texts']) =>
    proofOf(askedOf({ job: draft.job, blank }), { wraps: pieces, sheets: texts })
      .checks.filter(({ pass }) => !pass)
      .map(({ rule }) => rule);
  return { ...made, pieces, nested, prove };
}

const outlinesOf = (text: string): readonly Contour[] =>
  readSvg(text, 'a file')
    .groups.filter(({ role }) => role === 'outline')
    .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));

const cases: Readonly<Record<string, Typed>> = {
  'six wraps on sheets': {
    blank: cup,
    job: { batch: 6, sheet: { across: 320, up: 460, margin: 8, spacing: 3 } },
    tile: leafTile(30, 24),
  },
  'five plain wraps on a roll': {
    blank: cup,
    job: { batch: 5, sheet: { across: '12in', margin: 5 } },
  },
  'two plain wraps on a roll wider than it is used': {
    blank: cup,
    job: { batch: 2, sheet: { across: 600, margin: 5 } },
  },
  'panels of two colours, mirrored': {
    blank: cup,
    job: { batch: 2, sheet: { across: 200, up: 200, margin: 5, mirror: true } },
    tile: twoColours,
  },
  'a film with a grain': {
    blank: cup,
    job: { batch: 3, film: { grain: 'across' }, sheet: { across: 300, up: 600, margin: 5 } },
    tile: leafTile(30, 24),
  },
};

describe.each(Object.entries(cases))('%s', (_, typed) => {
  const made = sheetsOf(typed);

  test('covers less than is cut into: of each sheet its whole width, as far as it is used', async () => {
    const { nested, draft } = await made;
    const { across = 0, up = Number.POSITIVE_INFINITY } = draft.job.sheet ?? {};
    for (const { covered, cutInto, used } of nested.reports) {
      expect(cutInto / used).toBeCloseTo(Math.min(across, up), 6);
      expect(covered).toBeLessThan(cutInto);
    }
  });

  test('hold every piece as often as the batch takes it, on a sheet of each film', async () => {
    const { nested, drafts, draft } = await made;
    expect(nested.files.length).toBeGreaterThan(0);
    const films = new Set(nested.reports.map(({ film }) => film)).size;
    const laid = nested.reports.flatMap(({ pieces, times }) => pieces.map(() => times));
    expect(laid.reduce((a, b) => a + b, 0)).toBe(drafts.length * films * (draft.job.batch ?? 1));
    for (const { cut } of nested.texts)
      for (const outline of outlinesOf(cut)) {
        const areas = drafts.map(({ cut: own }) => Math.abs(signedArea(outlinesOf(own)[0] ?? outline)));
        const area = Math.abs(signedArea(outline));
        expectWithin(Math.min(...areas.map((own) => Math.abs(own - area))), 0, 0.05);
      }
  });

  test('hold no two pieces over one another, nor closer than the spacing, nor past the margin', async () => {
    const { nested, draft } = await made;
    const {
      across,
      up = Number.POSITIVE_INFINITY,
      margin,
      spacing,
    } = draft.job.sheet ?? { across: 0, margin: 0, spacing: 0 };
    for (const { cut } of nested.texts) {
      const { width, height } = readSvg(cut, 'a sheet');
      expectWithin(width, across, 1e-4);
      if (Number.isFinite(up)) expectWithin(height, up, 1e-4);
      const outlines = outlinesOf(cut);
      for (const outline of outlines) {
        const { minX, minY, maxX, maxY } = tightBox([outline]);
        expect(Math.min(minX, minY, width - maxX, height - maxY)).toBeGreaterThanOrEqual(margin - 1e-3);
      }
      outlines.forEach((one, i) => {
        for (const other of outlines.slice(i + 1)) {
          // A boolean of paper's own; then no place of one nearer to the other than the spacing.
          expectWithin(paperArea('intersection', [one], [other]), 0, 1e-6);
          const finder = new NearestFinder([other]);
          for (const segment of one.segments)
            for (const t of [0, 0.25, 0.5, 0.75])
              expect(finder.find(pointAt(segment, t), spacing - 1e-3)).toBeUndefined();
        }
      });
    }
  });

  test('are proved, and fail when they are spoiled', async () => {
    const { nested, prove } = await made;
    expect(prove(nested.texts)).toEqual([]);
    const [first, ...others] = nested.texts;
    if (!first) throw new Error('there is a sheet');
    const changed = (cut: string) => prove([{ ...first, cut }, ...others]);
    // A node of an outline 0.2 mm off; a piece left out, or there twice; the sheet narrower than asked.
    const outlines = /(<g data-role="outline"[\s\S]*?<path id="[^"]*" d="M)([\d.]+)/;
    expect(changed(first.cut.replace(outlines, (_all, head, x) => `${head}${Number(x) + 0.2}`))).toContain(
      'sheet-lines',
    );
    expect(prove([{ ...first, cut: '' }, ...others])).toEqual(
      expect.arrayContaining(['sheet-files', 'sheet-pieces']),
    );
    expect(prove([...nested.texts, first])).toContain('sheet-pieces');
    const path =
      /<path id="[^"]*" d="[^"]*"\/>/.exec(first.cut.slice(first.cut.indexOf('data-role="outline"')))?.[0] ??
      '';
    const doubled = changed(first.cut.replace(path, `${path}\n${path}`));
    expect(doubled).toEqual(expect.arrayContaining(['sheet-pieces', 'sheet-overlap']));
  });
});

test('mirrored sheets are those of the plain ones seen from the back, and either is told from the other', async () => {
  const job = { batch: 2, sheet: { across: 300, up: 400, margin: 5 } };
  const plain = await sheetsOf({ blank: cup, job, tile: leafTile(30, 24) });
  const mirrored = await sheetsOf({
    blank: cup,
    job: { ...job, sheet: { ...job.sheet, mirror: true } },
    tile: leafTile(30, 24),
  });
  const flip = { a: -1, b: 0, c: 0, d: 1, e: 300, f: 0 };
  plain.nested.texts.forEach(({ cut }, i) => {
    const boxes = (outlines: readonly Contour[]) => outlines.map((outline) => tightBox([outline]));
    const wanted = boxes(outlinesOf(cut).map((outline) => moveContour(flip, outline)));
    boxes(outlinesOf(mirrored.nested.texts[i]?.cut ?? '')).forEach((box, k) => {
      expectWithin(box.minX, wanted[k]?.minX ?? Number.NaN, 1e-3);
      expectWithin(box.minY, wanted[k]?.minY ?? Number.NaN, 1e-3);
    });
  });
  expect(plain.prove(mirrored.nested.texts)).toContain('sheet-mirror');
  expect(mirrored.prove(plain.nested.texts)).toContain('sheet-mirror');
});

test('pieces of a film with a grain all run along it', async () => {
  const { nested } = await sheetsOf(cases['a film with a grain'] ?? { blank: cup });
  for (const { turnedDeg } of nested.reports.flatMap(({ pieces }) => pieces))
    expectWithin(Math.abs(Math.cos((turnedDeg * Math.PI) / 180)), 0, 1e-9);
});

test('a large batch is cut from sheets that are laid alike, so many times each', async () => {
  const { nested, prove } = await sheetsOf({
    blank: cup,
    job: { batch: 250, band: { from: 20, to: 40 }, sheet: { across: 600, up: 900, margin: 5 } },
  });
  expect(nested.reports.some(({ times }) => times === 2)).toBe(true);
  const cut = nested.reports.reduce((sum, { times, pieces }) => sum + times * pieces.length, 0);
  expect(cut).toBe(250);
  expect(prove(nested.texts)).toEqual([]);
});

test('sheets that hold the same are one file, cut so many times', async () => {
  // 12 panels, a sheet each: of either panel six alike.
  const { nested, prove } = await sheetsOf({
    blank: cup,
    job: { batch: 6, sheet: { across: 210, up: 140, margin: 5 }, panels: {} },
  });
  const often = nested.reports.map(({ times, pieces }) => `${pieces.map(({ part }) => part)} ${times} times`);
  expect(often.sort()).toEqual(['wrap-a 6 times', 'wrap-b 6 times']);
  expect(nested.files.map(({ file }) => file)).toEqual(['sheet-1.cut.svg', 'sheet-2.cut.svg']);
  expect(prove(nested.texts)).toEqual([]);
});

test('a search that is told to stop keeps the best so far', async () => {
  const { pieces, draft } = await sheetsOf(cases['six wraps on sheets'] ?? { blank: cup });
  let asked = 0;
  const goOn = async () => ++asked < 3;
  const { reports } = await nestSheets({ job: draft.job, pieces }, { trials: 1e9, goOn });
  expect(asked).toBe(3);
  expect(reports.reduce((sum, { times, pieces }) => sum + times * pieces.length, 0)).toBe(6);
});

test('there are no sheets where a piece fits none, nor where there is no sheet', async () => {
  const large = await sheetsOf({
    blank: cup,
    job: { sheet: { across: 100, up: 100, margin: 5 }, panels: { joints: [] } },
  });
  expect(large.nested.files).toEqual([]);
  expect((await sheetsOf({ blank: cup })).nested.files).toEqual([]);
});

// A panel that was turned so that it just fits came out larger by its last digit, and there were no sheets, without a word.
test('a piece written larger than its sheet by a few of the last digits is laid all the same', async () => {
  const job = readJob(
    { name: 'a panel', blank: 'b.blank.json', sheet: { across: 200, up: 140, margin: 5 } },
    't.job.json',
  );
  const sheetsFor = async (height: number) => {
    const cut = `<svg xmlns="http://www.w3.org/2000/svg" width="102mm" height="142mm" viewBox="0 0 102 142"><g data-role="outline"><path d="M1 1H101V${1 + height}H1Z"/></g></svg>`;
    const { files } = await nestSheets({ job, pieces: [{ stem: 'wrap-a', cut, turned: 0 }] }, search);
    return files.length;
  };
  expect([await sheetsFor(130), await sheetsFor(130.0003), await sheetsFor(190.02)]).toEqual([1, 1, 0]);
});
