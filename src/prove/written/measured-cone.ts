// The cone a piece is rolled onto: of a straight wall the blank's own, of a wall that bends the one it was drawn for.
import type { Point } from '../../geometry/point.ts';
import { type Asked, type AskedWall, askedRadius } from '../asked.ts';
import { type RolledCone, rollUp } from './rolled-cone.ts';

/** The two seam lines of a piece, in the frame of its first: x to its right, y up along it. */
export interface FlatSides {
  /** Of the first line, mm. */
  readonly length: number;
  /** Foot and lip end of the second. */
  readonly finish: readonly [Point, Point];
  /** Turns from the first line to the second, or to the handle that they stand beside. */
  readonly span: number;
  /** Which of the two stand beside a handle, if there is one. */
  readonly atHandle: { readonly start: boolean; readonly finish: boolean };
}

export interface SheetCone {
  readonly cone: RolledCone;
  /** How far a side beside a handle stands from the line up the wall at turn 0, mm across: 0 where there is a seam. */
  readonly beside: number;
  /** What brings the frame of the first line to that of turn 0. */
  readonly shift: Point;
}

/** The cone for a piece from this height up. */
export function sheetCone(asked: Asked, from: number, sides: FlatSides): SheetCone {
  const cone = asked.wall.kind === 'straight' ? askedCone(asked.wall, from) : drawnCone(asked, from, sides);
  const beside = besideOf(asked.clear, cone, sides);
  const x = sides.atHandle.start ? beside : 0;
  return { cone, beside, shift: { x, y: levelBeside(cone, x) } };
}

/** Where on the sheet a point lies that is so far beside turn 0 at the cone's own height: as far from its point, so a little lower. */
function levelBeside({ sine, radius }: RolledCone, x: number): number {
  const k = sine / radius;
  return (-k * x * x) / (1 + Math.sqrt(Math.max(0, 1 - (k * x) ** 2)));
}

const askedCone = (wall: AskedWall & { readonly kind: 'straight' }, from: number): RolledCone => ({
  from,
  radius: askedRadius(wall, from),
  sine: wall.sine,
});

/** Rounds in which the height of the band and what is kept clear beside a handle settle; and in which radius and handle do. */
const besideRounds = 8;
const rounds = 60;

/** No cone is steeper than a plate; more is what a wrong angle gives. */
const steepest = 1.01;

/** A cone whose lines miss the chord by a larger share of it is none that the lines stand for. */
const settled = 1e-6;

/**
 * A width around made one across: the distance from the line up the wall to a parallel that meets it at mid-band. A first line beside a
 * handle is such a parallel, and longer than the band is high: on a taper by some millimetres.
 */
function besideOf(
  clear: number | undefined,
  cone: RolledCone,
  { length, atHandle }: Pick<FlatSides, 'length' | 'atHandle'>,
): number {
  if (clear === undefined) return 0;
  let beside = clear;
  for (let i = 0; i < besideRounds; i++) {
    const lip = { x: beside, y: levelBeside(cone, beside) + length };
    const high = atHandle.start ? rollUp(cone, lip).along - cone.from : length;
    const angle = (clear * cone.sine) / (cone.radius + (high / 2) * cone.sine);
    beside = angle === 0 ? clear : clear * (Math.sin(angle) / angle);
  }
  return beside;
}

/**
 * The cone two drawn lines stand for. Laid flat a whole turn is an angle of 2 pi times the sine, and the angle between
 * the lines their share of it; their ends at the foot are a chord apart of the circle about the cone's point.
 */
function drawnCone(asked: Asked, from: number, sides: FlatSides): RolledCone {
  const { span, atHandle } = sides;
  const [foot, lip] = sides.finish;
  const ends = Number(atHandle.start) + Number(atHandle.finish);
  const drawn = Math.atan2(lip.x - foot.x, lip.y - foot.y);
  const chord = Math.hypot(foot.x, foot.y);
  const near = askedRadius(asked.wall, from);
  const cones = [drawn, drawn - 2 * Math.PI, drawn + 2 * Math.PI].flatMap((angle): RolledCone[] => {
    const sine = angle / (2 * Math.PI * span);
    if (Math.abs(sine) > steepest) return [];
    let [radius, off] = [near, 0];
    for (let i = 0; i < rounds; i++) {
      const beside = besideOf(asked.clear, { from, radius, sine }, sides);
      const lean = Math.asin(Math.max(-1, Math.min(1, (beside * sine) / radius)));
      const half = Math.PI * span * sine - (ends * lean) / 2;
      const around = sine === 0 ? Math.PI * span - (ends * beside) / (2 * radius) : Math.sin(half) / sine;
      // Newton's step: the chord grows with the girth by more than itself over the radius, for what the handle takes stays as it is.
      const handle = (ends * beside * Math.cos(half)) / (2 * radius * Math.cos(lean));
      off = chord / 2 - radius * around;
      radius += off / (around + handle);
    }
    return Math.abs(off) < settled * chord ? [{ from, radius, sine }] : [];
  });
  // The same two lines can be drawn for a sweep past half a turn: the blank tells which.
  return cones.reduce(
    (a, b) => (Math.abs(b.radius - near) < Math.abs(a.radius - near) ? b : a),
    cones[0] ?? { from, radius: near, sine: 0 },
  );
}
