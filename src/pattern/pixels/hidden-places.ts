// Places of a picture where something lies on it: nothing there shows again by any step, whatever else does.
import type { Point } from '../../geometry/point.ts';
import type { Planes } from './planes.ts';
import type { StepSeen } from './step-blocks.ts';

/** Pictures are told apart in squares of so many px. */
const square = 12;

/** A block is hidden where so much of it, or of what stands where it should be again, is. */
const mostlyHidden = 0.4;

/** What blocks say of all steps of a lattice together. */
export interface Together {
  /** Blocks that show something and are not hidden, and those of them that show again. */
  readonly shown: number;
  readonly again: number;
  /** The share of all places looked at that never shows again. */
  readonly hidden: number;
}

/** Blocks of several steps weighed together: one that fails at a place where no other block shows again has no say. */
export function seenTogether({ width }: Pick<Planes, 'width'>, steps: readonly StepSeen[]): Together {
  const across = Math.ceil(width / square) + 1;
  const [looked, kept] = [new Set<number>(), new Set<number>()];
  const squaresOf = ({ x, y }: Point, side: number): number[] => {
    const cells: number[] = [];
    for (let v = Math.ceil(y / square); (v + 1) * square <= y + side; v++)
      for (let u = Math.ceil(x / square); (u + 1) * square <= x + side; u++) cells.push(v * across + u);
    return cells;
  };
  const pairs = steps.flatMap(({ blocks, side, step }) =>
    blocks.map(({ at, isAgain }) => ({
      isAgain,
      here: squaresOf(at, side),
      there: squaresOf({ x: at.x + step.x, y: at.y + step.y }, side),
    })),
  );
  for (const { isAgain, here, there } of pairs)
    for (const cell of [...here, ...there]) {
      looked.add(cell);
      if (isAgain) kept.add(cell);
    }
  const isHidden = (cells: readonly number[]): boolean =>
    cells.filter((cell) => !kept.has(cell)).length > mostlyHidden * cells.length;
  const counted = pairs.filter(({ isAgain, here, there }) => isAgain || !(isHidden(here) || isHidden(there)));
  return {
    shown: counted.length,
    again: counted.filter(({ isAgain }) => isAgain).length,
    hidden: looked.size === 0 ? 0 : 1 - kept.size / looked.size,
  };
}
