// A wall of revolution as circles, close enough together to draw it by.
import { type Wall, wallAt, wallLength } from '../../blank/wall.ts';

/** A point of a profile: a circle around the axis. mm; `lean` in radians from upright, positive where it widens upward. */
export interface ProfileRing {
  readonly along: number;
  readonly radius: number;
  readonly height: number;
  readonly lean: number;
}

/** Rings of a smooth curve: one a mm, within these. A chord of 1 mm strays 1/8R mm: a hundredth at a bend of 12 mm. */
const [fewest, most] = [64, 240];

/**
 * The rings of a wall from the foot corner to the lip corner, moved out along its normal by `lift` mm: the coats under
 * a film, say. Between them the wall is straight. Two stand for a straight wall; a sharp corner is two rings in one
 * place, each with the lean of its own side.
 */
export function wallRings(wall: Wall, lift: number): readonly ProfileRing[] {
  const length = wallLength(wall);
  if (wall.kind === 'curved' && wall.curved.profile.kind === 'stepped')
    return cornered(wall.curved.profile.corners, lift);
  const steps = wall.kind === 'straight' ? 1 : Math.min(most, Math.max(fewest, Math.ceil(length)));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const along = (length * i) / steps;
    const { radius, height, lean } = wallAt(wall, along);
    return { along, lean, radius: radius + lift * Math.cos(lean), height: height - lift * Math.sin(lean) };
  });
}

/** Rings of a wall that is straight between corners: `lean` is that of the stretch above each (of the last one: below). */
function cornered(corners: readonly ProfileRing[], lift: number): readonly ProfileRing[] {
  return corners.flatMap((corner, i) => {
    const below = i === 0 ? corner.lean : (corners[i - 1]?.lean ?? corner.lean);
    // Two sides moved out by the same lift meet on the bisector of their normals: the mitre.
    const [middle, half] = [(below + corner.lean) / 2, (below - corner.lean) / 2];
    const out = lift / Math.cos(half);
    const ring = {
      ...corner,
      radius: corner.radius + out * Math.cos(middle),
      height: corner.height - out * Math.sin(middle),
    };
    return below === corner.lean ? [ring] : [{ ...ring, lean: below }, ring];
  });
}

/** Where the wall has a sharp edge, mm along. */
export const cornersOf = (rings: readonly ProfileRing[]): readonly number[] =>
  rings.filter((ring, i) => i > 0 && rings[i - 1]?.along === ring.along).map(({ along }) => along);

/** The ring at a place; past the ends the end stretches go on straight. At a corner it is that of the side below. */
export function ringAlong(rings: readonly ProfileRing[], along: number): ProfileRing {
  let [low, high] = [0, rings.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((rings[middle]?.along ?? 0) < along) low = middle;
    else high = middle;
  }
  const [a, b] = [rings[low], rings[high]];
  if (!a || !b) return { along, radius: 0, height: 0, lean: 0 };
  const share = (along - a.along) / (b.along - a.along);
  return {
    along,
    radius: a.radius + (b.radius - a.radius) * share,
    height: a.height + (b.height - a.height) * share,
    lean: a.lean + (b.lean - a.lean) * share,
  };
}

/** The rings of a stretch: those within it, and one at either end. */
export function ringsBetween(
  rings: readonly ProfileRing[],
  from: number,
  to: number,
): readonly ProfileRing[] {
  const within = rings.filter(({ along }) => along > from && along < to);
  return [ringAlong(rings, from), ...within, ringAlong(rings, to)];
}

/** Rings with more between them, so that none are further apart than `step` mm along. */
export function closeRings(rings: readonly ProfileRing[], step: number): readonly ProfileRing[] {
  return rings.flatMap((ring, i) => {
    const next = rings[i + 1];
    if (!next) return [ring];
    const count = Math.max(1, Math.ceil((next.along - ring.along) / step));
    const between = Array.from({ length: count - 1 }, (_, n) =>
      ringAlong([ring, next], ring.along + ((next.along - ring.along) * (n + 1)) / count),
    );
    return [ring, ...between];
  });
}
