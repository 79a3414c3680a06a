// The surface that film lies on: a wall moved out along its normal, by its own length.
import type { ProfilePoint } from '../blank/profile.ts';
import { type Wall, wallAt, wallLength } from '../blank/wall.ts';

/**
 * A wall grown along its normal. Its own length is not the bare wall's: where the wall bulges it is longer, by the
 * growth times the angle its lean turns by. `on` is mm up the grown wall, `along` mm up the bare one; both begin at the
 * foot corner, and past the corners at foot and lip both go straight on.
 */
export interface GrownWall {
  readonly at: (on: number) => {
    readonly radius: number;
    /** d radius / d on: the sine of the lean. */
    readonly slope: number;
  };
  readonly toGrown: (along: number) => number;
  readonly toBare: (on: number) => number;
  readonly length: number;
  /** Where it bends at once, mm on; none on a smooth or a straight wall. */
  readonly corners: readonly number[];
}

/** The wall with its surface moved out by `growth` mm, less than the wall's own tightest hollow. */
export function grownWall(wall: Wall, growth: number): GrownWall {
  if (wall.kind === 'straight') return grownStraight(wall, growth);
  return wall.kind === 'curved' && wall.curved.profile.kind === 'stepped'
    ? grownSteps(wall.curved.profile.corners, growth)
    : grownCurve(wall, growth);
}

/** A straight wall stays as long as it is. */
function grownStraight(wall: Wall, growth: number): GrownWall {
  const { radius, lean } = wallAt(wall, 0);
  const [slope, foot] = [Math.sin(lean), radius + growth * Math.cos(lean)];
  const same = (place: number) => place;
  return {
    at: (on) => ({ radius: foot + on * slope, slope }),
    toGrown: same,
    toBare: same,
    length: wallLength(wall),
    corners: [],
  };
}

/** Rounds in which a place settles: each takes a factor of growth over the meridian's radius off the error. */
const mostRounds = 40;
const settled = 1e-12;

/**
 * Source: offset of a plane curve, ds' = (1 + growth x curvature) ds; summed up the wall that is the length and growth
 * times what the lean has turned by (any text on parallel curves).
 */
function grownCurve(wall: Wall, growth: number): GrownWall {
  const top = wallLength(wall);
  const foot = wallAt(wall, 0).lean;
  const onWall = (along: number) => Math.min(top, Math.max(0, along));
  const longer = (along: number) => growth * (foot - wallAt(wall, onWall(along)).lean);
  const toGrown = (along: number) => along + longer(along);
  const toBare = (on: number): number => {
    let along = on;
    for (let i = 0; i < mostRounds; i++) {
      const next = on - longer(along);
      const moved = Math.abs(next - along);
      along = next;
      if (moved < settled) break;
    }
    return along;
  };
  const length = toGrown(top);
  const steps = Math.max(1, Math.ceil(length / spacing));
  const places = Array.from({ length: steps + 1 }, (_, i): Place => {
    const { radius, lean } = wallAt(wall, onWall(toBare((length * i) / steps)));
    return { radius: radius + growth * Math.cos(lean), slope: Math.sin(lean) };
  });
  return { at: placesAt(places, length / steps), toGrown, toBare, length, corners: [] };
}

type Place = ReturnType<GrownWall['at']>;

/**
 * How close together the places of a smooth wall are that stand for the rest, mm. Its radius is a cubic by its slopes
 * between them: a bend that changes by 1/10 000 per mm² leaves under a millionth of a mm.
 */
const spacing = 0.25;

/** The wall between places so far apart, by Hermite's cubic; straight on past its ends. */
const placesAt =
  (places: readonly Place[], step: number): GrownWall['at'] =>
  (on) => {
    const last = places.length - 2;
    const i = Math.min(last, Math.max(0, Math.floor(on / step)));
    const [a, b] = [places[i], places[i + 1]];
    if (!a || !b) throw new Error('a wall has two ends');
    if (on < 0) return { radius: a.radius + on * a.slope, slope: a.slope };
    const t = on / step - i;
    if (t > 1) return { radius: b.radius + (t - 1) * step * b.slope, slope: b.slope };
    const u = 1 - t;
    return {
      radius:
        a.radius * u * u * (1 + 2 * t) +
        b.radius * t * t * (1 + 2 * u) +
        step * t * u * (a.slope * u - b.slope * t),
      slope: a.slope * u + b.slope * t,
    };
  };

/** A stretch between corners. */
interface Stretch {
  /** Where it begins on the bare wall and on the grown one, mm, and how long it is on either. */
  readonly along: number;
  readonly on: number;
  readonly bare: number;
  readonly grown: number;
  /** How much longer it is at either end, where it meets its neighbour; negative in a hollow. */
  readonly before: number;
  readonly after: number;
  /** Radius of the grown wall where it begins, mm. */
  readonly radius: number;
  readonly slope: number;
}

/** Near a corner a place is moved along with it: on a part of the stretch so many times as long as the corner moves. */
export const drawnAlong = 4;

/** Places of a stretch that fix all others, mm from where it begins: its ends, and where its corners leave off. */
function knots({ bare, grown, before, after }: Stretch): readonly { along: number; on: number }[] {
  const reach = (corner: number) => Math.min(drawnAlong * Math.abs(corner), bare / 2);
  const [low, high] = [reach(before), bare - reach(after)];
  return [
    { along: 0, on: 0 },
    ...(low > 0 ? [{ along: low, on: before + low }] : []),
    ...(high > low && high < bare ? [{ along: high, on: before + high }] : []),
    { along: bare, on: grown },
  ];
}

/** From one of a stretch's own measures to the other; past its ends, mm for mm. */
function between(
  places: ReturnType<typeof knots>,
  from: 'along' | 'on',
  to: 'along' | 'on',
  at: number,
): number {
  const next = places.findIndex((place, i) => i > 0 && place[from] >= at);
  const [a, b] = next < 0 ? [places.at(-1), undefined] : [places[next - 1], places[next]];
  if (!a || at < 0) return at;
  const rate = b ? (b[to] - a[to]) / (b[from] - a[from]) : 1;
  return a[to] + (at - a[from]) * rate;
}

/**
 * Its stretches moved out as they are, to where they meet: by growth times the tangent of half the bend at each end.
 * Away from corners a place goes straight out along the normal, so that lengths there stay what they are.
 */
function grownSteps(corners: readonly ProfilePoint[], growth: number): GrownWall {
  const stretches = stretchesOf(corners, growth);
  const find = (place: number, start: 'along' | 'on'): Stretch => {
    const found = stretches.findLast((stretch) => stretch[start] <= place) ?? stretches[0];
    if (!found) throw new Error('a wall has at least one stretch');
    return found;
  };
  const toGrown = (along: number) => {
    const stretch = find(along, 'along');
    return stretch.on + between(knots(stretch), 'along', 'on', along - stretch.along);
  };
  const last = stretches.at(-1);
  return {
    at: (on) => {
      const stretch = find(on, 'on');
      return { radius: stretch.radius + stretch.slope * (on - stretch.on), slope: stretch.slope };
    },
    toGrown,
    toBare: (on) => {
      const stretch = find(on, 'on');
      return stretch.along + between(knots(stretch), 'on', 'along', on - stretch.on);
    },
    length: last ? last.on + last.grown : 0,
    corners: stretches.slice(1).map(({ on }) => on),
  };
}

function stretchesOf(corners: readonly ProfilePoint[], growth: number): readonly Stretch[] {
  const leans = corners.slice(0, -1).map(({ lean }) => lean);
  const reach = (below: number | undefined, above: number | undefined): number =>
    below === undefined || above === undefined ? 0 : growth * Math.tan((below - above) / 2);
  let on = 0;
  return leans.map((lean, i) => {
    const [from, to] = [corners[i], corners[i + 1]];
    if (!from || !to) throw new Error('a stretch has two ends');
    const [before, after] = [reach(leans[i - 1], lean), reach(lean, leans[i + 1])];
    const bare = to.along - from.along;
    const slope = Math.sin(lean);
    const stretch = {
      along: from.along,
      on,
      bare,
      grown: bare + before + after,
      before,
      after,
      radius: from.radius + growth * Math.cos(lean) - slope * before,
      slope,
    };
    on += stretch.grown;
    return stretch;
  });
}
