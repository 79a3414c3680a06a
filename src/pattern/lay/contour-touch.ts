// Whether two closed edges touch, and whether a place lies within one; on the chords that stand in for them.
import type { Box } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import type { ChordedContour } from '../../geometry/chords.ts';
import type { Point } from '../../geometry/point.ts';

/** An edge of more chords than this is looked up instead of gone through. */
const fewChords = 24;

/** A closed edge by its chords. */
export class ChordedEdge {
  readonly chords: ChordedContour;
  readonly box: Box;
  #index: BoxIndex | undefined;

  constructor(chords: ChordedContour, box: Box) {
    this.chords = chords;
    this.box = box;
  }

  get count(): number {
    return this.chords.x.length;
  }

  x(k: number): number {
    return this.chords.x[k === this.count ? 0 : k] ?? 0;
  }

  y(k: number): number {
    return this.chords.y[k === this.count ? 0 : k] ?? 0;
  }

  /** The chords whose boxes meet one. */
  near(minX: number, minY: number, maxX: number, maxY: number): Iterable<number> {
    if (this.count > fewChords) {
      this.#index ??= new BoxIndex(this.count, (add) => {
        for (let k = 0; k < this.count; k++) {
          const [x0, y0, x1, y1] = [this.x(k), this.y(k), this.x(k + 1), this.y(k + 1)];
          add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
        }
      });
      return this.#index.meeting(minX, minY, maxX, maxY);
    }
    const found: number[] = [];
    for (let k = 0; k < this.count; k++) {
      const [x0, y0, x1, y1] = [this.x(k), this.y(k), this.x(k + 1), this.y(k + 1)];
      if (Math.max(x0, x1) < minX || Math.min(x0, x1) > maxX) continue;
      if (Math.max(y0, y1) < minY || Math.min(y0, y1) > maxY) continue;
      found.push(k);
    }
    return found;
  }

  /** Whether a point lies within: a ray to the right crosses the edge an odd number of times. */
  holds({ x, y }: Point): boolean {
    const { minX, minY, maxX, maxY } = this.box;
    if (x < minX || x > maxX || y < minY || y > maxY) return false;
    let isWithin = false;
    for (const k of this.near(x, y, Infinity, y)) {
      const [x0, y0, x1, y1] = [this.x(k), this.y(k), this.x(k + 1), this.y(k + 1)];
      if (y0 > y === y1 > y) continue;
      if (x < x0 + ((x1 - x0) * (y - y0)) / (y1 - y0)) isWithin = !isWithin;
    }
    return isWithin;
  }
}

/** Distance of a point from a chord, squared. */
function away(px: number, py: number, x0: number, y0: number, x1: number, y1: number): number {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((px - x0) * dx + (py - y0) * dy) / length));
  return (px - x0 - t * dx) ** 2 + (py - y0 - t * dy) ** 2;
}

const side = (ax: number, ay: number, bx: number, by: number, px: number, py: number): number =>
  (bx - ax) * (py - ay) - (by - ay) * (px - ax);

/**
 * How near an edge comes to another that is moved by `by`, mm: 0 where they cross, Infinity where they stay further
 * apart than `reach`.
 */
export function edgesApart(one: ChordedEdge, other: ChordedEdge, by: Point, reach: number): number {
  // The chords of the smaller are looked for among those of the larger.
  const [few, many, shift] =
    one.count <= other.count ? [one, other, by] : [other, one, { x: -by.x, y: -by.y }];
  let nearest = reach * reach;
  let isNear = false;
  for (let k = 0; k < few.count; k++) {
    const [x0, y0] = [few.x(k) - shift.x, few.y(k) - shift.y];
    const [x1, y1] = [few.x(k + 1) - shift.x, few.y(k + 1) - shift.y];
    const far = Math.sqrt(nearest);
    const found = many.near(
      Math.min(x0, x1) - far,
      Math.min(y0, y1) - far,
      Math.max(x0, x1) + far,
      Math.max(y0, y1) + far,
    );
    for (const m of found) {
      const [u0, v0, u1, v1] = [many.x(m), many.y(m), many.x(m + 1), many.y(m + 1)];
      const crosses =
        side(x0, y0, x1, y1, u0, v0) > 0 !== side(x0, y0, x1, y1, u1, v1) > 0 &&
        side(u0, v0, u1, v1, x0, y0) > 0 !== side(u0, v0, u1, v1, x1, y1) > 0;
      if (crosses) return 0;
      const apart = Math.min(
        away(x0, y0, u0, v0, u1, v1),
        away(x1, y1, u0, v0, u1, v1),
        away(u0, v0, x0, y0, x1, y1),
        away(u1, v1, x0, y0, x1, y1),
      );
      if (apart > nearest) continue;
      nearest = apart;
      isNear = true;
    }
  }
  return isNear ? Math.sqrt(nearest) : Infinity;
}
