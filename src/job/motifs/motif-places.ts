// Whether the motifs of a job lie where they are meant to.
import type { Blank } from '../../blank/blank.ts';
import { lipZoneStart } from '../../blank/lip-zone.ts';
import { wallLength } from '../../blank/wall.ts';
import { type Finding, look } from '../../finding.ts';
import { precision } from '../../geometry/tolerance.ts';
import { inMm } from '../../lengths/length.ts';
import { layAbout, type MotifPlace } from '../../pattern/rigid/motif.ts';
import { type FlatWall, flatWall, girthAt, radiusAt, type WallPoint } from '../../unroll/flat-wall.ts';
import type { Footprint } from '../../unroll/footprint.ts';
import { type Ground, type Miss, missesAt, nearestPlace } from '../../unroll/placing.ts';
import { type SheetLengths, sheetOnWall, touchingCone } from '../../unroll/sheet-wall.ts';
import { keepOutOnSheet, motifOnSheet } from '../plan/on-sheet.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';
import type { Job } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';
import type { PlaceReport } from './motif-report.ts';

export interface PlacesInput {
  readonly job: Pick<Job, 'artwork'>;
  readonly jobFile: TypedIn;
  readonly blank: Blank;
}

export interface CheckedPlaces {
  /** One a motif. */
  readonly places: readonly PlaceReport[];
  readonly findings: readonly Finding[];
}

export function checkPlaces(input: PlacesInput, plan: Plan, motifs: readonly PlacedMotif[]): CheckedPlaces {
  if (motifs.length === 0) return { places: [], findings: [] };
  const ground = groundOf(input, plan);
  const places = motifs.map((motif) => placeOf(ground, motif, plan.lengths));
  const findings = motifs.flatMap((motif, i) => {
    const place = places[i];
    return !place || place.lies ? [] : [misplaced(motif, place, input.jobFile)];
  });
  return { places, findings };
}

/** Where motifs may lie, in the sheet's lengths: seam only where a pattern is wrapped around, for alone they are pieces of their own. */
function groundOf({ job, blank }: PlacesInput, { wall, flatBands, build, template, lengths }: Plan): Ground {
  const lipZone = lipZoneStart(blank, wallLength(wall));
  const beside = blank.handle
    ? { what: 'handle' as const, offset: template.seam.start.offset }
    : job.artwork && { what: 'seam' as const, offset: 0 };
  return {
    bands: flatBands.map((flatBand) => {
      const { band, flat } = sheetOnWall(wall, build, flatBand);
      return { band, wall: flat };
    }),
    keepOuts: (blank.keepOuts ?? []).map((keepOut) => keepOutOnSheet(keepOut, lengths)),
    ...(lipZone === undefined ? {} : { lipZone: lengths.toGrown(lipZone) }),
    ...(beside ? { beside } : {}),
  };
}

/** What a motif covers of the wall, as a rectangle about a place of its own. */
interface Covered {
  readonly size: Footprint;
  /** From the motif's place to the rectangle's middle, mm along. */
  readonly above: number;
  readonly ground: Ground;
}

/**
 * A rigid motif is a rectangle on the sheet. A bent one reaches from one level line to another and has the same turns
 * at all heights, as a rectangle has on a cylinder of the girth at its place.
 */
function coveredBy({ motif: { frame }, lay }: PlacedMotif, ground: Ground, at: WallPoint): Covered {
  const across = 2 * Math.max(frame.maxX, -frame.minX);
  const wall = wallUnder(ground, at.along);
  if (!wall || lay === 'rigid')
    return {
      size: { across, up: frame.maxY - frame.minY },
      above: -(frame.minY + frame.maxY) / 2,
      ground,
    };
  const { toAlong } = layAbout(wall, { at, lay } satisfies MotifPlace);
  const [low, high] = [toAlong(-frame.maxY), toAlong(-frame.minY)];
  const level = flatWall(radiusAt(wall, at.along), 0, at.along);
  return {
    size: { across, up: high - low },
    above: (low + high) / 2 - at.along,
    ground: { ...ground, bands: ground.bands.map(({ band }) => ({ band, wall: level })) },
  };
}

/** The wall of the flat band that a height lies in, or of the nearest. */
function wallUnder({ bands }: Ground, along: number): FlatWall | undefined {
  const away = ({ band }: Ground['bands'][number]) => Math.max(0, band.from - along, along - band.to);
  return [...bands].sort((a, b) => away(a) - away(b))[0]?.wall;
}

const raised = ({ turn, along }: WallPoint, by: number): WallPoint => ({ turn, along: along + by });

function placeOf(ground: Ground, placed: PlacedMotif, lengths: SheetLengths): PlaceReport {
  const motif = motifOnSheet(placed, lengths);
  const { at } = motif;
  const covered = coveredBy(motif, ground, at);
  const misses = missesAt(covered.ground, covered.size, raised(at, covered.above), precision);
  const lies = misses.length === 0;
  if (lies) return { lies, misses, nearest: placed.at };
  const nearest = nearestTo(ground, motif);
  return { lies, misses, nearest: nearest ? { ...nearest, along: lengths.toBare(nearest.along) } : null };
}

/** What a bent motif covers changes a little with the girth: the search settles in a few rounds. */
const rounds = 5;

function nearestTo(ground: Ground, motif: PlacedMotif): WallPoint | undefined {
  const { at } = motif;
  let found: WallPoint | undefined;
  for (let i = 0; i < rounds; i++) {
    const covered = coveredBy(motif, ground, found ?? at);
    const place = nearestPlace(covered.ground, covered.size, raised(at, covered.above));
    if (!place) return undefined;
    const next = raised(place, -covered.above);
    if (found && Math.abs(next.along - found.along) < precision / 100) return next;
    found = next;
  }
  return found;
}

const missInWords = ({ what, by }: Miss): string => {
  const size = inMm(Math.max(by, precision));
  switch (what) {
    case 'flat band':
      return `reaches ${size} past where the wall is flat`;
    case 'girth':
      return `is ${size} wider than the wall goes around`;
    case 'seam':
      return `reaches ${size} over the seam`;
    case 'handle':
      return `reaches ${size} into the room of the handle`;
    case 'lip zone':
      return `reaches ${size} into the lip zone`;
    default:
      return `lies on the ${what}, and would have to move ${size} to clear it`;
  }
};

function misplaced(
  { says: name, key, at, size: { across, up } }: PlacedMotif,
  { misses, nearest }: PlaceReport,
  jobFile: TypedIn,
): Finding {
  const instead = nearest
    ? `the nearest place where it lies is turn ${nearest.turn.toFixed(5)}, ${inMm(nearest.along)} along`
    : 'at this size it lies nowhere on this wall; make it smaller';
  const says = `${name}, ${inMm(across)} across and ${inMm(up)} up, ${misses.map(missInWords).join(', and ')}; ${instead}`;
  return look('item-misplaced', typedAt(jobFile, `${key}.at`, at), says);
}

/**
 * The wall that a motif is laid on apart from a wrap: on a wall that bends the cone that touches it at the motif's
 * height, mm along, so that the level line to lay it by is level.
 */
export function wallOfMotif({ wall, build, flatBands, band, lengths }: Plan, { along }: WallPoint): FlatWall {
  return wall.kind === 'straight'
    ? sheetOnWall(wall, build, flatBands[0] ?? band).flat
    : touchingCone(wall, build, lengths.toGrown(along));
}

/** What stands at turn 0, by which a motif is placed around the wall. */
export const lineAtSeam = ({ handle }: Pick<Blank, 'handle'>): string =>
  handle ? 'the middle of the handle' : 'the seam line';

/** Distance around the sheet from turn 0 to a place of it, the shorter way, mm: to the right positive. */
export const fromSeam = (wall: FlatWall, { turn, along }: WallPoint): number =>
  (turn > 0.5 ? turn - 1 : turn) * girthAt(wall, along);
