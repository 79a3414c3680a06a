// Seeded shapes, so that every run of the bench has the same work.
import { type Contour, cubic } from '../../src/geometry/contour.ts';
import type { Point } from '../../src/geometry/point.ts';

/** Source: mulberry32, public domain, from memory. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A round blob of eight cubics. */
function blob(x: number, y: number, size: number, next: () => number): Contour {
  const spokes = Array.from({ length: 8 }, (_, i) => {
    const angle = (i * Math.PI) / 4;
    const radius = size * (0.6 + 0.4 * next());
    return { at: { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) }, angle, radius };
  });
  const segments = spokes.map((a, i) => {
    const b = spokes[(i + 1) % 8] ?? a;
    const handle = (spoke: typeof a, sign: number): Point => ({
      x: spoke.at.x - sign * 0.265 * spoke.radius * Math.sin(spoke.angle),
      y: spoke.at.y + sign * 0.265 * spoke.radius * Math.cos(spoke.angle),
    });
    return cubic(a.at, handle(a, 1), handle(b, -1), b.at);
  });
  return { closed: true, segments };
}

/** Blobs anywhere on a sheet, over one another too. mm. */
export const blobs = (count: number, across: number, up: number, size: number): Contour[] => {
  const next = random(20261125);
  return Array.from({ length: count }, () => blob(next() * across, next() * up, size, next));
};

/** Blobs in rows, none touching another: `step` apart, mm. */
export const rowsOfBlobs = (columns: number, rows: number, step: number): Contour[] => {
  const next = random(20261128);
  return Array.from({ length: columns * rows }, (_, i) =>
    blob(step * ((i % columns) + 0.5), step * (Math.floor(i / columns) + 0.5), 0.45 * step, next),
  );
};
