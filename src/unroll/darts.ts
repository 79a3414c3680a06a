// Darts: one flat piece cut in from one edge, no further than the wall beyond asks for.
import { dot } from '../geometry/point.ts';
import { stepOnGore } from './gore-map.ts';
import { type GoreWall, halfWidth } from './gores.ts';
import { type LaidCone, leastStretchCone, type RadiusAlong } from './strain.ts';

/** Where darts end, and the cone that the film lies on from there to the edge that stays whole. Places are mm on. */
export interface DartRoot {
  readonly tip: number;
  readonly cone: LaidCone;
  /** The most that film is stretched on the whole part, as a share. */
  readonly stretch: number;
}

export type WholeEnd = 'foot' | 'lip';

/**
 * The longest part of a band from its whole end on that one cone takes, stretched by no more than `stretch` and gathered
 * nowhere; the places of the band must be close together. Undefined where one cone takes all of it.
 */
export function dartRoot(
  band: readonly RadiusAlong[],
  whole: WholeEnd,
  stretch: number,
): DartRoot | undefined {
  const part = (count: number) => (whole === 'foot' ? band.slice(0, count) : band.slice(-count));
  let [fits, fails] = [2, band.length + 1];
  while (fails - fits > 1) {
    const middle = (fits + fails) >> 1;
    // Longer parts never ask less, so the longest that fits is found by halving.
    if (leastStretchCone(part(middle), 0).stretch <= stretch) fits = middle;
    else fails = middle;
  }
  if (fits === band.length) return undefined;
  const taken = part(fits);
  const laid = leastStretchCone(taken, 0);
  const tip = (whole === 'foot' ? taken.at(-1) : taken[0])?.along ?? 0;
  return { tip, cone: laid.cone, stretch: laid.stretch };
}

export const coneRadius = ({ radius, sine }: LaidCone, on: number): number => radius + on * sine;

/** A wall so much wider than the cone where darts would end asks for film, and a dart only takes some away. */
const touching = 1e-4;

/** Whether film is to be taken away from the tips on, and none to be added: there the wall meets the cone. */
export const dartsCanClose = (wall: GoreWall, { tip, cone }: DartRoot): boolean =>
  wall.at(tip).radius / coneRadius(cone, tip) - 1 <= touching;

/** A wall as film with darts follows it, and how the bend of its level lines changes from the cone's to the wall's. */
export interface DartWallOptions {
  readonly root: DartRoot;
  readonly whole: WholeEnd;
  readonly count: number;
  /** Over how much of half the width between two darts the change is made. */
  readonly ease: number;
}

/**
 * On the whole part the cone. Beyond the tips each piece between two darts has its share of the wall's girth, and its
 * level lines bend as the cone's do at first, then as the wall's own: at the tips the two meet without a step.
 */
function dartWall(wall: GoreWall, { root, whole, count, ease }: DartWallOptions): GoreWall {
  const { tip, cone } = root;
  const isWhole = (on: number) => (whole === 'foot' ? on <= tip : on >= tip);
  const there = wall.at(tip);
  const step = cone.sine / coneRadius(cone, tip) - there.slope / there.radius;
  const reach = ease * halfWidth(there.radius, count);
  return {
    at: (on) => {
      if (isWhole(on)) return { radius: coneRadius(cone, on), slope: cone.sine };
      const { radius, slope } = wall.at(on);
      return { radius, slope: slope + radius * step * Math.exp(-Math.abs(on - tip) / reach) };
    },
  };
}

/** Just past the tips: the differences that tell a strain must not reach over them, mm. */
const beyond = 0.01;

/** Places up the darts at which their strain is looked at, and across a piece between two of them, as shares. */
const places = 60;
const shares = [0.5, 1];

/**
 * The strain at a place of film between darts: how much more it has to be stretched one way than the other, where that
 * is the most across. Without darts' easing it is that of a gore, K w²/8. Source: principal stretches of the drawing's
 * derivative, the roots of its right Cauchy-Green tensor (any text on continuum mechanics).
 */
export function strainBetweenDarts(follows: GoreWall, count: number, on: number): number {
  const { slope } = follows.at(on);
  return Math.max(
    ...shares.map((share) => {
      const angle = share * halfWidth(slope, count);
      const level = { x: Math.cos(angle), y: Math.sin(angle) };
      const up = stepOnGore(follows, { count, levels: 'arcs', from: 0 }, { share, on }, { share: 0, on: 1 });
      const [shear, length] = [dot(level, up), dot(up, up)];
      const root = Math.hypot(1 - length, 2 * shear);
      return Math.sqrt((1 + length + root) / (1 + length - root)) - 1;
    }),
  );
}

/** The darts of a band: the wall their film follows, and the most it is strained between them. */
export interface Darts {
  readonly follows: GoreWall;
  readonly strain: number;
}

const eases = [0.5, 1, 2, 4];

/** So many darts from their tips to the band's other end, eased so that they ask the least. */
export function dartsOf(
  wall: GoreWall,
  { root, whole, count, end }: Omit<DartWallOptions, 'ease'> & { readonly end: number },
): Darts {
  const way = whole === 'foot' ? 1 : -1;
  const first = root.tip + way * beyond;
  const tried = eases.map((ease): Darts => {
    const follows = dartWall(wall, { root, whole, count, ease });
    const strains = Array.from({ length: places + 1 }, (_, i) =>
      strainBetweenDarts(follows, count, first + ((end - first) * i) / places),
    );
    return { follows, strain: Math.max(...strains) };
  });
  return tried.reduce((a, b) => (b.strain < a.strain ? b : a));
}
