// Path data for a picture: straight lines, hundredths of a mm, as short as it goes.
import { cross, distance, type Point, subtract } from '../geometry/point.ts';

/** Hundredths of a mm. */
const grain = 100;

const onGrain = ({ x, y }: Point): Point => ({ x: Math.round(x * grain), y: Math.round(y * grain) });

/** What stands behind the whole mm, by hundredths. */
const fractions = Array.from({ length: grain }, (_, i) => String(i / grain).slice(1));

/** A number of hundredths: `-0.5` is `-.5`. */
export function hundredths(value: number): string {
  const size = Math.abs(Math.round(value));
  const whole = Math.floor(size / grain);
  const text = (whole > 0 || size === 0 ? String(whole) : '') + (fractions[size % grain] ?? '');
  return value < 0 && size > 0 ? `-${text}` : text;
}

/** A length in mm, to a hundredth. */
export const millimetres = (mm: number): string => hundredths(mm * grain);

const pair = ({ x, y }: Point): string => {
  const second = hundredths(y);
  return hundredths(x) + (second.startsWith('-') ? second : ` ${second}`);
};

/** How far b lies beside the line from a to c. */
const beside = (a: Point, b: Point, c: Point): number => {
  const length = distance(a, c);
  return length === 0 ? distance(a, b) : Math.abs(cross(subtract(b, a), subtract(c, a))) / length;
};

/** Without the points that lie within a hundredth of the line between their neighbours. */
function withoutStraight(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  points.forEach((p, i) => {
    const last = kept.at(-1);
    const next = points[i + 1];
    if (last && next && beside(last, p, next) <= 1 && distance(last, p) <= distance(last, next)) return;
    kept.push(p);
  });
  return kept;
}

/** Path data of one ring or line. Every corner is rounded by itself, so that steps do not add up their rounding. */
export function picturePath(points: readonly Point[], closed: boolean): string {
  const [start, ...rest] = withoutStraight(points.map(onGrain));
  if (!start) return '';
  let at = start;
  let steps = '';
  for (const p of rest) {
    const step = pair(subtract(p, at));
    steps += steps === '' || step.startsWith('-') ? step : ` ${step}`;
    at = p;
  }
  return `M${pair(start)}${steps === '' ? '' : `l${steps}`}${closed ? 'z' : ''}`;
}

/** An open line of a picture, in the pen of its group. */
export const lineText = (points: readonly Point[]): string => `<path d="${picturePath(points, false)}"/>`;

/** A line in the parts of it that are in sight. */
export function runsOf(
  places: readonly { readonly at: Point; readonly isSeen: boolean }[],
): readonly Point[][] {
  const runs: Point[][] = [[]];
  for (const { at, isSeen } of places) {
    if (isSeen) runs.at(-1)?.push(at);
    else runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}
