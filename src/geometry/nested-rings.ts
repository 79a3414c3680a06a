// Which ring lies in which, of rings that cross nowhere.
import { type Box, boxOfPoints, grow, liesIn } from './box.ts';
import { BoxIndex } from './box-index.ts';
import { type GridPoint, type GridRegion, type GridRing, ringArea } from './grid-ring.ts';
import { leastFirst } from './least-first.ts';
import { RingsAround } from './rings-around.ts';

interface Ring {
  readonly ring: GridRing;
  readonly box: Box;
  /** Square grid units; below zero of a hole. */
  readonly area: number;
}

/**
 * Regions of rings that cross nowhere but may touch: those that run counter-clockwise, with y up, are the outer ones, clockwise
 * ones the holes. Each region is followed by those that lie in its holes. A hole that no ring goes around is left out: only
 * rounding makes one.
 */
export function regionsOfRings(rings: readonly GridRing[]): GridRegion[] {
  const areas = rings.map(ringArea);
  const holders = areas.some((area) => area < 0) ? new Holders(rings, areas) : undefined;
  const within = new Map<number, number[]>();
  const outermost: number[] = [];
  areas.forEach((area, i) => {
    const holder = holders?.holderOf(i);
    if (holder === undefined) {
      if (area > 0) outermost.push(i);
      return;
    }
    const others = within.get(holder);
    if (others) others.push(i);
    else within.set(holder, [i]);
  });
  const held = (i: number): readonly number[] => within.get(i) ?? [];
  const regions: GridRegion[] = [];
  // A stack and no calls in calls: islands in islands may lie deeper than those go.
  const left = outermost.toReversed();
  for (let outer = left.pop(); outer !== undefined; outer = left.pop()) {
    const holes = held(outer);
    regions.push({ outer: rings[outer] ?? [], holes: holes.map((hole) => rings[hole] ?? []) });
    for (const hole of holes.toReversed()) for (const island of held(hole).toReversed()) left.push(island);
  }
  return regions;
}

/** Corners are rounded to the grid, so a ring may stand out of the one around it by this many units. */
const rounding = 2;

/** What goes around each of many rings that cross nowhere. */
export class Holders {
  readonly #rings: readonly Ring[];
  readonly #index: BoxIndex;
  readonly #around: RingsAround;

  constructor(rings: readonly GridRing[], areas: readonly number[] = rings.map(ringArea)) {
    this.#rings = rings.map((ring, i) => ({ ring, box: boxOfPoints(ring), area: areas[i] ?? 0 }));
    this.#index = new BoxIndex(rings.length, (add) => {
      for (const { box } of this.#rings) add(box.minX, box.minY, box.maxX, box.maxY);
    });
    this.#around = new RingsAround(rings);
  }

  /** The smallest ring of the other kind that goes around this one; of a hole too thin to tell by, the smallest whose box does. */
  holderOf(i: number): number | undefined {
    const own = this.#rings[i];
    if (!own) return undefined;
    const isHole = own.area < 0;
    const others = this.#mayHold(own);
    // A hole lies in something.
    if (others.length === 0 || (isHole && others.length === 1)) return others[0];
    const inside = placeWithin(own);
    let least: number | undefined;
    for (const k of leastFirst(others, (other) => this.#sizeOf(other))) {
      if (this.#around.turnsOf(k, inside) !== 0) return k;
      least ??= k;
    }
    return isHole ? least : undefined;
  }

  #sizeOf(k: number): number {
    return Math.abs(this.#rings[k]?.area ?? 0);
  }

  /** Larger rings of the other kind whose boxes go around this one's. */
  #mayHold({ box, area }: Ring): readonly number[] {
    return this.#index.meeting(box.minX, box.minY, box.maxX, box.maxY).filter((k) => {
      const other = this.#rings[k];
      if (!other || other.area * area >= 0 || this.#sizeOf(k) < Math.abs(area)) return false;
      return liesIn(box, grow(other.box, rounding));
    });
  }
}

/** Where along a ring's height a place within it is looked for. */
const looked = [1 / 2, 1 / 4, 3 / 4] as const;

/** A place within a ring, as far from its sides as on one of three levels. These pass between corners, so no side is met at its end. */
function placeWithin({ ring, box }: Ring): GridPoint {
  let [found, widest] = [{ x: box.minX, y: box.minY }, 0];
  for (const part of looked) {
    const y = box.minY + Math.floor(part * (box.maxY - box.minY)) + 1 / 2;
    const crossings = crossingsAt(ring, y);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const [from, to] = [crossings[k] ?? 0, crossings[k + 1] ?? 0];
      if (to - from > widest) [found, widest] = [{ x: (from + to) / 2, y }, to - from];
    }
  }
  return found;
}

/** Where a ring crosses a level between two of the grid's, from left to right. */
const crossingsAt = (ring: GridRing, level: number): readonly number[] =>
  ring
    .flatMap((p, side) => {
      const q = ring[side + 1] ?? ring[0] ?? p;
      return p.y > level === q.y > level ? [] : [p.x + ((level - p.y) / (q.y - p.y)) * (q.x - p.x)];
    })
    .sort((a, b) => a - b);
