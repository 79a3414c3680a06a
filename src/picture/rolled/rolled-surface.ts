// Surfaces as triangles, for a screen that turns them.
import type { ProfileRing } from './rolled-rings.ts';
import type { BodyRing } from './rolled-vessel.ts';

/**
 * A surface as triangles. mm, right-handed, y up the axis, the foot's plane at 0; turn 0 faces +z and turn grows
 * towards +x. Corners of a triangle run counter-clockwise seen from outside.
 */
export interface Surface {
  /** Three numbers a corner. */
  readonly positions: Float32Array;
  /** Unit vectors out of the wall, three numbers a corner. */
  readonly normals: Float32Array;
  readonly triangles: Uint32Array;
}

/** Corners once around: a chord of 1/240 turn strays r/11700, a hundredth of a mm on a vessel of 120 mm radius. */
export const around = 240;
/** Levels of the sheet are no further apart than this, mm. */
export const levelStep = 2;
/** A level of a surface from one turn to another. */
export interface Level extends BodyRing {
  readonly from: number;
  readonly to: number;
}

/** The surface that levels from the foot up span. */
export function surfaceOf(levels: readonly Level[], columns: number): Surface {
  const corners = levels.flatMap((level) =>
    Array.from({ length: columns + 1 }, (_, i) => ({ ...level, turn: turnAcross(level, i / columns) })),
  );
  const positions = corners.flatMap(({ radius, height, turn }) => {
    const angle = 2 * Math.PI * turn;
    return [radius * Math.sin(angle), height, radius * Math.cos(angle)];
  });
  const normals = corners.flatMap(({ lean, turn }) => {
    const angle = 2 * Math.PI * turn;
    return [Math.cos(lean) * Math.sin(angle), -Math.sin(lean), Math.cos(lean) * Math.cos(angle)];
  });
  const triangles = levels.slice(1).flatMap((_, row) =>
    Array.from({ length: columns }, (_, i) => {
      const here = row * (columns + 1) + i;
      const above = here + columns + 1;
      return [here, here + 1, above, here + 1, above + 1, above];
    }).flat(),
  );
  return {
    positions: new Float32Array(positions),
    normals: new Float32Array(normals),
    triangles: new Uint32Array(triangles),
  };
}

export const turnAcross = ({ from, to }: Pick<Level, 'from' | 'to'>, share: number): number =>
  from + (to - from) * share;

export const whole = (ring: BodyRing): Level => ({ ...ring, from: 0, to: 1 });

/** A circle of the wall moved out along its normal, mm. */
export const liftedRing = (ring: ProfileRing, off: number): ProfileRing => ({
  ...ring,
  radius: ring.radius + off * Math.cos(ring.lean),
  height: ring.height - off * Math.sin(ring.lean),
});
