// The film of a cut file, taken back to the wall and shown as far as it is in sight.
import type { Drawing } from '../drawing/drawing.ts';
import { type Box, boxesMeet, boxOfPoints } from '../geometry/box.ts';
import type { Contour, Segment } from '../geometry/contour.ts';
import { distance, type Point, subtract } from '../geometry/point.ts';
import { clipPolygons, type GridRing } from '../geometry/polygon-clip.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';
import { girthAt, radiusAt, toWall } from '../unroll/flat-wall.ts';
import { type Camera, inSight, seen } from './rolled-camera.ts';
import { picturePath } from './rolled-path.ts';
import { type RolledVessel, rolled, sidesAt } from './rolled-vessel.ts';

/** A place on the wall in mm: x is turn times the girth at the reference height, y is mm along. */
type WallRing = readonly Point[];

interface Piece {
  readonly rings: readonly WallRing[];
  readonly box: Box;
}

/** One layer of film as it lies on the wall. */
export interface Film {
  readonly layer: string;
  readonly colour: string;
  readonly pieces: readonly Piece[];
}

/** Shown for artwork whose file names no colour. */
const uncoloured = '#43525c';

const referenceGirth = ({ wall }: RolledVessel): number => girthAt(wall, wall.reference);

/** The longest straight step around the wall whose sagitta stays under the tolerance: s = c² / 8R. */
function stepFor({ wall, band }: RolledVessel, tolerance: number): number {
  const least = Math.min(radiusAt(wall, band.from), radiusAt(wall, band.to));
  return Math.sqrt(8 * least * tolerance);
}

/** The layers of artwork in a drawing, in its order, each path's area by the even-odd rule. */
export function filmOf(drawing: Drawing, vessel: RolledVessel, tolerance: number): readonly Film[] {
  const step = stepFor(vessel, tolerance);
  return drawing.groups
    .filter(({ role }) => role === 'artwork')
    .map(({ layer, colour, paths }) => ({
      layer: layer ?? '',
      colour: colour ?? uncoloured,
      pieces: paths.map(({ contours }) => {
        const rings = contours.map((contour) => onWall(contour, vessel, step, tolerance));
        return { rings, box: boxOfPoints(rings.flat()) };
      }),
    }));
}

const reach = (s: Segment): number =>
  s.kind === 'line'
    ? distance(s.from, s.to)
    : distance(s.from, s.c1) + distance(s.c1, s.c2) + distance(s.c2, s.to);

function onWall(contour: Contour, vessel: RolledVessel, step: number, tolerance: number): WallRing {
  const girth = referenceGirth(vessel);
  return contour.segments.flatMap((s) => {
    const count = Math.max(chordCount(s, tolerance), Math.ceil(reach(s) / step));
    return Array.from({ length: count }, (_, i) => {
      const { turn, along } = toWall(vessel.wall, subtract(pointAt(s, i / count), vessel.origin));
      return { x: turn * girth, y: along };
    });
  });
}

/** A part of the finished sheet that is in sight: from `left` to `right` at every height of the band, in turns. */
export interface Window {
  readonly left: (along: number) => number;
  readonly right: (along: number) => number;
}

/** What is in sight of the sheet. Behind the seam it goes on at the other end, so there may be two parts. */
export function windowsOf(vessel: RolledVessel, camera: Camera): readonly Window[] {
  const half = inSight(vessel.profile.halfAngle, camera.elevation);
  return [-1, 0, 1]
    .map((round): Window => {
      const [from, to] = [camera.facing + round - half, camera.facing + round + half];
      const within = (turn: number) => Math.min(to, Math.max(from, turn));
      return {
        left: (along) => within(sidesAt(vessel, along)[0]),
        right: (along) => within(sidesAt(vessel, along)[1]),
      };
    })
    .filter(({ left, right }) => heightsOf(vessel).some((along) => right(along) > left(along)));
}

/** Heights at which a side of the sheet is looked up: beside a handle it is not quite the same turn all the way. */
const sideSteps = 16;

const heightsOf = ({ band }: RolledVessel): readonly number[] =>
  Array.from({ length: sideSteps + 1 }, (_, i) => band.from + ((band.to - band.from) * i) / sideSteps);

/** A window as a ring on the wall, and a box that lies in it: what is inside needs no cutting. */
interface Frame {
  readonly ring: WallRing;
  readonly inner: Box;
}

function frameOf(vessel: RolledVessel, { left, right }: Window): Frame {
  const girth = referenceGirth(vessel);
  const heights = heightsOf(vessel);
  const lefts = heights.map((y) => ({ x: left(y) * girth, y }));
  const rights = heights.map((y) => ({ x: right(y) * girth, y }));
  return {
    ring: [...lefts, ...rights.toReversed()],
    inner: {
      minX: Math.max(...lefts.map(({ x }) => x)),
      maxX: Math.min(...rights.map(({ x }) => x)),
      minY: vessel.band.from,
      maxY: vessel.band.to,
    },
  };
}

/** Path data of every piece of film that is in sight, cut at the finished edges and where the wall turns away. */
export function filmPaths(
  film: Film,
  vessel: RolledVessel,
  camera: Camera,
  tolerance: number,
): readonly string[] {
  const windows = windowsOf(vessel, camera).map((window) => frameOf(vessel, window));
  const step = stepFor(vessel, tolerance);
  return film.pieces.flatMap((piece) => {
    const rings = windows.flatMap((window) => piecesWithin(piece, window));
    const data = rings.map((ring) => picturePath(seenRing(ring, vessel, camera, step), true)).join('');
    return data === '' ? [] : [data];
  });
}

const holds = (outer: Box, inner: Box): boolean =>
  outer.minX <= inner.minX &&
  inner.maxX <= outer.maxX &&
  outer.minY <= inner.minY &&
  inner.maxY <= outer.maxY;

function piecesWithin(piece: Piece, window: Frame): readonly WallRing[] {
  if (!boxesMeet(piece.box, boxOfPoints(window.ring))) return [];
  if (holds(window.inner, piece.box)) return piece.rings;
  const units = unitsFor([...piece.rings.flat(), ...window.ring]);
  const onGrid = (ring: WallRing): GridRing =>
    ring.map(({ x, y }) => ({ x: Math.round(x * units), y: Math.round(y * units) }));
  const regions = clipPolygons('intersection', piece.rings.map(onGrid), [onGrid(window.ring)], 'evenodd');
  return regions
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .map((ring) => ring.map(({ x, y }) => ({ x: x / units, y: y / units })));
}

/** Grid units per mm, a power of two: at most 2^12, and few enough for products of large vessels to stay exact. */
function unitsFor(points: readonly Point[]): number {
  const { minX, minY, maxX, maxY } = boxOfPoints(points);
  const far = Math.max(1, Math.abs(minX), Math.abs(minY), Math.abs(maxX), Math.abs(maxY));
  return 2 ** Math.min(12, 24 - Math.ceil(Math.log2(far)));
}

/** A ring as it is seen. Its straight lines go around the wall: they are cut into steps before they are bent. */
function seenRing(ring: WallRing, vessel: RolledVessel, camera: Camera, step: number): readonly Point[] {
  const girth = referenceGirth(vessel);
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    const count = Math.max(1, Math.ceil(Math.abs(q.x - p.x) / step));
    return Array.from({ length: count }, (_, n) => {
      const { x, y } = { x: p.x + ((q.x - p.x) * n) / count, y: p.y + ((q.y - p.y) * n) / count };
      return seen(camera, rolled(vessel, { turn: x / girth, along: y }));
    });
  });
}
