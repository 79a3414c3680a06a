import { describe, expect, test } from 'vitest';
import { compose, moveContour, movePoint, rotation, translation } from '../../src/geometry/affine.ts';
import type { Contour } from '../../src/geometry/contour.ts';
import { lineCrossings } from '../../src/geometry/crossings.ts';
import { shapeArea, signedArea } from '../../src/geometry/measure.ts';
import { clippedShapes, filledShapes } from '../../src/geometry/regions.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { flatWall, toFlat } from '../../src/unroll/flat-wall.ts';
import { goreComb } from '../../src/unroll/gore-comb.ts';
import { goreOutline } from '../../src/unroll/gores.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { ball, barrel, type CurvedGoreWall, cone, nearestOn } from './gore-walls.ts';

const shape = (contour: Contour) => ({ contours: [contour] });

/** The part of a closed outline on a level line, mm. */
function widthAt(outline: Contour, y: number): number {
  const xs = outline.segments
    .flatMap((s) => lineCrossings(s, { x: 0, y }, { x: 1, y: 0 }).map((t) => pointAt(s, t).x))
    .sort((a, b) => a - b);
  return xs.reduce((sum, x, i) => (i % 2 === 1 ? sum + x - (xs[i - 1] ?? 0) : sum), 0);
}

/** The upper half of a ball from its equator, and the same upside down. */
const dome: CurvedGoreWall = { ...ball(50), at: (along) => ball(50).at(along + 25 * Math.PI) };
const bowl: CurvedGoreWall = ball(50);
const quarter = 25 * Math.PI;

/** Cases: a wall, its band, the end the gores stay together at, how their levels are drawn. */
const cases = [
  {
    name: 'a dome at its equator',
    wall: dome,
    band: { from: 0, to: 78 },
    joined: 'foot',
    levels: 'straight',
  },
  {
    name: 'a bowl at its rim',
    wall: bowl,
    band: { from: 0.5, to: quarter },
    joined: 'lip',
    levels: 'straight',
  },
  {
    name: 'a bowl fanned from its foot',
    wall: bowl,
    band: { from: 15, to: 75 },
    joined: 'foot',
    levels: 'arcs',
  },
  {
    name: 'a barrel fanned from its lip',
    wall: barrel(50, 90, 40, 1),
    band: { from: 0, to: 90 },
    joined: 'lip',
    levels: 'arcs',
  },
  {
    name: 'a dome fanned from its shoulder',
    wall: dome,
    band: { from: 10, to: 70 },
    joined: 'foot',
    levels: 'arcs',
  },
] as const;

describe.each(cases)('a comb of $name', ({ wall, band, joined, levels }) => {
  const options = { count: 8, band, spacing: 4, levels, joined };
  const combWith = (strip: number) => {
    const comb = goreComb(wall, { ...options, strip });
    if (!comb) throw new Error('no comb');
    return comb;
  };

  test.each([0, 3])('with a strip of %d mm is one closed outline', (strip) => {
    const { closed, segments } = combWith(strip).outline;
    expect(closed).toBe(true);
    segments.forEach((s, i) => {
      expect(s.to).toEqual(segments[(i + 1) % segments.length]?.from);
    });
  });

  test.each([0, 3])('with a strip of %d mm nowhere lies over itself', (strip) => {
    const { outline } = combWith(strip);
    const filled = filledShapes([outline], 'nonzero', 0.003);
    // Without a strip the gores only touch, at the ends of their cuts.
    if (strip > 0) expect(filled).toHaveLength(1);
    const all = filled.reduce((sum, s) => sum + shapeArea(s), 0);
    expectWithin(all, Math.abs(signedArea(outline)), 0.5);
    // Wound twice around anything, the even-odd rule would leave it out.
    const evenOdd = filledShapes([outline], 'evenodd', 0.003);
    expectWithin(
      evenOdd.reduce((sum, s) => sum + shapeArea(s), 0),
      all,
      0.5,
    );
  });

  /** The loose gores, set where they stand in the comb by turning them about the apex of the line they share. */
  const loose = (): Contour[] => {
    const outline = goreOutline(wall, { count: 8, band, spacing: 4, levels });
    const at = joined === 'foot' ? band.from : band.to;
    const { radius, slope } = wall.at(at);
    const onLine = moveContour(translation(0, at - band.from), outline);
    const pitch = (2 * Math.PI * radius) / 8;
    return Array.from({ length: 8 }, (_, k) => {
      if (levels === 'straight') return moveContour(translation(pitch * k, 0), onLine);
      const apex = radius / slope;
      // With the apex above, the fan opens the other way around it.
      const turned = compose(translation(0, -apex), rotation((pitch * k) / apex));
      return moveContour(compose(turned, translation(0, apex)), onLine);
    });
  };

  test('is its loose gores side by side: no two of them overlap, and together they are the comb', () => {
    const gores = loose().map(shape);
    const { outline } = combWith(0);
    for (const [i, gore] of gores.entries())
      for (const other of gores.slice(i + 1)) {
        const common = clippedShapes([gore], [other], 'intersection', 0.003);
        expectAtMost(
          common.reduce((sum, s) => sum + shapeArea(s), 0),
          0.02,
        );
      }
    const areas = gores.reduce((sum, s) => sum + shapeArea(s), 0);
    expectWithin(Math.abs(signedArea(outline)), areas, 1e-5 * areas);
    for (const gore of gores) {
      const beyond = clippedShapes([gore], [shape(outline)], 'difference', 0.003);
      expectAtMost(
        beyond.reduce((sum, s) => sum + shapeArea(s), 0),
        0.1,
      );
    }
  });

  test('says where each gore stands: its free end, from its own drawing, lies on the outline', () => {
    const { outline, places } = combWith(3);
    expect(places).toHaveLength(8);
    const own = goreOutline(wall, { count: 8, band, spacing: 4, levels });
    const half = own.segments.length / 2;
    const [foot, lip] = [own.segments[0], own.segments[half]];
    const free = joined === 'foot' ? lip : foot;
    if (!free) throw new Error('no end');
    for (const place of places)
      for (const t of [0, 0.5, 1])
        expectAtMost(nearestOn(outline.segments, movePoint(place, pointAt(free, t))), 1e-6);
  });

  test('gives its last gore the overlap, and the strip under it', () => {
    const [plain, wide] = [0, 4].map((overlap) => goreComb(wall, { ...options, strip: 3, overlap })?.outline);
    if (!plain || !wide) throw new Error('no comb');
    const more = Math.abs(signedArea(wide)) - Math.abs(signedArea(plain));
    // Beside an edge, 4 mm wide along the levels. With arcs a line at y from the middle is longer by K y²/2 (derived).
    let expected = 4 * 3;
    const [low, high] = joined === 'foot' ? [band.from + 3, band.to] : [band.from, band.to - 3];
    for (let i = 0; i < 500; i++) {
      const along = low + ((high - low) * (i + 0.5)) / 500;
      const aside = (Math.PI * wall.at(along).radius) / 8 + 2;
      const longer = levels === 'arcs' ? (wall.curvature(along) * aside ** 2) / 2 : 0;
      expected += (4 * (1 + longer) * (high - low)) / 500;
    }
    expectWithin(more / expected, 1, 0.02);
    expect(filledShapes([wide], 'nonzero', 0.003)).toHaveLength(1);
  });

  test('has neighbours that share the points at the ends of their cuts', () => {
    const { outline } = combWith(3);
    const at = joined === 'foot' ? band.from + 3 : band.to - 3;
    const { radius, slope } = wall.at(at);
    const pitch = (2 * Math.PI * radius) / 8;
    const way = joined === 'foot' ? 1 : -1;
    for (let k = 0; k < 7; k++) {
      const on = pitch * (k + 0.5);
      const angle = levels === 'arcs' ? (on * slope * way) / radius : 0;
      const bow = angle === 0 ? 0 : (on * (1 - Math.cos(angle))) / angle;
      const cut = { x: angle === 0 ? on : (on * Math.sin(angle)) / angle, y: way * bow };
      const near = outline.segments.filter((s) => Math.hypot(s.from.x - cut.x, s.from.y - cut.y) < 1e-9);
      // One cut ends there, between two edges: its point is passed once.
      expect(near).toHaveLength(1);
      expectAtMost(nearestOn(outline.segments, cut), 1e-9);
    }
  });
});

describe.each(cases.filter(({ levels }) => levels === 'straight'))(
  'on the wall, a comb of $name',
  ({ wall, band, joined }) => {
    const comb = goreComb(wall, { count: 8, band, spacing: 4, levels: 'straight', joined, strip: 3 });
    const at = joined === 'foot' ? band.from + 3 : band.to - 3;
    const way = joined === 'foot' ? 1 : -1;

    test('closes without gap: at every height its widths together are the girth', () => {
      if (!comb) throw new Error('no comb');
      for (let out = 0.21; out < band.to - band.from - 4; out += 1.7)
        expectWithin(widthAt(comb.outline, -way * out), 2 * Math.PI * wall.at(at + way * out).radius, 2e-3);
    });

    test('has a strip as long as the girth at its cuts, and says what its edge is stretched by', () => {
      if (!comb) throw new Error('no comb');
      const girth = 2 * Math.PI * wall.at(at).radius;
      for (const y of [0.1, 1.5, 2.9]) expectWithin(widthAt(comb.outline, way * y), girth, 1e-9);
      const own = joined === 'foot' ? band.from : band.to;
      expectWithin(comb.stripStrain, wall.at(own).radius / wall.at(at).radius - 1, 1e-12);
      expectAtMost(0, comb.stripStrain);
    });
  },
);

test('a comb on a cone is the whole cone laid flat, strip and all', () => {
  const wall = cone(30, 0.25);
  const comb = goreComb(wall, {
    count: 6,
    band: { from: 0, to: 90 },
    spacing: 9,
    levels: 'arcs',
    joined: 'foot',
    strip: 5,
  });
  if (!comb) throw new Error('no comb');
  expectWithin(comb.stripStrain, 0, 1e-12);
  expectWithin(Math.abs(signedArea(comb.outline)), Math.PI * 90 * (60 + 22.5), 0.05);
  // The flat cone with its middle on the first gore's: the corners of the whole are corners of the comb.
  const flat = flatWall(30, 0.25, 0);
  const middle = toFlat(flat, { turn: 0.5, along: 5 });
  for (const [turn, along] of [
    [0.5 - 1 / 12, 0],
    [0.5 - 1 / 12, 90],
    [0.5 + 11 / 12, 0],
    [0.5 + 11 / 12, 90],
    [0.5 + 0.2, 0],
    [0.5 + 0.31, 90],
  ] as const) {
    const p = toFlat(flat, { turn, along });
    expectAtMost(nearestOn(comb.outline.segments, { x: p.x - middle.x, y: p.y - middle.y }), 1e-5);
  }
});

describe('gores that would overlap', () => {
  const options = { count: 8, spacing: 4, strip: 2 } as const;

  test('are no comb: straight ones joined at the narrow end', () => {
    const from = { ...options, band: { from: 15, to: 75 }, levels: 'straight' } as const;
    expect(goreComb(bowl, { ...from, joined: 'foot' })).toBeUndefined();
    expect(goreComb(bowl, { ...from, joined: 'lip' })).toBeDefined();
  });

  test('are no comb where the strip takes the whole band', () => {
    const short = { ...options, band: { from: 60, to: 70 }, levels: 'straight', joined: 'lip' } as const;
    expect(goreComb(bowl, { ...short, strip: 10 })).toBeUndefined();
    expect(goreComb(bowl, { ...short, strip: 9 })).toBeDefined();
  });

  test('are no comb: fanned ones of a waist, at either end', () => {
    const waist = barrel(30, 120, 50, -1);
    for (const joined of ['foot', 'lip'] as const)
      expect(
        goreComb(waist, { ...options, band: { from: 0, to: 100 }, levels: 'arcs', joined }),
      ).toBeUndefined();
  });

  test('are no comb where the cone of the strip closes before its edge', () => {
    const steep = {
      ...options,
      band: { from: 1, to: 40 },
      levels: 'arcs',
      joined: 'foot',
      strip: 8,
    } as const;
    const bud: CurvedGoreWall = {
      ...bowl,
      at: (along) => ({ radius: 1 + 0.9 * along - 0.009 * along * along, slope: 0.9 - 0.018 * along }),
    };
    expect(goreComb(bud, steep)).toBeDefined();
    const point = {
      ...bud,
      at: (along: number) => ({ radius: Math.max(0.1, 0.9 * (along - 8)), slope: 0.9 }),
    };
    expect(goreComb(point, { ...steep, strip: 8 })).toBeUndefined();
  });
});
