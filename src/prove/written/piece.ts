// A delivered piece put on its wall: read, laid in the frame of its cone, ready to be measured.
import type { Band } from '../../blank/flat-band.ts';
import { type Affine, compose, movePoint } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { add, type Point, subtract } from '../../geometry/point.ts';
import { asinc } from '../../geometry/sinc.ts';
import { precision } from '../../geometry/tolerance.ts';
import type { Asked } from '../asked.ts';
import { type DeliveredFile, type DeliveredGroup, groupsIn, pathNamed } from './delivered-file.ts';
import { type FlatSides, sheetCone } from './measured-cone.ts';
import { readPath } from './path-reader.ts';
import { girthOf, type RolledCone, rollUp } from './rolled-cone.ts';

/** A layer of what is cut, in the frame of the piece's cone. */
export interface ProvedLayer {
  readonly name: string;
  /** Each the outer contour first, then its holes. */
  readonly shapes: readonly (readonly Contour[])[];
}

/** What was read of a cut file and its guide, in one frame. */
export interface ReadPiece {
  readonly cut: DeliveredFile;
  readonly guide: DeliveredFile;
  /** From the files' numbers to that frame. */
  readonly place: Affine;
  readonly outline: readonly Contour[];
  readonly layers: readonly ProvedLayer[];
  /** What could not be read. */
  readonly faults: readonly string[];
}

/** A piece in the frame of its cone. */
export interface ProvedPiece extends ReadPiece {
  /** Which file of its kind, from 1: from the foot up, panels in the order of their turns. */
  readonly number: number;
  /** Where its lines `seam-start` and `seam-finish` are meant to lie; 0 and 1 but for panels. Its frame begins at the first. */
  readonly turns: { readonly from: number; readonly to: number };
  readonly cone: RolledCone;
  /** The finished band, mm along. */
  readonly band: Band;
  readonly trim: { readonly lip: number; readonly foot: number };
  /** Where the foot end of `seam-start` lies in that frame: at its origin where there is a seam. */
  readonly shift: Point;
  /** How far its sides are to begin from the line at its first turn and to end before that at its last, mm across. */
  readonly beside: { readonly start: number; readonly finish: number };
  /** What it is to go on before its start and past its finish, mm. */
  readonly before: number;
  readonly overlap: number;
  /** Whether its sides follow a winding line. */
  readonly winds?: boolean;
}

export interface PieceFiles {
  readonly number: number;
  readonly cut: DeliveredFile;
  readonly guide: DeliveredFile;
  /** Of a panel: its turns; 0 and 1 for a whole piece. */
  readonly turns: { readonly from: number; readonly to: number };
  /** Whether it is the lowest and the highest of its job: only there are trims. */
  readonly isLowest: boolean;
  readonly isHighest: boolean;
}

/** A file's own numbers. */
export const asIs: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** Curves of groups, and what could not be read. */
export class Reading {
  readonly faults: string[] = [];

  contours(file: DeliveredFile, groups: readonly DeliveredGroup[], place: Affine): Contour[] {
    return groups.flatMap(({ paths }) => paths.flatMap(({ data }) => this.path(file, data, place)));
  }

  path(file: DeliveredFile, data: string, place: Affine): readonly Contour[] {
    try {
      return readPath(data, file.toTrue ? compose(file.toTrue, place) : place);
    } catch (fault) {
      this.faults.push(`${file.name}: ${fault instanceof Error ? fault.message : String(fault)}`);
      return [];
    }
  }
}

/** The two ends of a straight path, foot first. */
export type StraightLine = readonly [Point, Point];

/** A straight path of a guide's group, in the file's numbers; undefined where it can't be found. */
export function straightLine(guide: DeliveredFile, id: string, role = 'seam'): StraightLine | undefined {
  const reading = new Reading();
  const data = pathNamed(guide, role, id)?.data;
  const segments = data === undefined ? [] : (reading.path(guide, data, asIs)[0]?.segments ?? []);
  const [from, to] = [segments[0]?.from, segments.at(-1)?.to];
  return from && to ? [from, to] : undefined;
}

/** From a file's numbers to the frame of a line: x to its right, y up along it. */
export function frameOf([foot, lip]: StraightLine): Affine {
  const along = subtract(lip, foot);
  const length = Math.hypot(along.x, along.y);
  const up = { x: along.x / length, y: along.y / length };
  const right = { x: -up.y, y: up.x };
  return {
    a: right.x,
    b: up.x,
    c: right.y,
    d: up.y,
    e: -(right.x * foot.x + right.y * foot.y),
    f: -(up.x * foot.x + up.y * foot.y),
  };
}

/** The piece of two files, from this height up; undefined where the guide's seam lines can't be found. */
export function placePiece(asked: Asked, files: PieceFiles, from: number): ProvedPiece | undefined {
  const { number, cut, guide, turns, isLowest, isHighest } = files;
  const [start, finish] = ['seam-start', 'seam-finish'].map((id) => straightLine(guide, id));
  if (!start || !finish) return undefined;
  const onLine = frameOf(start);
  const sides: FlatSides = {
    length: Math.hypot(start[1].x - start[0].x, start[1].y - start[0].y),
    finish: [movePoint(onLine, finish[0]), movePoint(onLine, finish[1])],
    span: turns.to - turns.from,
    atHandle: { start: turns.from === 0, finish: turns.to === 1 },
  };
  const { cone, beside, shift } = sheetCone(asked, from, sides);
  const top = rollUp(cone, add(movePoint(onLine, start[1]), shift)).along;
  const lie = {
    band: { from, to: isHighest ? asked.band.to : levelAbove(asked, from, top) },
    trim: {
      foot: isLowest ? asked.trim.foot : 0,
      lip: isHighest ? asked.trim.lip : (asked.levels?.overlap ?? 0),
    },
    turns,
    beside: {
      start: sides.atHandle.start ? beside : 0,
      finish: sides.atHandle.finish ? beside : 0,
    },
    before: turns.from === 0 && asked.clear === undefined ? (asked.before ?? 0) : 0,
    overlap: overlapOf(asked, turns.to),
    ...(asked.winds ? { winds: true } : {}),
    shift,
  };
  const middle = middleOf(cone, lie);
  return layOnLine({ number, cut, guide }, start, { ...lie, cone: { ...cone, middle } });
}

/** The turn in the middle of a sheet: what laps past one side is widest, in turns, where the wall is narrowest. */
export function middleOf(
  cone: RolledCone,
  lie: Pick<ProvedPiece, 'turns' | 'before' | 'overlap' | 'band' | 'trim'>,
): number {
  const { from, to } = pieceBand(lie);
  const narrowest = Math.min(girthOf(cone, from), girthOf(cone, to));
  const turns = (across: number): number =>
    (across * asinc((2 * Math.PI * across * cone.sine) / narrowest)) / narrowest;
  return (spanOf(lie) + turns(lie.overlap) - turns(lie.before)) / 2;
}

/** Where a piece that begins at this height is to end: at the next level cut, where those are asked for; else as it was drawn. */
const levelAbove = ({ levels }: Asked, from: number, drawn: number): number =>
  levels?.at.find((at) => at > from + precision) ?? drawn;

/** Where a piece is put on the wall. */
type Lie = Omit<ProvedPiece, 'number' | 'cut' | 'guide' | 'place' | 'outline' | 'layers' | 'faults'>;

/** The piece of two files, read in the frame of a line of its guide, shifted to that of its first turn. */
export function layOnLine(
  files: Pick<PieceFiles, 'number' | 'cut' | 'guide'>,
  line: StraightLine,
  lie: Lie,
): ProvedPiece {
  const { cut } = files;
  const reading = new Reading();
  const onLine = frameOf(line);
  const place = { ...onLine, e: onLine.e + lie.shift.x, f: onLine.f + lie.shift.y };
  const layers = groupsIn(cut, 'artwork').map((group, i) => ({
    name: group.layer ?? `layer ${i + 1}`,
    shapes: group.paths.map(({ data }) => reading.path(cut, data, place)),
  }));
  const outline = reading.contours(cut, groupsIn(cut, 'outline'), place);
  return { ...files, ...lie, place, outline, layers, faults: reading.faults };
}

/** What a piece that ends at this turn goes on past it, mm. */
function overlapOf({ overlap, before = 0, clear, panels }: Asked, to: number): number {
  if (to < 1) return panels?.overlap ?? 0;
  return clear === undefined ? overlap - before : 0;
}

/** How many turns a piece takes from its first line to its last. */
export const spanOf = ({ turns }: Pick<ProvedPiece, 'turns'>): number => turns.to - turns.from;

/** Curves of path data of a file, in the frame of its piece's cone; undefined where they can't be read. */
export function curvesOf(
  file: DeliveredFile,
  data: readonly string[],
  place: Affine,
): readonly Contour[] | undefined {
  const reading = new Reading();
  const curves = data.flatMap((d) => reading.path(file, d, place));
  return reading.faults.length === 0 ? curves : undefined;
}

/** Curves of a piece's cut file in the numbers of the file itself. */
export const pageCurves = ({ cut }: Pick<ReadPiece, 'cut'>, role: string): readonly Contour[] =>
  new Reading().contours(cut, groupsIn(cut, role), asIs);

/** Curves of a piece's guide, in the frame of its cone. */
export const guideCurves = (
  piece: Pick<ReadPiece, 'guide' | 'place'>,
  role: string,
  id?: string,
): readonly Contour[] => {
  const groups = groupsIn(piece.guide, role).map((group) => ({
    ...group,
    paths: id === undefined ? group.paths : group.paths.filter((path) => path.id === id),
  }));
  return new Reading().contours(piece.guide, groups, piece.place);
};

/** The cut piece along the wall, trims included. */
export const pieceBand = ({ band, trim }: Pick<ProvedPiece, 'band' | 'trim'>): Band => ({
  from: band.from - trim.foot,
  to: band.to + trim.lip,
});
