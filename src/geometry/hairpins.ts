// Level stretches on which a ring turns straight back: they enclose nothing, and the polygon engine may go around one for ever. Not taken
// away of all rings: a sliver too thin for the grid is such a stretch, and what is made of the engine's answer tells the maker of it.
import type { GridPoint, GridRing } from './grid-ring.ts';

/** Whether `q` is where a ring on one level turns back, or stands twice there. */
const isHairpin = (p: GridPoint, q: GridPoint, r: GridPoint): boolean =>
  p.y === q.y && q.y === r.y && (q.x - p.x) * (r.x - q.x) <= 0;

/** Whether a ring turns back anywhere on one level; a corner that stands twice is taken for such a turn. */
function hasHairpins(ring: GridRing): boolean {
  let [p, q] = [ring.at(-2), ring.at(-1)];
  for (const r of ring) {
    if (p && q && p.y === q.y && isHairpin(p, q, r)) return true;
    p = q;
    q = r;
  }
  return false;
}

/** A ring without them: the same ring where there are none, empty where nothing else is left. What it encloses stays. */
export function withoutHairpins(ring: GridRing): GridRing {
  let left = ring;
  // Taking one away at the ring's own beginning may leave another there.
  while (left.length > 2 && hasHairpins(left)) left = turnedOff(left);
  return left.length < 3 ? [] : left;
}

/** Without hairpins but where the ring begins; begun anew elsewhere, so that those go the next time. */
function turnedOff(ring: GridRing): GridRing {
  const kept: GridPoint[] = [];
  for (const r of ring) {
    for (let q = kept.at(-1), p = kept.at(-2); p && q && isHairpin(p, q, r); q = kept.at(-1), p = kept.at(-2))
      kept.pop();
    kept.push(r);
  }
  const [first, ...others] = kept;
  return first ? [...others, first] : [];
}

/** Rings without them; one of which nothing is left is left out. */
export const ridOfHairpins = (rings: readonly GridRing[]): GridRing[] =>
  rings.map(withoutHairpins).filter((ring) => ring.length > 2);
