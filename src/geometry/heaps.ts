// Heaps of rings that lie over one another, made less before they are united: the engine takes time for every edge that a level
// crosses, and most edges of a heap lie within others.
import { boxOfPoints } from './box.ts';
import { type GridRing, ringArea } from './grid-ring.ts';
import { isPlainlySimple } from './simple-ring.ts';

/** As many rings are united at once, and fewer are no heap. */
const atOnce = 64;
const fewest = 4 * atOnce;

/** Rings of which some, united near by near first, are few. `unite` gives the rings of a union, holes the other way around. */
export function lessOfHeap(
  rings: readonly GridRing[],
  unite: (near: readonly GridRing[]) => readonly GridRing[],
): readonly GridRing[] {
  return isHeap(rings) ? nearByNear(rings).flatMap(unite) : rings;
}

/**
 * Whether rings may be united in any order: each goes around what it encloses once and all run the same way, so that nothing which one
 * of them encloses is taken back by another.
 */
const isHeap = (rings: readonly GridRing[]): boolean =>
  rings.length >= fewest && rings.every((ring) => ringArea(ring) > 0 && isPlainlySimple(ring));

/** Rings in lots of those that lie near one another: in columns, each from the bottom up. */
function nearByNear(rings: readonly GridRing[]): readonly (readonly GridRing[])[] {
  const placed = rings.map((ring) => {
    const { minX, minY, maxX, maxY } = boxOfPoints(ring);
    return { ring, x: minX + maxX, y: minY + maxY };
  });
  const inColumn = atOnce * Math.ceil(Math.sqrt(rings.length / atOnce));
  return lotsOf(
    placed.sort((a, b) => a.x - b.x),
    inColumn,
  ).flatMap((column) =>
    lotsOf(
      column.sort((a, b) => a.y - b.y),
      atOnce,
    ).map((lot) => lot.map(({ ring }) => ring)),
  );
}

const lotsOf = <T>(all: readonly T[], size: number): T[][] =>
  Array.from({ length: Math.ceil(all.length / size) }, (_, i) => all.slice(i * size, (i + 1) * size));
