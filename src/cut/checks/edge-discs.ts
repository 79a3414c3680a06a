// Discs along an edge: at each place that another part of the edge may face, the largest that fits there.
import { norm } from '../../geometry/point.ts';
import { ChordSquares } from './chord-grid.ts';
import type { EdgeChords } from './edge-chords.ts';
import { DiscProbe } from './inscribed-disc.ts';

/**
 * Discs in the order of the edge, in columns. Only chords that others face have any; what lies between two chords that
 * have none is wide open.
 */
export interface EdgeDiscs {
  readonly chord: number[];
  /** How far along its contour a disc touches, mm. */
  readonly at: number[];
  /** Its middle. */
  readonly x: number[];
  readonly y: number[];
  /** mm; the limit itself where nothing is touched sooner. */
  readonly radius: number[];
  readonly facing: number[];
  /** The chord it touches besides; -1 where it touches none. */
  readonly touched: number[];
}

/** A turn away from what is measured past this sine is a corner that something may face. */
const cornerTurn = 1e-6;

/** Fans of normals wider than this, as a cosine, reach past what lies near the chord itself: 0.3 radians. */
const narrowFan = Math.cos(0.3);

/** Chords whose normals are nearer than this to one another, as a cosine, follow each other and do not face. */
const sameWay = 0.1;

/** Places on one chord closer than this are one, mm. */
const samePlace = 1e-4;

class DiscFinder {
  readonly discs: EdgeDiscs = { chord: [], at: [], x: [], y: [], radius: [], facing: [], touched: [] };
  readonly #chords: EdgeChords;
  readonly #squares: ChordSquares;
  readonly #probe: DiscProbe;
  readonly #limit: number;
  readonly #near: number[] = [];
  readonly #around: number[] = [];
  readonly #places: number[] = [];

  constructor(chords: EdgeChords, limit: number) {
    this.#chords = chords;
    this.#limit = limit;
    this.#squares = new ChordSquares(chords, limit / 2);
    this.#probe = new DiscProbe(chords);
  }

  /** The discs of one chord: at its start if that is a corner, in its middle, and opposite every corner. */
  visit(k: number): void {
    const { x, y, ux, uy, length } = this.#chords;
    const px = x[k] ?? 0;
    const py = y[k] ?? 0;
    const dx = ux[k] ?? 0;
    const dy = uy[k] ?? 0;
    const reach = length[k] ?? 0;
    const count = this.#nearChord(k, px, py, dx, dy, reach);
    if (this.#isTip(k)) this.#visitCorner(k, count);
    if (!this.#isFaced(k, count)) return;
    for (const t of this.#placesOn(k, px, py, dx, dy, reach, count))
      this.#put(k, t, px + t * dx, py + t * dy, -dy, dx, this.#near, count);
  }

  #nearChord(k: number, px: number, py: number, dx: number, dy: number, reach: number): number {
    const half = this.#limit / 2;
    const ax = px - half * dy;
    const ay = py + half * dx;
    const bx = ax + reach * dx;
    const by = ay + reach * dy;
    return this.#ownAmong(
      k,
      this.#near,
      this.#squares.near(
        Math.min(ax, bx) - half,
        Math.min(ay, by) - half,
        Math.max(ax, bx) + half,
        Math.max(ay, by) + half,
        this.#near,
      ),
    );
  }

  /**
   * Of the first `count` chords those that a disc at chord k may touch, at the front; gives how many there are. In film that is its
   * own shape's edge alone, past which no disc in it reaches: of fine dots close together each has hundreds of others' beside it.
   */
  #ownAmong(k: number, near: number[], count: number): number {
    const { side, shapeOf, contour } = this.#chords;
    if (side === 'gap') return count;
    const own = shapeOf[contour[k] ?? 0];
    let kept = 0;
    for (let i = 0; i < count; i++) {
      const f = near[i] ?? 0;
      if (shapeOf[contour[f] ?? 0] === own) near[kept++] = f;
    }
    return kept;
  }

  /** Whether the edge turns away from what is measured where a chord starts. */
  #isTip(k: number): boolean {
    return (this.#chords.turn[k] ?? 0) < -cornerTurn;
  }

  #isFaced(k: number, count: number): boolean {
    const { ux, uy } = this.#chords;
    const dx = ux[k] ?? 0;
    const dy = uy[k] ?? 0;
    for (let i = 0; i < count; i++) {
      const f = this.#near[i] ?? 0;
      if (dx * (ux[f] ?? 0) + dy * (uy[f] ?? 0) < sameWay) return true;
    }
    return false;
  }

  /** The middle of the chord, and the feet of corners that point at it, where a width can be least; not in its own corners. */
  #placesOn(
    k: number,
    px: number,
    py: number,
    dx: number,
    dy: number,
    reach: number,
    count: number,
  ): number[] {
    const { x, y } = this.#chords;
    const places = this.#places;
    places.length = 0;
    places.push(reach / 2);
    const { turn, next } = this.#chords;
    const least = (turn[k] ?? 0) > cornerTurn ? samePlace : 0;
    const most = reach - ((turn[next[k] ?? 0] ?? 0) > cornerTurn ? samePlace : 0);
    for (let i = 0; i < count; i++) {
      const f = this.#near[i] ?? 0;
      if (!this.#isTip(f)) continue;
      const wx = (x[f] ?? 0) - px;
      const wy = (y[f] ?? 0) - py;
      const depth = wy * dx - wx * dy;
      if (depth <= 0 || depth > this.#limit) continue;
      const along = wx * dx + wy * dy;
      if (along < least || along > most) continue;
      if (places.every((t) => Math.abs(t - along) > samePlace)) places.push(along);
    }
    return places.length === 1 ? places : places.sort((a, b) => a - b);
  }

  /** Corners that face the corner at the start of chord k, each within the fan of normals of the other. */
  #visitCorner(k: number, nearCount: number): void {
    const { x, y, ux, uy, before } = this.#chords;
    const b = before[k] ?? 0;
    const px = x[k] ?? 0;
    const py = y[k] ?? 0;
    let near: number[] = this.#near;
    let count = nearCount;
    if ((ux[b] ?? 0) * (ux[k] ?? 0) + (uy[b] ?? 0) * (uy[k] ?? 0) < narrowFan) {
      near = this.#around;
      const all = this.#squares.near(
        px - this.#limit,
        py - this.#limit,
        px + this.#limit,
        py + this.#limit,
        near,
      );
      count = this.#ownAmong(k, near, all);
    }
    for (let i = 0; i < count; i++) {
      const f = near[i] ?? 0;
      if (!this.#isTip(f)) continue;
      const wx = (x[f] ?? 0) - px;
      const wy = (y[f] ?? 0) - py;
      const apart = norm(wx, wy);
      if (apart > this.#limit || apart < samePlace) continue;
      const [nx, ny] = [wx / apart, wy / apart];
      if (this.#isInFan(k, nx, ny) && this.#isInFan(f, -nx, -ny))
        this.#put(k, 0, px, py, nx, ny, near, count);
    }
  }

  /** Whether a direction lies between the normals of the two chords that meet at the start of chord k. */
  #isInFan(k: number, nx: number, ny: number): boolean {
    const { ux, uy, before } = this.#chords;
    const b = before[k] ?? 0;
    return (ux[b] ?? 0) * nx + (uy[b] ?? 0) * ny >= 0 && (ux[k] ?? 0) * nx + (uy[k] ?? 0) * ny <= 0;
  }

  #put(
    k: number,
    along: number,
    px: number,
    py: number,
    nx: number,
    ny: number,
    near: readonly number[],
    count: number,
  ): void {
    this.#probe.grow(px, py, nx, ny, this.#limit / 2, near, count);
    const { radius, facing, touched } = this.#probe;
    const { discs } = this;
    discs.chord.push(k);
    discs.at.push((this.#chords.at[k] ?? 0) + along);
    discs.x.push(px + radius * nx);
    discs.y.push(py + radius * ny);
    discs.radius.push(radius);
    discs.facing.push(facing);
    discs.touched.push(touched);
  }
}

/** The discs along an edge, none wider than `limit` mm across. `isWanted`: whether a chord is to be looked at; all if left out. */
export function edgeDiscs(
  chords: EdgeChords,
  limit: number,
  isWanted: (chord: number) => boolean = () => true,
): EdgeDiscs {
  const finder = new DiscFinder(chords, limit);
  for (let k = 0; k < chords.count; k++) if (isWanted(k)) finder.visit(k);
  return finder.discs;
}
