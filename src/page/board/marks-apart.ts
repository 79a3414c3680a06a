// Marks that would lie on one another, as one for all of them.
import type { Point } from './sheet-view.ts';

export interface Mark<T> {
  readonly of: T;
  readonly at: Point;
  /** How many others lie so near that this one stands for them. */
  readonly more: number;
}

/** Of marks in their order, those that are further than `apart` px from all shown before them; each of the rest is counted with the nearest. */
export function marksApart<T>(
  given: readonly { readonly of: T; readonly at: Point }[],
  apart: number,
): readonly Mark<T>[] {
  const shown: { of: T; at: Point; more: number }[] = [];
  for (const { of, at } of given) {
    const off = (mark: { readonly at: Point }): number => Math.hypot(mark.at.x - at.x, mark.at.y - at.y);
    const [nearest] = [...shown].sort((a, b) => off(a) - off(b));
    if (nearest && off(nearest) <= apart) nearest.more++;
    else shown.push({ of, at, more: 0 });
  }
  return shown;
}
