// Film at the finished edges: what is left out, counted and measured by clipper-lib (Angus Johnson) on the sheet.
import { describe, expect, test } from 'vitest';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { toWall } from '../../../src/unroll/flat-wall.ts';
import { box, circle } from '../../geometry/drawn.ts';
import {
  combineRings,
  dense,
  type MadeWrap,
  makeWrap,
  pieceRing,
  ringsArea,
  shapesArea,
  toRing,
} from '../a-wrap.ts';
import { height, shape, wavyStripe, width, withCopies } from '../art.ts';

const film = { minPiece: 4, minWidth: 1 };
const ends = ['foot', 'lip'] as const;
const dot = withCopies(shape(circle({ x: 12, y: 28 }, 5)));

/** The finished band as a polygon on the sheet: the piece without its trims. */
const bandRing = (made: MadeWrap) => {
  const { template } = made;
  return pieceRing({ ...made, template: { ...template, piece: template.band } }, 0);
};

/** What is left between two sides that clipper-lib and we round otherwise, mm². */
const crumb = 0.01;

/** Pieces of film inside the band that reach its end within 0.02 mm, with their areas; by clipper-lib. */
function piecesAt(made: MadeWrap, end: 'foot' | 'lip') {
  const rings = made.contours.map((contour) => toRing(dense(contour, 2)));
  const within = combineRings('intersection', combineRings('union', rings, [], 'evenodd'), bandRing(made));
  const edge = end === 'foot' ? made.template.band.from : made.template.band.to;
  return within
    .map((points) => {
      const alongs = points.map(({ X, Y }) => toWall(made.lay.wall, { x: X / 1e5, y: Y / 1e5 }).along);
      return { area: Math.abs(ringsArea([points])), low: Math.min(...alongs), high: Math.max(...alongs) };
    })
    .filter(({ area }) => area > crumb)
    .filter(({ low, high }) => Math.abs((end === 'foot' ? low : high) - edge) < 0.02);
}

describe.each([
  { name: 'a cylinder', sine: 0, lay: 'even' as const },
  { name: 'a taper', sine: 0.12, lay: 'even' as const },
  { name: 'a taper, angles kept', sine: 0.12, lay: 'conformal' as const },
])('edges that fade on $name', ({ sine, lay }) => {
  const given = { shapes: dot, width, height, sine, lay, band: { from: 10, to: 75 } };
  const made = makeWrap({ ...given, edges: { isFaded: true, ends, film } });

  test('hold no motif that an edge would cut, and all the others', () => {
    for (const end of ends) expect(piecesAt(made, end)).toEqual([]);
    const left = made.wrap.edges.faded?.motifs ?? [];
    expect(left.length).toBeGreaterThan(0);
    const straight = makeWrap(given);
    const within = (wrap: MadeWrap) =>
      (wrap.wrap.layers[0]?.shapes ?? []).filter(({ contours }) => {
        const points = contours.flatMap((contour) => dense(contour, 5));
        const places = points.map((p) => toWall(wrap.lay.wall, p));
        const alongs = places.map(({ along }) => along);
        const turns = places.map(({ turn }) => turn);
        const isInBand = Math.min(...alongs) > 10 && Math.max(...alongs) < 75;
        return isInBand && Math.min(...turns) > 0.02 && Math.max(...turns) < 0.98;
      });
    expect(within(made)).toHaveLength(within(straight).length);
    expect(shapesArea(within(made))).toBeCloseTo(shapesArea(within(straight)), 1);
    // Rows of motifs that an edge meets, each with one motif a repeat around.
    for (const { count } of left) expect(count % made.closing.n).toBe(0);
  });

  test('agree where the seam is: what leaves one end comes in at the other', () => {
    const areas = made.wrap.layers[0]?.shapes.map(shapeArea) ?? [];
    expect(Math.max(...areas)).toBeLessThan(2 * Math.PI * 25 * made.closing.scaleAcross ** 2);
    expect(made.wrap.fitError).toBeLessThan(0.005);
  });
});

test('film that hangs together all around stays, cut straight, and is told of', () => {
  const { wrap } = makeWrap({
    shapes: [wavyStripe(10, 4), ...dot],
    width,
    height,
    edges: { isFaded: true, ends, film },
  });
  expect(wrap.edges.faded?.hasNet).toBe(true);
  expect(
    makeWrap({ shapes: dot, width, height, edges: { isFaded: true, ends, film } }).wrap.edges.faded?.hasNet,
  ).toBe(false);
});

test('at the end where the next piece goes on, nothing is left out', () => {
  const { wrap } = makeWrap({
    shapes: dot,
    width,
    height,
    band: { from: 10, to: 75 },
    edges: { isFaded: true, ends: ['foot'], film },
  });
  expect(wrap.edges.faded?.motifs.map(({ end }) => end)).toEqual(['foot']);
});

describe.each([
  { name: 'a cylinder', sine: 0, lay: 'even' as const },
  { name: 'a taper', sine: 0.12, lay: 'even' as const },
  { name: 'a taper, angles kept', sine: -0.1, lay: 'conformal' as const },
])('slivers of a straight cut on $name', ({ sine, lay }) => {
  // Caps of dots, tips of a comb on a body that stays, and a body that is cut in its middle.
  const comb = shape(box(22, 2, 12, 12));
  const tips = [23, 27, 31].map((x) => shape(box(x, 13.5, 1.4, 3.5)));
  const caps = withCopies(shape(circle({ x: 12, y: 34.2 }, 5)));
  const art = [...caps, comb, ...tips];
  const band = { from: 10, to: 84.5 };
  const given = { shapes: art, width, height, sine, lay, band, scale: 'across' as const };

  test('are gone at every repeat, and nothing else is', () => {
    const before = makeWrap(given);
    const after = makeWrap({ ...given, edges: { isFaded: false, ends, film } });
    let told = 0;
    for (const end of ends) {
      const isSliver = ({ area, low, high }: ReturnType<typeof piecesAt>[number]) =>
        area < film.minPiece || high - low < film.minWidth;
      const slivers = piecesAt(before, end).filter(isSliver);
      expect(piecesAt(after, end).filter(isSliver)).toEqual([]);
      expect(piecesAt(after, end)).toHaveLength(piecesAt(before, end).length - slivers.length);
      told += after.wrap.edges.slivers.find((left) => left.end === end)?.count ?? 0;
      // The overlap shows some of them twice, and the sides of the piece may cut one that was none.
      expect(slivers.length - told).toBeLessThanOrEqual(3);
    }
    expect(told).toBeGreaterThan(0);
    const area = (made: MadeWrap) =>
      ringsArea(
        combineRings(
          'intersection',
          made.contours.map((contour) => toRing(dense(contour, 2))),
          bandRing(made),
          'evenodd',
        ),
      );
    const gone = ends.flatMap((end) =>
      piecesAt(before, end).filter(
        ({ area: size, low, high }) => size < film.minPiece || high - low < film.minWidth,
      ),
    );
    expect(area(before) - area(after)).toBeCloseTo(
      gone.reduce((sum, piece) => sum + piece.area, 0),
      0,
    );
  });
});
