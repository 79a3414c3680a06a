// How often lines cross each other, counted until it is too often to go on.
import { BoxIndex } from './box-index.ts';
import type { Contour } from './contour.ts';
import type { Point } from './point.ts';

interface Step {
  readonly from: Point;
  readonly to: Point;
}

/** Fewer steps than this can't cross often enough to matter. */
const fewSteps = 400;

/** Pairs of steps looked at for each crossing that is allowed. */
const looks = 40;

const side = (a: Point, b: Point, p: Point): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);

const doCross = (a: Step, b: Step): boolean =>
  side(a.from, a.to, b.from) * side(a.from, a.to, b.to) < 0 &&
  side(b.from, b.to, a.from) * side(b.from, b.to, a.to) < 0;

/**
 * Whether the segments of these contours, each taken straight, cross each other more than `most` times. Also where they
 * lie over each other so thickly that counting would take as long as the work it is to spare.
 */
export function isTangled(contours: readonly Contour[], most: number): boolean {
  const steps = contours.flatMap(({ segments }) => segments as readonly Step[]);
  if (steps.length < fewSteps) return false;
  const boxOf = ({ from, to }: Step) =>
    [Math.min(from.x, to.x), Math.min(from.y, to.y), Math.max(from.x, to.x), Math.max(from.y, to.y)] as const;
  const index = new BoxIndex(steps.length, (add) => {
    for (const step of steps) add(...boxOf(step));
  });
  let crossings = 0;
  let looked = 0;
  for (const [i, step] of steps.entries())
    for (const other of index.meeting(...boxOf(step))) {
      const met = steps[other];
      if (other <= i || met === undefined) continue;
      looked += 1;
      if (doCross(step, met)) crossings += 1;
      if (crossings > most || looked > most * looks) return true;
    }
  return false;
}
