// The film of a cut file, taken back to the wall and shown as far as it is in sight.
import { type Box, boxesMeet, boxOfPoints, liesIn } from '../../geometry/box.ts';
import type { Contour, Segment } from '../../geometry/contour.ts';
import { type GridRing, ringsIn } from '../../geometry/grid-ring.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { clipPolygons } from '../../geometry/polygon-clip.ts';
import { chordCount, pointAt } from '../../geometry/segment.ts';
import { girthAt, radiusAt } from '../../unroll/flat-wall.ts';
import { picturePath } from '../rolled-path.ts';
import { type Camera, seen } from './rolled-camera.ts';
import { cornersOf } from './rolled-rings.ts';
import type { RolledSheet } from './rolled-sheet.ts';
import type { Sight } from './rolled-sight.ts';
import { isStraight, type RolledVessel, rolled } from './rolled-vessel.ts';

/** A place on the wall in mm: x is turn times the girth at the reference height, y is mm along. */
type WallRing = readonly Point[];

interface Piece {
  /** Which of the sheets it is cut from. */
  readonly sheet: number;
  readonly rings: readonly WallRing[];
  readonly box: Box;
}

/** One layer of film as it lies on the wall. */
export interface Film {
  readonly layer: string;
  readonly colour: string;
  readonly pieces: readonly Piece[];
}

/** Shown for film whose file names no colour. */
export const uncoloured = '#43525c';

const referenceGirth = ({ wall }: RolledVessel): number => girthAt(wall, wall.reference);

/** The longest straight step around the wall whose sagitta stays under the tolerance: s = c² / 8R. */
function stepFor({ wall, band }: RolledVessel, tolerance: number): number {
  const least = Math.min(radiusAt(wall, band.from), radiusAt(wall, band.to));
  return Math.sqrt(8 * least * tolerance);
}

/** The layers of artwork in the sheets' drawings, in their order, each path's area by the even-odd rule. */
export function filmOf(
  sheets: readonly RolledSheet[],
  vessel: RolledVessel,
  tolerance: number,
): readonly Film[] {
  const measure = { step: stepFor(vessel, tolerance), girth: referenceGirth(vessel), tolerance };
  const films = new Map<string, { layer: string; colour: string; pieces: Piece[] }>();
  sheets.forEach((sheet, index) => {
    for (const { role, layer = '', colour = uncoloured, paths } of sheet.drawing.groups) {
      if (role !== 'artwork') continue;
      const film = films.get(layer) ?? { layer, colour, pieces: [] };
      films.set(layer, film);
      for (const { contours } of paths) {
        const rings = contours.map((contour) => onWall(contour, sheet, measure));
        film.pieces.push({ sheet: index, rings, box: boxOfPoints(rings.flat()) });
      }
    }
  });
  return [...films.values()];
}

const reach = (s: Segment): number =>
  s.kind === 'line'
    ? distance(s.from, s.to)
    : distance(s.from, s.c1) + distance(s.c1, s.c2) + distance(s.c2, s.to);

interface Measure {
  readonly step: number;
  readonly girth: number;
  readonly tolerance: number;
}

function onWall(contour: Contour, sheet: RolledSheet, { step, girth, tolerance }: Measure): WallRing {
  return contour.segments.flatMap((s) => {
    const count = Math.max(chordCount(s, tolerance), Math.ceil(reach(s) / step));
    return Array.from({ length: count }, (_, i) => {
      const { turn, along } = sheet.toWall(pointAt(s, i / count));
      return { x: turn * girth, y: along };
    });
  });
}

/** A level line of the finished sheet as far as it is in sight, in turns. Nothing of it is where right is not past left. */
interface Level {
  readonly along: number;
  readonly left: number;
  readonly right: number;
}

/** A part of the finished sheet that is in sight, by its level lines from the foot up. */
type Window = readonly Level[];

/** What is in sight of a sheet. Behind the seam it goes on at the other end, so there may be two parts. */
function windowsOf(sheet: RolledSheet, sight: readonly Sight[], facing: number): readonly Window[] {
  return [-1, 0, 1]
    .map(
      (round): Window =>
        sight.map(({ along, half }) => {
          const [from, to] = [facing + round - half, facing + round + half];
          const within = (turn: number) => Math.min(to, Math.max(from, turn));
          const [start, finish] = sheet.sidesAt(along);
          return { along, left: within(start), right: within(finish) };
        }),
    )
    .filter((window) => window.some(({ left, right }) => right > left));
}

/** A window as it lies on the wall, and a box that lies in it: what is inside needs no cutting. */
export interface Frame {
  readonly lefts: WallRing;
  readonly rights: WallRing;
  readonly inner: Box;
}

function frameOf(girth: number, { band }: RolledSheet, window: Window): Frame {
  const lefts = window.map(({ along, left }) => ({ x: left * girth, y: along }));
  const rights = window.map(({ along, right }) => ({ x: right * girth, y: along }));
  return {
    lefts,
    rights,
    inner: {
      minX: Math.max(...lefts.map(({ x }) => x)),
      maxX: Math.min(...rights.map(({ x }) => x)),
      minY: band.from,
      maxY: band.to,
    },
  };
}

/** The outline of as much of a frame as a piece can reach. */
function ringFor({ lefts, rights }: Frame, { minY, maxY }: Box): WallRing {
  const first = Math.max(
    0,
    lefts.findLastIndex(({ y }) => y < minY),
  );
  const past = lefts.findIndex(({ y }) => y > maxY);
  const end = past < 0 ? lefts.length : past + 1;
  return [...lefts.slice(first, end), ...rights.slice(first, end).reverse()];
}

/** For each sheet, the parts of it that are in sight; `sight` is for level lines close together over the whole band. */
export function framesOf(
  sheets: readonly RolledSheet[],
  vessel: RolledVessel,
  sight: readonly Sight[],
  facing: number,
): readonly (readonly Frame[])[] {
  const girth = referenceGirth(vessel);
  return sheets.map((sheet) => {
    const own = sight.filter(({ along }) => along >= sheet.band.from && along <= sheet.band.to);
    return windowsOf(sheet, own, facing).map((window) => frameOf(girth, sheet, window));
  });
}

/**
 * The finished film on the wall unrolled about the vessel's axis: x is turn times the girth at the reference height, y is
 * mm along. What is cut away after laying, and what laps under, is not of it. Tolerance in mm.
 */
export function finishedFilm(
  sheets: readonly RolledSheet[],
  vessel: RolledVessel,
  tolerance: number,
): readonly { readonly layer: string; readonly colour: string; readonly pieces: readonly WallRing[][] }[] {
  const { from, to } = vessel.band;
  const steps = Math.ceil((to - from) / bentStep);
  const even = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
  const levels = [...new Set([...even, ...sheets.flatMap(({ band }) => [band.from, band.to])])];
  const sight = levels.sort((a, b) => a - b).map((along): Sight => ({ along, half: 1 / 2 }));
  const frames = framesOf(sheets, vessel, sight, 1 / 2);
  return filmOf(sheets, vessel, tolerance).map(({ layer, colour, pieces }) => ({
    layer,
    colour,
    pieces: pieces.map((piece) =>
      (frames[piece.sheet] ?? []).flatMap((window) => piecesWithin(piece, window)),
    ),
  }));
}

/**
 * Path data of every piece of film that is in sight, cut at the finished edges and where the wall turns away or is
 * hidden.
 */
export function filmPaths(
  film: Film,
  frames: readonly (readonly Frame[])[],
  vessel: RolledVessel,
  camera: Camera,
  tolerance: number,
): readonly string[] {
  const steps = stepsFor(vessel, tolerance);
  return film.pieces.flatMap((piece) => {
    const rings = (frames[piece.sheet] ?? []).flatMap((window) => piecesWithin(piece, window));
    const data = rings.map((ring) => picturePath(seenRing(ring, vessel, camera, steps), true)).join('');
    return data === '' ? [] : [data];
  });
}

function piecesWithin(piece: Piece, window: Frame): readonly WallRing[] {
  if (liesIn(piece.box, window.inner)) return piece.rings;
  const frame = ringFor(window, piece.box);
  if (!boxesMeet(piece.box, boxOfPoints(frame))) return [];
  const units = unitsFor([...piece.rings.flat(), ...frame]);
  const onGrid = (ring: WallRing): GridRing =>
    ring.map(({ x, y }) => ({ x: Math.round(x * units), y: Math.round(y * units) }));
  const regions = clipPolygons('intersection', piece.rings.map(onGrid), [onGrid(frame)], 'evenodd');
  return ringsIn(regions).map((ring) => ring.map(({ x, y }) => ({ x: x / units, y: y / units })));
}

/** Grid units per mm, a power of two: at most 2^12, and few enough for products of large vessels to stay exact. */
function unitsFor(points: readonly Point[]): number {
  const { minX, minY, maxX, maxY } = boxOfPoints(points);
  const far = Math.max(1, Math.abs(minX), Math.abs(minY), Math.abs(maxX), Math.abs(maxY));
  return 2 ** Math.min(12, 24 - Math.ceil(Math.log2(far)));
}

/** How far a straight line on the wall may go before it is bent with it, mm around and mm up; and where it has corners. */
interface Steps {
  readonly around: number;
  readonly up: number;
  readonly corners: readonly number[];
}

function stepsFor(vessel: RolledVessel, tolerance: number): Steps {
  const { profile } = vessel;
  const corners = cornersOf(profile);
  // The sharpest bend of a curve in its profile, by how the lean changes from circle to circle: s = c² / 8R again.
  const bend = Math.max(
    ...profile.slice(1).map((ring, i) => {
      const before = profile[i] ?? ring;
      return ring.along === before.along
        ? 0
        : Math.abs(ring.lean - before.lean) / (ring.along - before.along);
    }),
  );
  return { around: stepFor(vessel, tolerance), up: Math.sqrt((8 * tolerance) / bend), corners };
}

/** Where a line has to be bent, as shares of it: at even steps, and where it crosses a corner of the wall. */
function bendsOf(p: Point, q: Point, { around, up, corners }: Steps): readonly number[] {
  const count = Math.max(1, Math.ceil(Math.abs(q.x - p.x) / around), Math.ceil(Math.abs(q.y - p.y) / up));
  const even = Array.from({ length: count }, (_, n) => n / count);
  const crossed = corners
    .map((along) => (along - p.y) / (q.y - p.y))
    .filter((share) => share > 0 && share < 1);
  return crossed.length === 0 ? even : [...even, ...crossed].sort((a, b) => a - b);
}

/** A ring as it is seen. Its straight lines go around the wall and up it: they are cut into steps before they are bent. */
function seenRing(ring: WallRing, vessel: RolledVessel, camera: Camera, steps: Steps): readonly Point[] {
  const girth = referenceGirth(vessel);
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return bendsOf(p, q, steps).map((share) => {
      const { x, y } = { x: p.x + (q.x - p.x) * share, y: p.y + (q.y - p.y) * share };
      return seen(camera, rolled(vessel, { turn: x / girth, along: y }));
    });
  });
}

/** Level lines of the band that a straight wall is looked at on: beside a handle its sides are not the same turn all the way. */
const straightSteps = 16;

/** How close together the level lines of a band on a wall that bends are, mm along. */
const bentStep = 1;

/** How close together level lines of the finished sheet must be. */
export const levelStep = (vessel: RolledVessel): number =>
  isStraight(vessel) ? (vessel.band.to - vessel.band.from) / straightSteps : bentStep;
