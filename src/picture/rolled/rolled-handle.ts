// A plain handle, so that the picture shows which side it is on. Only its width was measured.
import type { Point } from '../../geometry/point.ts';
import { millimetres, picturePath } from '../rolled-path.ts';
import { type Camera, seen } from './rolled-camera.ts';
import type { RoundedProfile } from './rolled-profile.ts';
import { ringAlong } from './rolled-rings.ts';
import type { Ring, RolledVessel } from './rolled-vessel.ts';

const metal = { fill: 'url(#lip)', line: '#6d767c' } as const;

/** How far a drawn handle stands off the wall: half the radius of the lip. */
export const handleDepth = ({ handleSpan, profile }: Pick<RolledVessel, 'handleSpan' | 'profile'>): number =>
  handleSpan === undefined ? 0 : 0.5 * Math.max(profile[0]?.radius ?? 0, profile.at(-1)?.radius ?? 0);

/** A loop beside the axis, standing off by `out` in the middle and pulled in by `inset` from foot and lip. */
export function handleLoop({ wall }: RoundedProfile, out: number, inset: number): readonly Ring[] {
  const [low, high] = [wall[0], wall.at(-1)];
  if (!low || !high) return [];
  const span = high.height - low.height;
  const at = (part: number) => ringAlong(wall, low.along + (high.along - low.along) * part);
  const [bottom, top] = [0.2 + inset / span, 0.86 - inset / span];
  const steps = 32;
  // A square-shouldered curve, the fourth power of a circle's.
  const root = (value: number) => Math.sign(value) * Math.sqrt(Math.abs(value));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = (Math.PI * i) / steps - Math.PI / 2;
    const part = (bottom + top) / 2 + ((top - bottom) / 2) * root(Math.sin(angle));
    // It begins a little inside the wall, so that no gap shows.
    return {
      radius: at(part).radius - 1 + (out + 1) * root(Math.max(0, Math.cos(angle))),
      height: at(part).height,
    };
  });
}

/** The handle as a camera sees it, or nothing where the body hides it. */
export function handleSeen(
  vessel: RolledVessel,
  profile: RoundedProfile,
  camera: Camera,
): { readonly behind: string; readonly before: string } {
  const { handleSpan } = vessel;
  const away = Math.cos(2 * Math.PI * camera.facing);
  if (handleSpan === undefined || away < -0.5) return { behind: '', before: '' };
  const depth = handleDepth(vessel);
  const thick = 0.22 * depth;
  const line = (points: readonly Ring[]): readonly Point[] =>
    points.map((p) => seen(camera, { ...p, turn: 0 }));
  const outer = handleLoop(profile, depth, 0);
  const paint = `fill="${metal.fill}" fill-rule="evenodd" stroke="${metal.line}" stroke-opacity=".5" stroke-width=".3"`;
  if (away > 0.5) {
    const ys = line(outer).map(({ y }) => y);
    const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
    // The width is measured along the girth; seen from the front it is the chord.
    const length = vessel.profile.at(-1)?.along ?? 0;
    const { radius } = ringAlong(vessel.profile, length / 2);
    const half = radius * Math.sin(Math.min(Math.PI / 2, handleSpan / (2 * radius)));
    const box = `x="${millimetres(-half)}" y="${millimetres(top)}" width="${millimetres(2 * half)}" height="${millimetres(bottom - top)}"`;
    return {
      behind: '',
      before: `<rect data-role="handle" ${paint} ${box} rx="${millimetres(Math.min(half, depth / 2))}"/>`,
    };
  }
  const data =
    picturePath(line(outer), true) + picturePath(line(handleLoop(profile, depth - thick, thick)), true);
  return { behind: `<path data-role="handle" ${paint} d="${data}"/>`, before: '' };
}
