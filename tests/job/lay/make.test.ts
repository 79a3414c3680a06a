// The figures of the report recomputed by hand: closed forms of the frustum (handbook geometry, e.g. Machinery's
// Handbook, 'Solids': lateral surface of a cone as a sector; from memory), and sums of the lattice.
import { describe, expect, test } from 'vitest';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { dotTile, frustum, leafTile, madeOf, type Typed } from '../a-job.ts';

const cup = {
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270 },
  ],
  footRound: 6,
  lipRound: 1.5,
};
const pot = {
  stations: [
    { height: 0, across: 120 },
    { height: 110, across: 96 },
  ],
  footRound: 3,
  lipRound: 2,
};
const can = (across = 80, lip = across) => ({
  stations: [
    { height: 0, across },
    { height: 100, across: lip },
  ],
  use: 'other',
});

const cupWall = frustum(31, 270 / (2 * Math.PI), 150);
const potWall = frustum(60, 48, 110);

/** Issue, item 3: the band starts footRound / tan(45° + a/2) up, and ends lipRound / tan(45° - a/2) below the lip corner. */
const flatBand = ({ halfAngle, along }: ReturnType<typeof frustum>, foot: number, lip: number) => ({
  from: foot / Math.tan(Math.PI / 4 + halfAngle / 2),
  to: along - lip / Math.tan(Math.PI / 4 - halfAngle / 2),
});

const patternOf = async (typed: Typed) => {
  const { report } = await madeOf(typed);
  if (!report.pattern || !report.template) throw new Error('no pattern');
  return { pattern: report.pattern, template: report.template, checks: report.checks };
};

describe.each([
  { name: 'a cup wider at the lip', blank: cup, wall: cupWall, rounds: [6, 1.5] },
  { name: 'a pot wider at the foot', blank: pot, wall: potWall, rounds: [3, 2] },
])('the template of $name', ({ blank, wall, rounds: [foot = 0, lip = 0] }) => {
  const band = flatBand(wall, foot, lip);
  const off = 0.4 + 0.08 / 2;
  const job = { coats: [{ thickness: 0.4 }], seam: { style: 'butt' }, trim: { lip: 0, foot: 0 } };
  const sine = Math.abs(Math.sin(wall.halfAngle));

  test('takes the flat band that its rounds leave', async () => {
    const { report } = await madeOf({ blank, job });
    const [flat] = report.blank.flatBands;
    expectWithin(flat?.from ?? 0, band.from, 1e-9);
    expectWithin(flat?.to ?? 0, band.to, 1e-9);
    expectWithin(report.blank.halfAngleDeg, (wall.halfAngle * 180) / Math.PI, 1e-9);
    expectWithin(report.blank.along, wall.along, 1e-9);
  });

  test('is the sector of that cone, grown by coat and half the film along the normal', async () => {
    const { template } = (await madeOf({ blank, job })).report;
    const radii = [band.from, band.to]
      .map((at) => wall.girthAt(at, off) / (2 * Math.PI * sine))
      .sort((a, b) => a - b);
    expectWithin(template?.innerRadius ?? 0, radii[0] ?? 0, 1e-8, 'inner radius');
    expectWithin(template?.outerRadius ?? 0, radii[1] ?? 0, 1e-8, 'outer radius');
    expectWithin(template?.sweepDeg ?? 0, 360 * sine, 1e-9, 'sweep');
    // Sector of less than half a turn: widest at the two outer corners, highest from there to the inner corners.
    const half = Math.PI * sine;
    const [inner = 0, outer = 0] = radii;
    expectWithin(template?.width ?? 0, 2 * outer * Math.sin(half), 1e-4, 'width');
    expectWithin(template?.height ?? 0, outer - inner * Math.cos(half), 1e-4, 'height');
    expect(template?.overlap).toBe(0);
    expect(template?.turns).toEqual({ from: 0, to: 1 });
  });

  test('carries a pattern whose scale makes a whole number fill the girth at the middle of the band', async () => {
    const { pattern } = await patternOf({ blank, job, tile: leafTile(40, 30) });
    const girth = wall.girthAt((band.from + band.to) / 2, off);
    expect(pattern.around).toBe(Math.round(girth / 40));
    expectWithin(pattern.scaleAcross, girth / (pattern.around * 40), 1e-12);
    expect(pattern.scaleUp).toBe(pattern.scaleAcross);
    expectWithin(pattern.up, (band.to - band.from) / (30 * pattern.scaleUp), 1e-9);
    expect(pattern.closes.map((count) => count + 0)).toEqual([pattern.around, 0]);
    expect(pattern.leanDeg).toBe(0);
    expect(pattern.joins).toBe(true);
    expectAtMost(pattern.seamGap?.position ?? 1, 0.01);
    expectAtMost(pattern.seamGap?.tangentDeg ?? 1, 0.1);
    expect(pattern.seamGap?.crossings).toBeGreaterThan(0);
  });
});

describe('coats and film', () => {
  test('make the girth grow by 2 pi t cos a: as told by the sector, whose arc is radius times sweep', async () => {
    const girthOf = async (job: object) => {
      const { template } = (await madeOf({ blank: cup, job })).report;
      return ((template?.outerRadius ?? 0) * (template?.sweepDeg ?? 0) * Math.PI) / 180;
    };
    const bare = await girthOf({ film: { thickness: 0 } });
    const cos = Math.cos(cupWall.halfAngle);
    expectWithin(await girthOf({ film: { thickness: 0.2 } }), bare + 2 * Math.PI * 0.1 * cos, 1e-8);
    const coats = [{ thickness: 0.4 }, { name: 'second', thickness: 0.3 }, { thickness: 5, over: true }];
    expectWithin(await girthOf({ film: { thickness: 0 }, coats }), bare + 2 * Math.PI * 0.7 * cos, 1e-8);
  });
});

describe('a straight canister', () => {
  test('lies flat as a rectangle of its girth and overlap by its band and trims', async () => {
    const job = { trim: { lip: 2, foot: 4 }, seam: { overlap: 7 } };
    const { template, blank } = (await madeOf({ blank: can(), job })).report;
    expect([blank.wall, template?.shape, template?.sweepDeg]).toEqual(['cylinder', 'rectangle', 0]);
    expectWithin(template?.width ?? 0, Math.PI * (80 + 0.08) + 7, 1e-9);
    expectWithin(template?.height ?? 0, 100 + 2 + 4, 1e-9);
    expect(template?.innerRadius).toBeUndefined();
  });

  test('and one that is a billionth off carries the same art to the last digit of its file', async () => {
    const tile = leafTile(40, 30);
    const [straight, almost] = await Promise.all([
      madeOf({ blank: can(), tile }),
      madeOf({ blank: can(80, 80 + 2 * 100 * Math.tan(1e-9)), tile }),
    ]);
    const [art, same] = [straight, almost].map(({ draft }) => draft.cut.split('<g data-role="outline"')[0]);
    expect(art).toContain('data-role="artwork"');
    // The same lines in the same order; a number halfway between two last digits may be rounded either way.
    const shapeOf = (text = '') => text.replace(/-?\d+(?:\.\d+)?/g, '0');
    const numbersOf = (text = '') => (text.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
    expect(shapeOf(same)).toBe(shapeOf(art));
    const wanted = numbersOf(art);
    numbersOf(same).forEach((number, i) => {
      expectWithin(number, wanted[i] ?? Number.NaN, 1.001e-4);
    });
    expect(almost.report.template?.shape).toBe('rectangle');
    expectWithin(almost.report.template?.width ?? 0, straight.report.template?.width ?? 1, 1e-6);
  });

  test('and ever slighter tapers come ever closer to it, without a jump where the sector ends', async () => {
    const widthOf = async (halfAngle: number) =>
      (await madeOf({ blank: can(80, 80 + 200 * Math.tan(halfAngle)) })).report.template?.width ?? 0;
    const straight = await widthOf(0);
    // Widest at the lip: the girth there is larger by 2 pi times half the taper from the middle, and the tilt of the
    // ends adds its sine times the trims: in all under 1000 mm times the angle.
    for (const halfAngle of [1e-6, 1e-7, 3e-8, 1e-8, 3e-9, 1e-9])
      expectAtMost(Math.abs((await widthOf(halfAngle)) - straight), 1000 * halfAngle + 1e-9);
  });
});

describe('a blank with a handle', () => {
  const handled = { ...cup, handle: { spans: 60, keepOff: 5 } };

  test('gets a piece from one side of the handle to the other, at both ends of the band alike', async () => {
    const { template, pattern, checks } = await patternOf({ blank: handled, tile: leafTile(40, 30) });
    const band = flatBand(cupWall, 6, 1.5);
    const off = 0.04;
    const girth = cupWall.girthAt((band.from + band.to) / 2, off);
    expectWithin(template.turns.from, 35 / girth, 1e-9);
    expectWithin(template.turns.to, 1 - 35 / girth, 1e-9);
    expect(template.overlap).toBe(0);
    expect(pattern.seamGap).toBeUndefined();
    expect(checks.map(({ rule }) => rule)).toContain('handle-no-seam');
    expectWithin(template.sweepDeg, 360 * Math.sin(cupWall.halfAngle) * (1 - 70 / girth), 1e-9);
  });

  test('has its seam lines there: straight, and parallel to the line up the wall at the middle of the handle', async () => {
    const { draft } = await madeOf({ blank: handled });
    const band = flatBand(cupWall, 6, 1.5);
    const rho = (at: number) => cupWall.girthAt(at, 0.04) / (2 * Math.PI * Math.sin(cupWall.halfAngle));
    const numbers =
      /id="seam-start" d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)"/
        .exec(draft.guide)
        ?.slice(1)
        .map(Number) ?? [];
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = numbers;
    // A line at a distance e from the apex meets the two arcs sqrt(rho^2 - e^2) from its foot point.
    const middle = rho((band.from + band.to) / 2);
    const e = middle * Math.sin(35 / middle);
    const length = Math.sqrt(rho(band.to) ** 2 - e ** 2) - Math.sqrt(rho(band.from) ** 2 - e ** 2);
    expectWithin(Math.hypot(x1 - x0, y1 - y0), length, 2e-4);
    // Width kept clear, measured around the wall, foot and lip: within a few hundredths of 35 mm.
    for (const at of [band.from, band.to]) expectWithin(rho(at) * Math.asin(e / rho(at)), 35, 0.05);
  });
});

describe('ways to close', () => {
  const girth = Math.PI * 80.08;
  const tile = leafTile(40, 30);

  test('across alone keeps heights as drawn', async () => {
    const { pattern } = await patternOf({ blank: can(), tile, artwork: { scale: 'across' } });
    expectWithin(pattern.scaleAcross, girth / (6 * 40), 1e-12);
    expect(pattern.scaleUp).toBe(1);
    expectWithin(pattern.up, 100 / 30, 1e-9);
  });

  test('whole rows fill the band', async () => {
    const { pattern } = await patternOf({ blank: can(), tile, job: { edges: 'whole-rows' } });
    const rows = Math.round(100 / (30 * (girth / 240)));
    expectWithin(pattern.up, rows, 1e-9);
    expectWithin(pattern.scaleUp, 100 / (rows * 30), 1e-12);
  });

  test('a count that is asked for is kept, and a scale far from drawn is told', async () => {
    const { pattern, checks } = await patternOf({ blank: can(), tile, artwork: { around: 3 } });
    expect(pattern.around).toBe(3);
    expectWithin(pattern.scaleAcross, girth / 120, 1e-12);
    expect(checks.map(({ rule, level }) => [rule, level])).toEqual([
      ['scale', 'look'],
      ['seam-place', 'note'],
    ]);
  });

  test('a half drop stands level with an even count, and says that it must be even', async () => {
    const dots = dotTile(40, 30);
    const { pattern, checks } = await patternOf({
      blank: can(),
      tile: dots,
      artwork: { repeat: { drop: 15 } },
    });
    expect(pattern.around % 2).toBe(0);
    expect(pattern.leanDeg).toBe(0);
    // n steps of (40, 15 up) and m of (0, 30 up) add up to (40 n, 0).
    expect(pattern.closes).toEqual([6, -3]);
    expect(checks.map(({ rule, level }) => [rule, level])).toEqual([['level-count', 'note']]);
    expect(checks[0]?.says).toContain('must be even');
  });

  test('with an odd count it leans by half a row over the girth, which is told', async () => {
    const artwork = { repeat: { drop: 15 }, around: 5 };
    const { pattern, checks } = await patternOf({ blank: can(), tile, artwork });
    const [n, m] = pattern.closes;
    const [x, y] = [40 * n, -15 * n - 30 * m];
    expect(Math.abs(y)).toBe(15);
    expectWithin(pattern.scaleAcross * Math.hypot(x, y), girth, 1e-9);
    expectWithin(Math.abs(pattern.leanDeg), (Math.atan2(15, 200) * 180) / Math.PI, 1e-9);
    const lean = checks.find(({ rule }) => rule === 'lean');
    expect(lean?.level).toBe('look');
    expect(lean?.says).toContain('it stands level when the count is a multiple of 2');
    expectAtMost(pattern.seamGap?.position ?? 1, 0.01);
  });

  test('brick rows close level with any count', async () => {
    const { pattern, checks } = await patternOf({
      blank: can(),
      tile,
      artwork: { repeat: { shift: 20 }, around: 7 },
    });
    expect(pattern.closes).toEqual([7, 0]);
    expect(pattern.leanDeg).toBe(0);
    expectWithin(pattern.scaleAcross, girth / 280, 1e-12);
    expectWithin(pattern.up, 100 / (30 * pattern.scaleUp), 1e-9);
    expect(checks).toEqual([]);
    expectAtMost(pattern.seamGap?.position ?? 1, 0.01);
  });

  test('a lattice closes by a whole sum of its two steps', async () => {
    const repeat = { a: [31, 8], b: [-8, 31] };
    const { pattern } = await patternOf({ blank: can(), tile: leafTile(20, 20), artwork: { repeat } });
    const [n, m] = pattern.closes;
    const [x, y] = [31 * n - 8 * m, 8 * n + 31 * m];
    expect([n, m].every(Number.isInteger)).toBe(true);
    expectWithin(pattern.scaleAcross * Math.hypot(x, y), girth, 1e-9);
    expectWithin(pattern.leanDeg, (Math.atan2(y, x) * 180) / Math.PI, 1e-9);
    // Nearly level: the issue asks for a small angle.
    expectAtMost(Math.abs(pattern.leanDeg), 3);
  });

  test('a repeat given apart from the tile goes before its size', async () => {
    const { pattern } = await patternOf({ blank: can(), tile, artwork: { repeat: { across: 50, up: 25 } } });
    expect(pattern.around).toBe(5);
    expectWithin(pattern.scaleAcross, girth / 250, 1e-12);
    expectWithin(pattern.up, 100 / (25 * pattern.scaleUp), 1e-9);
  });
});
