// Does each motif that is cut apart lie where the job says, whole, level and on a wall that is flat?
import type { Band } from '../../blank/flat-band.ts';
import type { Affine } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { precision } from '../../geometry/tolerance.ts';
import { type Asked, type AskedMotif, type AskedWall, askedRadius } from '../asked.ts';
import { atMost, type Check, largest } from '../check.ts';
import { coverOf } from '../written/centre.ts';
import { readFiles } from '../written/cutter-file.ts';
import { type DeliveredFile, groupsIn, type PieceText, pathNamed } from '../written/delivered-file.ts';
import { crossingOf } from '../written/locate.ts';
import { asIs, frameOf, Reading } from '../written/piece.ts';
import { type RolledCone, rollUp } from '../written/rolled-cone.ts';
import { samplesOn } from '../written/samples.ts';
import { sizeLimit } from './check-layer-files.ts';
import { areaLimit, areaOff } from './check-register.ts';

/** What was measured of one motif. */
interface Measured {
  /** What is missing, unread, or no plain path in mm. */
  readonly faults: readonly string[];
  readonly place: number;
  readonly area: number;
  readonly level: number;
  /** Past where the wall is flat, more than it was made to be. */
  readonly past: number;
}

const gone = (fault: string): Measured => ({
  faults: [fault],
  place: Number.NaN,
  area: 100,
  level: Number.NaN,
  past: Number.NaN,
});

/** How far up and down the wall its slope is taken, mm. */
const slopeOver = 0.5;

/**
 * The cones that touch the wall at a height: by its slope about it, and by that above and below it alone, which differ where a
 * corner or an end of a wall that bends is so near.
 */
function conesAt(wall: AskedWall, along: number): readonly RolledCone[] {
  const radius = askedRadius(wall, along);
  if (wall.kind === 'straight') return [{ from: along, radius, sine: wall.sine }];
  const [low, high] = [-slopeOver, slopeOver].map((by) => askedRadius(wall, along + by)) as [number, number];
  const sines = [(high - low) / (2 * slopeOver), (radius - low) / slopeOver, (high - radius) / slopeOver];
  return sines.map((sine) => ({ from: along, radius, sine }));
}

const pastFlat = (reach: Band, flatBands: readonly Band[]): number => {
  const past = flatBands.map(({ from, to }) => Math.max(0, from - reach.from, reach.to - to));
  return past.length === 0 ? reach.to - reach.from : Math.min(...past);
};

/** The line of a guide by its role and name, as curves. */
function lineOf(reading: Reading, guide: DeliveredFile, role: string, id: string): Contour | undefined {
  const data = pathNamed(guide, role, id)?.data;
  return data === undefined ? undefined : reading.path(guide, data, asIs)[0];
}

/** From a guide's numbers to the frame of its motif: the origin where plumb and level line cross, y up the wall. */
function motifFrame(plumb: Contour, level: Contour): Affine | undefined {
  const [foot, lip] = [plumb.segments[0]?.from, plumb.segments.at(-1)?.to];
  if (!foot || !lip) return undefined;
  const crossing = crossingOf(plumb, level);
  return crossing && frameOf([crossing, { x: crossing.x + lip.x - foot.x, y: crossing.y + lip.y - foot.y }]);
}

/** How far a line is off level on the one of some cones on which it is the least. */
function levelOn(cones: readonly RolledCone[], line: readonly Point[], along: number) {
  const tried = cones.map((cone) => ({
    cone,
    level: largest(line.map((p) => Math.abs(rollUp(cone, p).along - along))),
  }));
  return tried.reduce((best, one) => (one.level < best.level ? one : best));
}

const sizeFaults = ({ name, perUnit: { across, up } }: DeliveredFile): string[] =>
  [across, up].every((unit) => Math.abs(unit - 1) <= sizeLimit)
    ? []
    : [`${name}: a unit of it is ${across.toPrecision(5)} by ${up.toPrecision(5)} mm, not 1 mm`];

function measure(asked: Asked, motif: AskedMotif, text: PieceText | undefined): Measured {
  const read = text && readFiles(text, asked.cutter);
  if (!read) return gone(`${motif.name}: no cut file and guide`);
  const { cut, guide } = read;
  const reading = new Reading();
  const [plumb, level] = [
    lineOf(reading, guide, 'register', 'plumb-line'),
    lineOf(reading, guide, 'trim', 'level-line'),
  ];
  const frame = plumb && level && motifFrame(plumb, level);
  if (!frame) return gone(`${guide.name}: no plumb line and level line that cross`);
  const levels = samplesOn(reading.contours(guide, guideLevel(guide), frame));
  const { level: off, cone } = levelOn(conesAt(asked.wall, motif.along), levels, motif.along);
  const alongOf = (p: Point): number => rollUp(cone, p).along;
  const layers = groupsIn(cut, 'artwork').map((group) => ({
    name: group.layer ?? '',
    shapes: group.paths.map(({ data }) => reading.path(cut, data, frame)),
  }));
  const offs = motif.layers.map(({ layer, area, middle }) => {
    const shapes = layers.find(({ name }) => name === layer)?.shapes;
    if (!shapes) return { place: Number.NaN, area: 100 };
    const wanted = { x: middle.right, y: middle.up };
    const cover = coverOf(shapes, wanted);
    return { place: distance(cover.middle, wanted), area: areaOff(cover.area, area) };
  });
  const all = layers.flatMap(({ shapes }) => shapes.flat());
  const open = all.filter(({ closed }) => !closed).map(() => `${cut.name}: a cut shape left open`);
  const reached = samplesOn(all).map(alongOf);
  const past = pastFlat({ from: Math.min(...reached), to: Math.max(...reached) }, asked.flatBands);
  return {
    faults: [
      ...cut.faults,
      ...guide.faults,
      ...reading.faults,
      ...sizeFaults(cut),
      ...sizeFaults(guide),
      ...open,
    ],
    place: largest(offs.map(({ place }) => place)),
    area: largest(offs.map(({ area }) => area)),
    level: off,
    past: past - (motif.reach ? pastFlat(motif.reach, asked.flatBands) : 0),
  };
}

const guideLevel = (guide: DeliveredFile) =>
  groupsIn(guide, 'trim').map((group) => ({
    ...group,
    paths: group.paths.filter(({ id }) => id === 'level-line'),
  }));

/** Nothing where no motif is cut apart. */
export function motifChecks(asked: Asked, files: readonly PieceText[]): Check[] {
  const { motifs = [] } = asked;
  if (motifs.length === 0) return [];
  const all = motifs.map((motif) =>
    measure(
      asked,
      motif,
      files.find(({ stem }) => stem === motif.name),
    ),
  );
  const faults = all.flatMap((one) => one.faults);
  const [first] = faults;
  const worst = (of: (one: Measured) => number) => largest(all.map(of));
  return [
    atMost({
      rule: 'motif-files',
      value: faults.length,
      limit: 0,
      unit: 'count',
      says: `things missing or wrong in the files of motifs cut apart${first === undefined ? '' : `, such as ${first}`}`,
    }),
    atMost({
      rule: 'motif-place',
      value: worst(({ place }) => place),
      limit: precision,
      unit: 'mm',
      says: 'the middle of a motif off its place by the lines it is laid by',
    }),
    atMost({
      rule: 'motif-whole',
      value: worst(({ area }) => area),
      limit: areaLimit,
      unit: '%',
      says: 'area of a motif off what it was made with',
    }),
    atMost({
      rule: 'motif-level',
      value: worst(({ level }) => level),
      limit: precision,
      unit: 'mm',
      says: 'level line of a motif off level, once it is on the wall',
    }),
    atMost({
      rule: 'motif-flat',
      value: worst(({ past }) => past),
      limit: precision,
      unit: 'mm',
      says: 'a motif past where the wall is flat, more than it was made to be',
    }),
  ];
}
