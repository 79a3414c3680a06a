// The checks before the blade on a wrap: what is found once is told once, with its true size and places.
// Truth: closed forms of the cone (girth grows evenly along), of the circular segment (any handbook, e.g. Machinery's
// Handbook, 'Areas'; from memory), and the same search over the whole wrap instead of one period.
import { describe, expect, test } from 'vitest';
import { layerFaults } from '../../../src/cut/checks/art-faults.ts';
import { isFinished } from '../../../src/cut/checks/wrap-faults.ts';
import type { Finding } from '../../../src/finding.ts';
import { limitsOf } from '../../../src/job/artwork/cut-limits.ts';
import { toWall } from '../../../src/unroll/flat-wall.ts';
import { expectWithin } from '../../closeness.ts';
import { dotTile, frustum, madeOf, type Typed } from '../a-job.ts';

const rules = ['thin-film', 'thin-gap', 'small-piece', 'sharp', 'layer-edges'];
const filmOf = (checks: readonly Finding[]) => checks.filter(({ rule }) => rules.includes(rule));

const can = {
  stations: [
    { height: 0, across: 80 },
    { height: 120, across: 80 },
  ],
  use: 'other',
};
const cone = {
  stations: [
    { height: 0, across: 70 },
    { height: 120, across: 90 },
  ],
  use: 'other',
};
const tile = (body: string, width = 40, height = 30) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${body}</svg>`;
/** Two bodies with an upright neck of 0.5 mm between them, in the middle of a tile. */
const neck = '<path d="M14 5H26V13H20.25V17H26V25H14V17H19.75V13H14Z"/>';
const plain = { trim: { lip: 3, foot: 3 }, band: { from: 15, to: 105 }, film: { thickness: 0.08 } };

describe('a neck in every repeat', () => {
  test('is told once, with its count and its place on the flat and on the wall', async () => {
    const { report } = await madeOf({ blank: can, job: plain, artwork: { around: 6 }, tile: tile(neck) });
    const [found, ...others] = filmOf(report.checks);
    expect(others).toEqual([]);
    expect(found).toMatchObject({
      rule: 'thin-film',
      level: 'look',
      times: 18,
      where: { file: 'wrap.cut.svg' },
    });
    // One sixth of the sheet's girth stands for 40 mm drawn.
    const scale = (Math.PI * 80.08) / 240;
    expectWithin(found?.size ?? 0, 0.5 * scale, 0.005);
    expectWithin((found?.where.turn ?? 0) * 6 - 0.5, 0, 1e-3);
    // In a row's middle; rows begin at the foot of the band.
    expectWithin((((found?.where.along ?? 0) - 15) / (30 * scale)) % 1, 0.5, 0.05);
    expect(found?.says).toContain('and 17 places more; drawn in tile.svg at 20, 1');
  });

  test('is as wide on a taper as the girth makes it at its narrowest row', async () => {
    const { report } = await madeOf({ blank: cone, job: plain, artwork: { around: 6 }, tile: tile(neck) });
    const [found] = filmOf(report.checks);
    const wall = frustum(35, 45, 120);
    const scale = wall.girthAt(60, 0.04) / 240;
    const { along = 0 } = found?.where ?? {};
    expectWithin(found?.size ?? 0, 0.5 * scale * (wall.girthAt(along, 0.04) / wall.girthAt(60, 0.04)), 0.005);
    expect(along).toBeLessThan(15 + 30 * scale);
    expect(found?.times).toBe(18);
  });

  test('is no fault where the film is a mask, whose gap it is, and wide enough for one', async () => {
    const job = { ...plain, film: { thickness: 0.08, use: 'mask' } };
    const { report } = await madeOf({ blank: can, job, artwork: { around: 6 }, tile: tile(neck) });
    expect(filmOf(report.checks)).toEqual([]);
  });
});

describe('what only the repeat makes', () => {
  const at = async (body: string, blank: object) => {
    const { report } = await madeOf({ blank, job: plain, artwork: { around: 6 }, tile: tile(body) });
    const found = filmOf(report.checks);
    expect(found.map(({ rule }) => rule)).toHaveLength(1);
    return found[0];
  };
  const scale = (Math.PI * 80.08) / 240;

  test('two arms that meet at the border are one neck, whose width and length are those of both', async () => {
    const arms = '<path d="M0 14.75H10V5H30V14.75H40V15.25H30V25H10V15.25H0Z"/>';
    const found = await at(arms, can);
    expect(found).toMatchObject({ rule: 'thin-film', times: 18 });
    expectWithin(found?.size ?? 0, 0.5 * scale, 0.005);
    expectWithin(found?.length ?? 0, 20 * scale, 0.5);
  });

  test('half a gap at either border is a gap, across the seam too', async () => {
    const found = await at('<path d="M.15 5H39.85V25H.15Z"/>', can);
    expect(found).toMatchObject({ rule: 'thin-gap', times: 18 });
    expectWithin((((found?.where.turn ?? 0) * 6 + 0.5) % 1) - 0.5, 0, 1e-3);
    expectWithin(found?.size ?? 0, 0.3 * scale, 0.005);
  });

  test('nothing is told that lies under cover strips: on the borders, or on the seam alone', async () => {
    // A gap at either border, and a bar that ends on the left one alone, so that the tile does not join.
    const cut = '<path d="M.15 5H39.85V25H.15Z"/><path d="M0 27H20V29H0Z"/>';
    const told = async (artwork: object, job: object = {}) => {
      const { report } = await madeOf({ blank: can, job: { ...plain, ...job }, artwork, tile: tile(cut) });
      return filmOf(report.checks).filter(({ rule }) => rule === 'thin-gap');
    };
    expect(await told({ way: 'as-drawn' })).toMatchObject([{ times: 18 }]);
    expect(await told({ way: 'strip-6' })).toEqual([]);
    // Of six borders one lies on the seam.
    const strip = { seam: { style: 'strip', strip: 10 } };
    expect(await told({ way: 'as-drawn' }, strip)).toMatchObject([{ times: 15 }]);
  });

  // On this cup the copy on the seam was lost to rounding in three rows of four.
  test('a gap on the seam is counted in every row', async () => {
    const stations = [
      { height: 0, across: 64 },
      { height: 80, across: 76 },
      { height: 160, across: 88 },
    ];
    const { report } = await madeOf({
      blank: { stations, footRound: 6, lipRound: 1.5, use: 'other' },
      job: { film: { thickness: 0.08 } },
      artwork: { around: 6 },
      tile: tile('<path d="M.15 5H39.85V35H.15Z"/>', 40, 40),
    });
    expect(filmOf(report.checks)).toMatchObject([{ rule: 'thin-gap', times: 24 }]);
  });
});

describe('film that is a mask', () => {
  test('has islands for its pieces: one too small is told once', async () => {
    const ring = '<path fill-rule="evenodd" d="M10 5H30V25H10ZM19.5 14.5V15.5H20.5V14.5Z"/>';
    const job = { ...plain, film: { thickness: 0.08, use: 'mask' } };
    const { report } = await madeOf({ blank: can, job, artwork: { around: 6 }, tile: tile(ring) });
    const found = filmOf(report.checks).find(({ rule }) => rule === 'small-piece');
    expectWithin(found?.size ?? 0, ((Math.PI * 80.08) / 240) ** 2, 0.005);
    expect(found?.times).toBe(18);
  });
});

describe('the period looked at stands for the whole wrap', () => {
  const motley = `${neck}<circle cx="4" cy="4" r=".7"/><path d="M30 20L39 20.6L30 21.2Z"/><path d="M28 3H38V12H33.15V5H32.85V12H28Z"/><path d="M-3 22H3V27H-3Z"/><path d="M37 22H43V27H37Z"/>`;
  const cases: readonly (Typed & { readonly name: string })[] = [
    { name: 'on a cylinder', blank: can, artwork: { around: 6 } },
    { name: 'on a taper', blank: cone, artwork: { around: 5 } },
    {
      name: 'with a half-drop',
      blank: cone,
      artwork: { around: 6, repeat: { across: 40, up: 30, drop: 15 } },
    },
    { name: 'once around', blank: can, artwork: { around: 6, repeat: { across: 40, up: 30, drop: 3 } } },
  ];
  test.each(cases)('$name: as many places of each rule', async ({ blank, artwork }) => {
    const { draft, report } = await madeOf({ blank, job: plain, artwork: artwork ?? {}, tile: tile(motley) });
    const { template } = draft.plan;
    const all = layerFaults(
      draft.pattern?.wrap.layers ?? [],
      limitsOf(draft.job.film, draft.job.cutter),
    ).filter(({ at }) => isFinished(template, toWall(template.wall, at)));
    for (const rule of ['thin-film', 'thin-gap', 'small-piece', 'sharp']) {
      const told = filmOf(report.checks).filter((check) => check.rule === rule);
      const places = told.reduce((sum, { times = 0 }) => sum + times, 0);
      expect({ rule, places }).toEqual({ rule, places: all.filter((fault) => fault.rule === rule).length });
      expect(places).toBeGreaterThan(0);
    }
  });
});

describe('motifs that a straight trim cuts', () => {
  test('would leave bits, which are left out and told, with the area of the circular segment', async () => {
    // Discs of radius 6 stand at 15, 45 mm up; a band that ends 0.5 mm above the lowest point of the next row's.
    const job = { ...plain, band: { from: 15, to: 15 + 60 + 9.5 } };
    const artwork = { around: 6, scale: 'across' };
    const { report } = await madeOf({ blank: can, job, artwork, tile: dotTile(40, 30) });
    expect(filmOf(report.checks)).toEqual([]);
    const bits = report.checks.filter(({ rule }) => rule === 'sliver');
    const [bit, ...others] = bits;
    expect(others).toEqual([]);
    expect(bit).toMatchObject({ level: 'note', times: 6 });
    const angle = 2 * Math.acos(5.5 / 6);
    const segment = (36 / 2) * (angle - Math.sin(angle));
    // `across` widens the disc around the can, its heights stay.
    expectWithin(bit?.size ?? 0, segment * ((Math.PI * 80.08) / 240), 0.02);
  });
});
