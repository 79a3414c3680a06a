// Things at places of the drawing put together by where their copies lie, looked up by squares of the lattice's cell.
import { cross, norm, type Point } from '../../geometry/point.ts';
import { coordinates, type Lattice } from '../lattice/lattice.ts';
import { apartInArt } from './art-place.ts';

/** One group: all that lies near the first of it. */
interface Group<T> {
  readonly number: number;
  readonly at: Point;
  readonly all: T[];
}

/** Groups of things by their places in the drawing: each joins the earliest group whose first lies nearer than `near` mm drawn. */
export class ArtGroups<T> {
  readonly #lattice: Lattice;
  readonly #near: number;
  /** How many squares the cell has each way: none narrower than `near`. */
  readonly #count: { readonly i: number; readonly j: number };
  readonly #squares = new Map<number, Group<T>[]>();
  readonly #groups: Group<T>[] = [];

  constructor(lattice: Lattice, near: number) {
    this.#lattice = lattice;
    this.#near = near;
    const area = Math.abs(cross(lattice.a, lattice.b));
    const across = ({ x, y }: Point): number => Math.max(1, Math.floor(area / norm(x, y) / near));
    this.#count = { i: across(lattice.b), j: across(lattice.a) };
  }

  /** The groups in the order they were begun, each in the order it was added to. */
  get all(): readonly (readonly T[])[] {
    return this.#groups.map(({ all }) => all);
  }

  add(at: Point, one: T): void {
    const group = this.#earliestNear(at);
    if (group) {
      group.all.push(one);
      return;
    }
    const begun = { number: this.#groups.length, at, all: [one] };
    this.#groups.push(begun);
    const { i, j } = this.#squareOf(at);
    const key = this.#key(i, j);
    const square = this.#squares.get(key);
    if (square) square.push(begun);
    else this.#squares.set(key, [begun]);
  }

  #earliestNear(at: Point): Group<T> | undefined {
    const { i, j } = this.#squareOf(at);
    let earliest: Group<T> | undefined;
    for (const di of [-1, 0, 1])
      for (const dj of [-1, 0, 1])
        for (const group of this.#squares.get(this.#key(i + di, j + dj)) ?? [])
          if (
            group.number < (earliest?.number ?? Infinity) &&
            apartInArt(this.#lattice, group.at, at) < this.#near
          )
            earliest = group;
    return earliest;
  }

  #squareOf(at: Point): { readonly i: number; readonly j: number } {
    const { i, j } = coordinates(this.#lattice, at);
    return {
      i: Math.floor((i - Math.floor(i)) * this.#count.i),
      j: Math.floor((j - Math.floor(j)) * this.#count.j),
    };
  }

  /** Squares past one side of the cell are those at the other. */
  #key(i: number, j: number): number {
    const { i: across, j: up } = this.#count;
    return ((i + across) % across) * up + ((j + up) % up);
  }
}
