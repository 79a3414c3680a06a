// The silhouette of a field of discs, most of which lie beyond others: against the lowest of circles, each in closed form.
import { expect, test } from 'vitest';
import { seenEdges, seenShapes } from '../../../src/cut/films/hidden-edges.ts';
import { beyondSilhouette } from '../../../src/cut/films/silhouette.ts';
import { arcAbout } from '../../../src/geometry/arc.ts';
import type { Shape } from '../../../src/geometry/contour.ts';
import { directed, shapeArea } from '../../../src/geometry/measure.ts';
import { offsetShapes } from '../../../src/geometry/offset.ts';
import { flatWall, girthAt, toFlat } from '../../../src/unroll/flat-wall.ts';
import { outline, templateOf } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';
import { chordPoints, randomFrom } from '../../geometry/drawn.ts';
import { clipperArea } from '../../geometry/libraries.ts';

const cylinder = flatWall(30, 0, 50);
const girth = girthAt(cylinder, 0);

interface Disc {
  readonly around: number;
  readonly along: number;
  readonly r: number;
}

const shapeOf = ({ around, along, r }: Disc): Shape => {
  const { x, y } = toFlat(cylinder, { turn: around / girth, along });
  return { contours: [{ closed: true, segments: arcAbout({ x, y }, { x: x + r, y }, 2 * Math.PI) }] };
};

/** Rows of discs up the wall, none in its place, so near that some disc is over every place around. */
function field(seed: number): readonly Disc[] {
  const random = randomFrom(seed);
  const columns = 24;
  return Array.from({ length: 8 * columns }, (_, i) => ({
    around: ((i % columns) + 0.5 + 0.2 * random()) * (girth / columns),
    along: 20 + 9 * Math.floor(i / columns) + 6 * random(),
    r: 6 + 2 * random(),
  }));
}

test.each([
  ['foot', 1],
  ['lip', 2],
] as const)(
  'what lies beyond a field of discs is as large from the %s as their circles say',
  (side, seed) => {
    const discs = field(seed);
    const until = side === 'foot' ? 120 : -10;
    // Far past both ends, where a whole turn of it is measured.
    const turns = { from: -0.1, to: 1.1 };
    const shapes = beyondSilhouette(discs.map(shapeOf), { wall: cylinder, side, until, turns });
    const area = shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);
    const [first, last] = [turns.from * girth, turns.to * girth];
    const steps = 200_000;
    const width = (last - first) / steps;
    const shown = discs.flatMap((disc) =>
      [-girth, 0, girth].flatMap((turn) => {
        const around = disc.around + turn;
        const isSeen = around + disc.r >= turns.from * girth && around - disc.r <= turns.to * girth;
        return isSeen ? [{ ...disc, around }] : [];
      }),
    );
    const lowest = edgesOver(shown, side, first, width, steps);
    const wanted = lowest.reduce((sum, along) => sum + Math.abs(until - along) * width, 0);
    expectWithin(area, wanted, 0.5);
  },
);

/** The lowest (or highest) of circles at so many places around. */
function edgesOver(
  discs: readonly Disc[],
  side: 'foot' | 'lip',
  first: number,
  width: number,
  steps: number,
): Float64Array {
  const edges = new Float64Array(steps).fill(side === 'foot' ? Infinity : -Infinity);
  for (const { around, along, r } of discs) {
    const from = Math.max(0, Math.ceil((around - r - first) / width));
    for (let i = from; i < steps && first + (i + 0.5) * width < around + r; i++) {
      const half = Math.sqrt(Math.max(0, r ** 2 - (first + (i + 0.5) * width - around) ** 2));
      const edge = side === 'foot' ? along - half : along + half;
      edges[i] = side === 'foot' ? Math.min(edges[i] ?? edge, edge) : Math.max(edges[i] ?? edge, edge);
    }
  }
  return edges;
}

test('edges that lie beyond others are left out, and of the lowest disc at every place some are not', () => {
  const discs = field(3);
  const edgesOf = discs.map((disc) => shapeOf(disc).contours.flatMap(({ segments }) => segments));
  const seen = new Set(seenEdges(edgesOf.flat(), cylinder, 'foot'));
  // Of eight rows of circles the lower halves of one, and of what shows between.
  expect(seen.size).toBeLessThan(edgesOf.flat().length / 3);
  for (let i = 0; i < 400; i++) {
    const at = girth * (0.1 + (0.8 * i) / 400);
    const lowEdges = discs.map(({ around, along, r }) => along - Math.sqrt(r ** 2 - (at - around) ** 2));
    const lowest = Math.min(...lowEdges.filter(Number.isFinite));
    expect(
      edgesOf[lowEdges.indexOf(lowest)]?.some((edge) => seen.has(edge)),
      `at ${at}`,
    ).toBe(true);
  }
});

test.each([
  { name: 'a cylinder', wall: cylinder, side: 'foot' },
  { name: 'a taper', wall: flatWall(30, 0.12, 50), side: 'lip' },
] as const)(
  'on $name what lies beyond grown shapes is the same with those alone that are seen',
  ({ wall, side }) => {
    // Small discs strewn in rows; held against growing all of them, by the areas of Clipper 6 (clipper-lib).
    const random = randomFrom(11);
    const grown = 2.5;
    const strewn = Array.from({ length: 400 }, (_, i): Shape => {
      const place = { turn: ((i % 40) + random()) / 40, along: 14 + 9 * Math.floor(i / 40) + 5 * random() };
      const { x, y } = toFlat(wall, place);
      return { contours: [{ closed: true, segments: arcAbout({ x, y }, { x: x + 1.6, y }, 2 * Math.PI) }] };
    });
    const seen = seenShapes(strewn, { wall, side, grown });
    expect(seen.length).toBeLessThan(strewn.length / 2);
    expect(seen.length).toBeGreaterThan(30);
    const options = { wall, side, until: side === 'foot' ? 110 : 0, turns: { from: -0.1, to: 1.1 } };
    const piece = templateOf(wall, { band: { from: 2, to: 108 }, trim: { foot: 0, lip: 0 }, overlap: 0 });
    const sheet = [chordPoints(outline(piece), 0.002)];
    const [few, all] = [seen, strewn].map((shapes) => {
      const beyond = beyondSilhouette(offsetShapes(shapes, grown), options);
      const rings = beyond.flatMap((shape) => directed(shape).map((contour) => chordPoints(contour, 0.002)));
      return { rings, area: clipperArea('intersection', rings, sheet, 'nonzero') };
    });
    expect(all?.area).toBeGreaterThan(0.8 * 100 * girth);
    expectWithin(few?.area ?? 0, all?.area ?? 1, 0.2);
    // Few of them can only lie within all.
    expectWithin(clipperArea('difference', few?.rings ?? [], all?.rings ?? [], 'nonzero'), 0, 0.2);
  },
);
