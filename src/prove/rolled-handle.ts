// A plain handle, so that the picture shows which side it is on. Only its width was measured.
import type { Point } from '../geometry/point.ts';
import { type Camera, seen } from './rolled-camera.ts';
import { hull, picturePath } from './rolled-path.ts';
import { profileOf, type RolledVessel } from './rolled-vessel.ts';

const metal = { fill: '#b4bbbf', line: '#6d767c' } as const;

/** How far a drawn handle stands off the wall: half the radius of the lip. */
export const handleDepth = ({ handleSpan, profile }: RolledVessel): number =>
  handleSpan === undefined ? 0 : 0.5 * Math.max(profile.footRadius, profile.lipRadius);

/** A loop beside the axis, standing off by `out` in the middle and pulled in by `inset` from foot and lip. */
function loop(
  vessel: RolledVessel,
  out: number,
  inset: number,
): readonly { radius: number; height: number }[] {
  const { foot, lip } = profileOf(vessel);
  const [low, high] = [foot.at(-1), lip[0]];
  if (!low || !high) return [];
  const span = high.height - low.height;
  const at = (part: number) => low.radius + (high.radius - low.radius) * part;
  const [bottom, top] = [0.2 + inset / span, 0.86 - inset / span];
  const steps = 32;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = (Math.PI * i) / steps - Math.PI / 2;
    // A square-shouldered curve, the fourth power of a circle's.
    const root = (value: number) => Math.sign(value) * Math.sqrt(Math.abs(value));
    const part = (bottom + top) / 2 + ((top - bottom) / 2) * root(Math.sin(angle));
    return {
      radius: at(part) - (root(Math.cos(angle)) === 0 ? 1 : 0) + out * root(Math.cos(angle)),
      height: low.height + span * part,
    };
  });
}

/** The handle as a camera sees it, or nothing where the body hides it. */
export function handleSeen(
  vessel: RolledVessel,
  camera: Camera,
): { readonly behind: string; readonly before: string } {
  const { handleSpan } = vessel;
  const away = Math.cos(2 * Math.PI * camera.facing);
  if (handleSpan === undefined || away < -0.5) return { behind: '', before: '' };
  const depth = handleDepth(vessel);
  const thick = 0.22 * depth;
  const line = (points: readonly { radius: number; height: number }[]): readonly Point[] =>
    points.map((p) => seen(camera, { ...p, turn: 0 }));
  const outer = loop(vessel, depth, 0);
  const paint = `fill="${metal.fill}" fill-rule="evenodd" stroke="${metal.line}" stroke-opacity=".5" stroke-width=".3"`;
  if (away > 0.5) {
    const half = handleSpan / 2;
    const bar = line(outer).flatMap(({ y }) => [
      { x: -half, y },
      { x: half, y },
    ]);
    return { behind: '', before: `<path ${paint} d="${picturePath(hull(bar), true)}"/>` };
  }
  const data = picturePath(line(outer), true) + picturePath(line(loop(vessel, depth - thick, thick)), true);
  return { behind: `<path ${paint} d="${data}"/>`, before: '' };
}
