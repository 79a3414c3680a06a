// The largest disc that touches an edge at a place and lies clear of every other edge: twice its radius is the width there.
import type { EdgeChords } from './edge-chords.ts';

/** Places nearer than this to a chord's own line lie on it, mm. */
const onLine = 1e-9;

/** Of touches that differ by no more than this, mm, the one more nearly opposite counts: chords stray so far from curves. */
const touchSlack = 0.006;

/**
 * Grows a disc at a place until it touches. One disc at a time, its figures in fields: it is asked a million times.
 *
 * A disc of radius r that touches the edge at p, with the normal n to the inside, has its middle at p + r n. It touches
 * a point q where r = |q - p|² / (2 (q - p).n), and a straight line with the normal m, at the distance D from p, where
 * r = D / (1 - n.m). Source: plane geometry; the distance of the middle from both is r.
 */
export class DiscProbe {
  /** mm; at most the limit that was asked for. */
  radius = 0;
  /** Minus the cosine of the angle between the two touches as seen from the middle: 1 where they face each other. */
  facing = -1;
  /** The chord that was touched; -1 where the disc reached its limit first. */
  touched = -1;
  readonly #chords: EdgeChords;

  constructor(chords: EdgeChords) {
    this.#chords = chords;
  }

  /** Grow the disc at (px, py) along the normal (nx, ny), up to `limit`, against the first `count` chords of `near`. */
  grow(
    px: number,
    py: number,
    nx: number,
    ny: number,
    limit: number,
    near: readonly number[],
    count: number,
  ): void {
    this.radius = limit;
    this.facing = -1;
    this.touched = -1;
    this.#pass(px, py, nx, ny, near, count, false);
    if (this.touched < 0 || this.facing > mostFacing) return;
    const least = this.radius;
    this.radius += touchSlack;
    this.#pass(px, py, nx, ny, near, count, true);
    this.radius = least;
  }

  #pass(
    px: number,
    py: number,
    nx: number,
    ny: number,
    near: readonly number[],
    count: number,
    byFacing: boolean,
  ): void {
    const { x, y, ux, uy, length } = this.#chords;
    for (let i = 0; i < count; i++) {
      const k = near[i] ?? 0;
      const wx = (x[k] ?? 0) - px;
      const wy = (y[k] ?? 0) - py;
      const dx = ux[k] ?? 0;
      const dy = uy[k] ?? 0;
      const depth = wx * nx + wy * ny;
      if (depth > onLine) {
        const r = (wx * wx + wy * wy) / (2 * depth);
        if (r < this.radius) this.#touch(k, r, depth / r - 1, byFacing);
      }
      const off = wx * dy - wy * dx;
      if (off <= onLine) continue;
      const across = dx * ny - dy * nx;
      const r = off / (1 - across);
      if (!(r < this.radius)) continue;
      // The foot of the middle on the line, as a distance from the chord's start.
      const along = (r * nx - wx) * dx + (r * ny - wy) * dy;
      if (along >= 0 && along <= (length[k] ?? 0)) this.#touch(k, r, -across, byFacing);
    }
  }

  #touch(k: number, r: number, facing: number, byFacing: boolean): void {
    if (byFacing && facing <= this.facing) return;
    if (!byFacing) this.radius = r;
    this.facing = facing;
    this.touched = k;
  }
}

/** So nearly opposite that no other touch need be looked for. */
const mostFacing = 0.95;
