// Cover strips over the seam and over borders of the pattern, as far as they are in sight.
import type { Point } from '../../geometry/point.ts';
import { turnOfEdge } from '../../unroll/template.ts';
import { picturePath } from '../rolled-path.ts';
import { type Camera, seen } from './rolled-camera.ts';
import type { Sight } from './rolled-sight.ts';
import { type RolledVessel, rolled } from './rolled-vessel.ts';

/** The strips as a group of one path for each part in sight; nothing where there is none. `colour`: of their film. */
export function stripSeen(
  vessel: RolledVessel,
  sight: readonly Sight[],
  camera: Camera,
  colour: string,
): string {
  const { strip, covers } = vessel;
  const level = covers?.along.map((along) =>
    levelSeen(vessel, sight, camera, { along, width: covers.width }),
  );
  const upright = [
    ...(covers?.turns.map((turn) => ({ turn, half: covers.width / 2 })) ?? []),
    ...(strip === undefined ? [] : [{ turn: 0, half: strip / 2 }]),
  ].flatMap(({ turn, half }) =>
    [-1, 0, 1].map((round) => uprightSeen(vessel, sight, camera, { turn: turn + round, half })),
  );
  const paths = [...(level ?? []), ...upright]
    .filter((ring) => ring.length > 2)
    .map((ring) => `<path d="${picturePath(ring, true)}"/>`);
  return paths.length === 0
    ? ''
    : `<g data-role="strip" fill="${colour}" stroke="#fff" stroke-opacity=".7" stroke-width=".3">${paths.join('')}</g>\n`;
}

function uprightSeen(
  vessel: RolledVessel,
  sight: readonly Sight[],
  camera: Camera,
  { turn, half }: { readonly turn: number; readonly half: number },
): readonly Point[] {
  const levels = sight.map((level) => {
    const [from, to] = [camera.facing - level.half, camera.facing + level.half];
    const edge = (offset: number) =>
      Math.min(to, Math.max(from, turnOfEdge(vessel.wall, { turn, offset }, level.along)));
    return { along: level.along, left: edge(-half), right: edge(half) };
  });
  const shown = levels.filter(({ left, right }) => right > left);
  const at = (place: number, along: number) => seen(camera, rolled(vessel, { turn: place, along }));
  return [
    ...shown.map(({ left, along }) => at(left, along)),
    ...[...shown].reverse().map(({ right, along }) => at(right, along)),
  ];
}

/** Points along what is in sight of a level line. */
const around = 60;

/** A strip around the wall: what of it lies on the finished band. */
function levelSeen(
  vessel: RolledVessel,
  sight: readonly Sight[],
  camera: Camera,
  { along, width }: { readonly along: number; readonly width: number },
): readonly Point[] {
  const { from, to } = vessel.band;
  const edge = (at: number) => {
    const level = Math.min(to, Math.max(from, at));
    const { half } = sight.reduce((best, other) =>
      Math.abs(other.along - level) < Math.abs(best.along - level) ? other : best,
    );
    return Array.from({ length: around + 1 }, (_, i) =>
      seen(camera, rolled(vessel, { turn: camera.facing + half * ((2 * i) / around - 1), along: level })),
    );
  };
  return [...edge(along - width / 2), ...edge(along + width / 2).reverse()];
}
