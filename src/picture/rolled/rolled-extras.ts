// What is seen on a vessel's wall beside the sheet, as triangles: its handle, cover strips, and the edge of an overlap.
import { girthAt } from '../../unroll/flat-wall.ts';
import { turnOfEdge } from '../../unroll/template.ts';
import { handleDepth, handleLoop } from './rolled-handle.ts';
import { profileOf } from './rolled-profile.ts';
import { closeRings, ringAlong, ringsBetween } from './rolled-rings.ts';
import {
  around,
  type Level,
  levelStep,
  liftedRing,
  type Surface,
  surfaceOf,
  whole,
} from './rolled-surface.ts';
import type { Ring, RolledVessel } from './rolled-vessel.ts';

export interface WallExtras {
  /** Only its width was measured; the rest is a plain loop, as on the four sides. */
  readonly handle?: Surface;
  /** Cover strips over the seam, and over borders of the pattern. */
  readonly strips: readonly Surface[];
  /** A narrow band along the edge that stays on top, where the sheet laps over its own beginning. */
  readonly lap?: Surface;
}

/** How far strips and lines stand off the sheet, half the width of the lap's line, mm. */
const off = { strip: 0.15, lap: 0.12 } as const;
const lapHalf = 0.2;
/** Columns across a strip up the wall: as straight as the sheet's own on any strip under 40 mm. */
const stripColumns = 12;

export function wallExtras(vessel: RolledVessel): WallExtras {
  const handle = handleSurface(vessel);
  const lap = lapSurface(vessel);
  return { ...(handle ? { handle } : {}), strips: stripsOf(vessel), ...(lap ? { lap } : {}) };
}

const bandRings = ({ profile, band }: RolledVessel) =>
  closeRings(ringsBetween(profile, band.from, band.to), levelStep);

function stripsOf(vessel: RolledVessel): readonly Surface[] {
  const { strip, covers, wall, band, profile } = vessel;
  const upright = [
    ...(covers?.turns.map((turn) => ({ turn, half: covers.width / 2 })) ?? []),
    ...(strip === undefined ? [] : [{ turn: 0, half: strip / 2 }]),
  ].map(({ turn, half }) => {
    const edge = (offset: number, along: number) => turnOfEdge(wall, { turn, offset }, along);
    const levels = bandRings(vessel).map(
      (ring): Level => ({
        ...liftedRing(ring, off.strip),
        from: edge(-half, ring.along),
        to: edge(half, ring.along),
      }),
    );
    return surfaceOf(levels, stripColumns);
  });
  const level = (covers?.along ?? []).map((along) => {
    const half = (covers?.width ?? 0) / 2;
    const [from, to] = [Math.max(band.from, along - half), Math.min(band.to, along + half)];
    const rings = closeRings(ringsBetween(profile, from, to), levelStep);
    return surfaceOf(
      rings.map((ring) => whole(liftedRing(ring, off.strip))),
      around,
    );
  });
  return [...upright, ...level];
}

function lapSurface(vessel: RolledVessel): Surface | undefined {
  const { seam, overlap, wall, strip, covers } = vessel;
  const isCovered = strip !== undefined || covers?.turns.includes(0);
  if (overlap <= 0 || seam.start.offset !== seam.finish.offset || isCovered) return undefined;
  const edge = { ...seam.finish, offset: seam.finish.offset + overlap };
  const levels = bandRings(vessel).map((ring): Level => {
    const at = turnOfEdge(wall, edge, ring.along);
    const half = lapHalf / girthAt(wall, ring.along);
    return { ...liftedRing(ring, off.lap), from: at - half, to: at + half };
  });
  return surfaceOf(levels, 2);
}

/** The handle's loop, as thick as on the four sides and as wide as was measured along the girth; it lies at turn 0, towards +z. */
function handleSurface(vessel: RolledVessel): Surface | undefined {
  const { handleSpan, profile } = vessel;
  if (handleSpan === undefined) return undefined;
  const rounded = profileOf(vessel);
  const depth = handleDepth(vessel);
  const thick = 0.22 * depth;
  const { radius } = ringAlong(profile, (profile.at(-1)?.along ?? 0) / 2);
  const half = radius * Math.sin(Math.min(Math.PI / 2, handleSpan / (2 * radius)));
  return sweptLoop(handleLoop(rounded, depth, 0), handleLoop(rounded, depth - thick, thick), half);
}

interface Corner {
  readonly at: readonly [number, number, number];
  readonly normal: readonly [number, number, number];
}

/** The solid between two loops in the plane x = 0, from -half to half across: four faces, each with normals of its own. */
function sweptLoop(outer: readonly Ring[], inner: readonly Ring[], half: number): Surface {
  const point = ({ radius, height }: Ring, x: number): Corner['at'] => [x, height, radius];
  const outwards = (loop: readonly Ring[], i: number, sign: 1 | -1): Corner['normal'] => {
    const [a, b] = [loop[Math.max(0, i - 1)], loop[Math.min(loop.length - 1, i + 1)]];
    const [dr, dh] = [(b?.radius ?? 0) - (a?.radius ?? 0), (b?.height ?? 0) - (a?.height ?? 0)];
    const length = Math.hypot(dr, dh) || 1;
    // The loop runs from the foot up: to its right lies the outside.
    return [0, (-sign * dr) / length, (sign * dh) / length];
  };
  const strip = (left: readonly Corner[], right: readonly Corner[]) => ({ left, right });
  const face = (loop: readonly Ring[], sign: 1 | -1) => {
    const side = (x: number) =>
      loop.map((ring, i): Corner => ({ at: point(ring, x), normal: outwards(loop, i, sign) }));
    return sign === 1 ? strip(side(-half), side(half)) : strip(side(half), side(-half));
  };
  const cheek = (x: number) => {
    const normal: Corner['normal'] = [Math.sign(x), 0, 0];
    const on = (loop: readonly Ring[]) => loop.map((ring): Corner => ({ at: point(ring, x), normal }));
    return x > 0 ? strip(on(outer), on(inner)) : strip(on(inner), on(outer));
  };
  const faces = [face(outer, 1), face(inner, -1), cheek(half), cheek(-half)];
  const corners = faces.flatMap(({ left, right }) =>
    left.flatMap((corner, i) => {
      const other = right[i];
      return other ? [corner, other] : [];
    }),
  );
  let first = 0;
  const triangles = faces.flatMap(({ left }) => {
    const start = first;
    first += 2 * left.length;
    return left.slice(1).flatMap((_, i) => {
      const a = start + 2 * i;
      return [a, a + 1, a + 2, a + 1, a + 3, a + 2];
    });
  });
  return {
    positions: new Float32Array(corners.flatMap(({ at }) => at)),
    normals: new Float32Array(corners.flatMap(({ normal }) => normal)),
    triangles: new Uint32Array(triangles),
  };
}
