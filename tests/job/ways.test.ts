// How a job's artwork closes: by its own steps, by the repeat found in it, book-matched, or not without being asked.
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { Refused } from '../../src/finding.ts';
import { drawn } from '../pictures/compare.ts';
import { madeOf } from './a-job.ts';

/** 252 mm around, straight. */
const mug = {
  stations: [
    { height: 0, girth: 252 },
    { height: 82, girth: 252 },
  ],
};

/** A drawing of leaves and dots that repeats by 34 and 29 mm with a half drop, of which so much is cut out, at a place. */
function crop(width: number, height: number, x = 9.3, y = 6.1, jitter = 0): string {
  const [across, up] = [34, 29];
  const leaf = (size: number) => `<path d="M0 -${size}Q${size} 0 0 ${size}Q-${size / 2} 0 0 -${size}Z"/>`;
  const dot = (size: number) => `<circle r="${size}"/>`;
  const motifs = [
    { at: [8, 9], drawn: leaf(5) },
    { at: [21, 6], drawn: dot(2.3) },
    { at: [25, 16], drawn: leaf(3) },
    { at: [13, 22], drawn: dot(3.1) },
  ] as const;
  // Fixed and never the same twice: a hand that strays.
  const stray = (i: number, j: number, k: number) => jitter * Math.sin(12.9898 * i + 78.233 * j + 37.719 * k);
  const copies = motifs.flatMap(({ at: [mx, my], drawn }, k) =>
    Array.from({ length: 11 * 11 }, (_, n) => {
      const [i, j] = [(n % 11) - 5, Math.floor(n / 11) - 5];
      const [dx, dy] = [
        mx + i * across - x + stray(i, j, k),
        my + i * (up / 2) + j * up - y + stray(j, i, k),
      ];
      return `<g transform="translate(${dx.toFixed(3)} ${dy.toFixed(3)})">${drawn}</g>`;
    }),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><g fill="#1d4e63">${copies.join('')}</g></svg>`;
}

const made = (tile: string, artwork: object = {}) => madeOf({ blank: mug, tile, artwork });

async function refusalOf(work: Promise<unknown>) {
  try {
    await work;
  } catch (fault) {
    if (fault instanceof Refused) return fault.findings;
    throw fault;
  }
  throw new Error('nothing was refused');
}

describe('a crop that does not join', () => {
  test('is laid by the repeat it shows, and that is said', async () => {
    const { report, draft } = await made(crop(57, 48));
    // Half drops stand level on even counts; 252 / 34 is 7.4, and 8 is the nearest even one.
    expect(report.pattern).toMatchObject({ around: 8, joins: true, way: 'period-8', leanDeg: 0 });
    // A sheet 0.08 mm thick has the girth of its own middle.
    expect(report.pattern?.scaleAcross).toBeCloseTo((252 + Math.PI * 0.08) / (8 * 34), 5);
    expect(report.pattern?.seamGap?.position).toBeLessThan(0.01);
    const [taken] = report.checks.filter(({ rule }) => rule === 'way-taken');
    expect(taken?.level).toBe('note');
    expect(taken?.says).toMatch(/34\.00 mm around by 29\.00 mm up with a half drop of 14\.50 mm.*"period-8"/);
    expect(draft.job.artwork).toMatchObject({ way: 'period-8' });
  });

  test('is the same wherever it was cut out, but for where the pattern starts', async () => {
    const [one, other] = [await made(crop(57, 48)), await made(crop(61, 55, 21.7, 3.3))];
    for (const { report } of [one, other]) expect(report.pattern).toMatchObject({ around: 8, joins: true });
    expect(one.report.pattern?.scaleAcross).toBeCloseTo(other.report.pattern?.scaleAcross ?? 0, 4);
  });

  test('goes around as often as the job says', async () => {
    const { report } = await made(crop(57, 48), { around: 6 });
    expect(report.pattern).toMatchObject({ around: 6, joins: true, way: 'period-6' });
  });

  test('by the way a job names, by name or by number', async () => {
    const named = await made(crop(57, 48), { way: 'mirrored-4' });
    expect(named.report.pattern).toMatchObject({ around: 4, joins: true, way: 'mirrored-4' });
    const first = await made(crop(57, 48), { way: 1 });
    expect(first.report.pattern?.way).toBe('period-8');
    const open = await made(crop(57, 48), { way: 'as-drawn' });
    expect(open.report.pattern).toMatchObject({ joins: false, way: 'as-drawn' });
    const joined = await made(crop(68, 29), { way: 'as-drawn' });
    expect(joined.report.pattern).toMatchObject({ joins: true, around: 4 });
    expect(open.report.checks.some(({ rule }) => rule === 'does-not-join')).toBe(true);
  });

  test('under cover strips over its borders, each a piece of its own, proved', async () => {
    // Band 81.something mm at 31.5 mm a repeat: 8 borders around on 30 by 25 mm, and level ones between its rows.
    const { report, draft, parts } = await made(crop(30, 25), { way: 'strip-8' });
    expect(report.pattern).toMatchObject({ around: 8, way: 'strip-8' });
    const { strips } = draft.job.artwork ?? {};
    expect(strips?.width).toBe(10);
    expect(strips?.turns).toEqual([0, 1, 2, 3, 4, 5, 6, 7].map((i) => i / 8));
    const row = (25 * (252 + Math.PI * 0.08)) / (8 * 30);
    const { from = 0 } = draft.job.band ?? {};
    expect(strips?.along).toEqual([1, 2, 3].map((k) => expect.closeTo(from + k * row, 6)));
    expect(parts.map(({ stem }) => stem)).toEqual(Array.from({ length: 11 }, (_, i) => `cover-${i + 1}`));
    expect(report.proof?.checks.filter(({ rule }) => /^cover-/.test(rule)).map(({ pass }) => pass)).toEqual([
      true,
      true,
    ]);
    expect(report.checks.map(({ rule }) => rule)).toContain('under-strips');
  });

  test('on a wall that bends too, piece by piece of its stack', async () => {
    const across = [60, 80, 62].map((width, i) => ({ height: 50 * i, across: width }));
    const { report, parts } = await madeOf({
      blank: { wall: 'smooth', use: 'other', stations: across },
      tile: crop(50, 40),
      artwork: { way: 'strip-5' },
      job: { pieces: 'stacked', film: { stretch: 0.02 } },
    });
    expect(parts.filter(({ stem }) => stem.startsWith('cover-')).length).toBeGreaterThan(4);
    expect(report.proof?.checks.filter(({ pass }) => !pass)).toEqual([]);
  });

  test('as narrow as the job says; and a width without such a way is refused', async () => {
    const { draft, report } = await made(crop(30, 25), { way: 'strip-8', strips: { width: 6 } });
    expect(draft.job.artwork?.strips?.width).toBe(6);
    expect(report.proof?.pass).toBe(true);
    const [fault] = await refusalOf(made(crop(30, 25), { way: 'as-drawn', strips: { width: 6 } }));
    expect([fault?.rule, fault?.where.key]).toEqual(['strips-without', 'artwork.strips']);
  });

  test('by the numbers of the list, which are its ways', async () => {
    const tile = crop(57, 48);
    const [fault] = await refusalOf(made(tile, { way: 99 }));
    const listed = [...(fault?.says ?? '').matchAll(/(\d+) "([^"]+)"/g)].map(([, number, key]) => [
      Number(number),
      key,
    ]);
    expect(listed.length).toBeGreaterThan(6);
    for (const [number, key] of listed.filter(([, key]) => /^(?:strip|as-drawn)/.test(String(key)))) {
      const { report } = await made(tile, { way: number });
      expect([number, report.pattern?.way]).toEqual([number, key]);
    }
  });

  test('as it stands where the job says how it repeats', async () => {
    const { report } = await made(crop(57, 48), { repeat: { across: 57 } });
    expect(report.pattern?.joins).toBe(false);
    expect(report.pattern?.way).toBeUndefined();
  });

  test.each([
    ['that shows no repeat', crop(30, 25)],
    ['that a hand drew, almost regular', crop(110, 95, 9.3, 6.1, 0.3)],
  ])('%s is refused with the worst place and three ways out', async (_, tile) => {
    const [fault] = await refusalOf(made(tile));
    expect(fault?.rule).toBe('does-not-join');
    expect(fault?.where).toMatchObject({ file: 'tile.svg', x: expect.any(Number), y: expect.any(Number) });
    expect(fault?.says).toMatch(/Three ways out: .*"mirrored-\d+".*"as-drawn".*larger crop/);
  });

  test('and a way that is none is refused with those there are', async () => {
    const [fault] = await refusalOf(made(crop(57, 48), { way: 'period-7' }));
    expect([fault?.rule, fault?.where.key]).toEqual(['no-such-way', 'artwork.way']);
    expect(fault?.says).toMatch(/1 "period-8".*"mirrored-4".*"as-drawn"/);
  });
});

test('a tile whose borders meet but whose spacing jumps there is laid by its true repeat', async () => {
  // Dots 10 mm apart on a tile 34 mm wide: none is cut, yet the gap at the border is 14 mm.
  const dots = [7, 17, 27].flatMap((x) => [5, 15].map((y) => `<circle cx="${x}" cy="${y}" r="2"/>`));
  const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="34mm" height="20mm" viewBox="0 0 34 20">${dots.join('')}</svg>`;
  const { report } = await made(tile);
  expect(report.pattern).toMatchObject({ joins: true, way: 'period-25', around: 25 });
});

test('a picture laid as drawn is traced as one that goes on, by name or by number', async () => {
  const dots = '<circle cx="0" cy="9" r="5"/><circle cx="20" cy="20" r="4"/>';
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="34" height="26" viewBox="0 0 34 26"><rect width="100%" height="100%" fill="#fff"/><g fill="#17566b">${dots}</g></svg>`;
  const picture = new Uint8Array(PNG.sync.write(await drawn(svg, 102)));
  const by = (way: string | number) =>
    madeOf({
      blank: mug,
      job: { artwork: { file: 'dots.png', across: 34, way } },
      fonts: { 'dots.png': picture },
    });
  const [fault] = await refusalOf(by(99));
  const number = Number(/(\d+) "as-drawn"/.exec(fault?.says ?? '')?.[1]);
  const [named, numbered] = [await by('as-drawn'), await by(number)];
  expect(numbered.draft.cut).toBe(named.draft.cut);
  expect(numbered.draft.job.artwork?.way).toBe('as-drawn');
});
