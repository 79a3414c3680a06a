// The eye that looks at the vessel: from far away, a little from above.
import type { Point } from '../../geometry/point.ts';
import type { Ring, RoundPoint } from './rolled-vessel.ts';

/** Which way the vessel is turned and how high the eye is. */
export interface Camera {
  /** The turn that faces the viewer. */
  readonly facing: number;
  /** Angle of the line of sight above the level, radians. */
  readonly elevation: number;
  /** Of a vessel that stands on its lip: the lip's height, mm. Places are still told from the foot up. */
  readonly onLip?: number;
}

/** High enough to see into the lip, low enough to keep heights nearly true: 10 degrees. */
const usualElevation = Math.PI / 18;

/** The elevation for a wall that leans by `halfAngle`: lower for one so flat that it would be hidden under its lip. */
export const elevationFor = (halfAngle: number): number =>
  Math.min(usualElevation, (Math.PI / 2 - halfAngle) / 3);

/**
 * Where a point is seen: mm at true scale, x to the right, y down, the foot's centre at the origin. Parallel
 * projection along the line of sight (elementary orthographic projection): what is nearer is seen lower. On its lip, the lip's centre.
 */
export function seen({ facing, elevation, onLip }: Camera, { radius, height, turn }: RoundPoint): Point {
  // Turned over, turns grow to the left.
  const angle = 2 * Math.PI * (onLip === undefined ? turn - facing : facing - turn);
  const up = onLip === undefined ? height : onLip - height;
  return {
    x: radius * Math.sin(angle),
    y: radius * Math.cos(angle) * Math.sin(elevation) - up * Math.cos(elevation),
  };
}

/** Points of circles as they are seen, between two turns off the facing one. */
export const seenRings = (
  camera: Camera,
  rings: readonly Ring[],
  from: number,
  to: number,
  count: number,
): readonly Point[] =>
  rings.flatMap((ring) =>
    Array.from({ length: count + 1 }, (_, i) =>
      seen(camera, { ...ring, turn: camera.facing + from + ((to - from) * i) / count }),
    ),
  );
