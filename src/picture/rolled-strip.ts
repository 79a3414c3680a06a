// The cover strip over the seam, as far as it is in sight.
import type { Point } from '../geometry/point.ts';
import { turnOfEdge } from '../unroll/template.ts';
import { type Camera, seen } from './rolled-camera.ts';
import { picturePath } from './rolled-path.ts';
import type { Sight } from './rolled-sight.ts';
import { type RolledVessel, rolled } from './rolled-vessel.ts';

/** The strip as a group of one path for each part in sight; nothing where there is none. `colour`: of its film. */
export function stripSeen(
  vessel: RolledVessel,
  sight: readonly Sight[],
  camera: Camera,
  colour: string,
): string {
  const { strip } = vessel;
  if (strip === undefined) return '';
  const rings = [-1, 0, 1].map((round) => ringSeen(vessel, sight, camera, { round, half: strip / 2 }));
  const paths = rings
    .filter((ring) => ring.length > 2)
    .map((ring) => `<path d="${picturePath(ring, true)}"/>`);
  return paths.length === 0
    ? ''
    : `<g data-role="strip" fill="${colour}" stroke="#fff" stroke-opacity=".7" stroke-width=".3">${paths.join('')}</g>\n`;
}

function ringSeen(
  vessel: RolledVessel,
  sight: readonly Sight[],
  camera: Camera,
  { round, half }: { readonly round: number; readonly half: number },
): readonly Point[] {
  const levels = sight.map((level) => {
    const [from, to] = [camera.facing - level.half, camera.facing + level.half];
    const edge = (offset: number) =>
      Math.min(to, Math.max(from, turnOfEdge(vessel.wall, { turn: round, offset }, level.along)));
    return { along: level.along, left: edge(-half), right: edge(half) };
  });
  const shown = levels.filter(({ left, right }) => right > left);
  const at = (turn: number, along: number) => seen(camera, rolled(vessel, { turn, along }));
  return [
    ...shown.map(({ left, along }) => at(left, along)),
    ...[...shown].reverse().map(({ right, along }) => at(right, along)),
  ];
}
