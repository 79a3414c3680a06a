// How many things in a drawing speak for a lattice. A motif of several shapes put here and there by hand is one thing, however many outlines
// it has: any step from one such motif to another brings all of them to their like.
import { type Box, boxOfPoints, hullBox } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { add, type Point } from '../../geometry/point.ts';
import type { Agreement } from '../film/film-scan.ts';
import type { Lattice } from '../lattice/lattice.ts';
import { offLattice } from '../lattice/same-lattice.ts';
import type { Size } from '../tile/cut-shapes.ts';

/** Contours that recur together a step away, those that they recur as, and the box around what of them does. */
export interface CopiedTogether {
  readonly step: Point;
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly box: Box;
}

/** A step farther than this from all of a lattice's is none of them, mm. */
const clearlyOff = 0.2;

/** Curves of one contour that count as much as another contour: a net is one contour. */
const curvesPerContour = 4;

export class Evidence {
  readonly #layers: readonly { readonly shapes: readonly Shape[] }[];
  readonly #copies: () => readonly CopiedTogether[];
  /** Worked out once asked for; contours are numbered from 1. */
  #sizes: readonly Size[] | undefined;
  #copied: readonly CopiedTogether[] | undefined;

  constructor(
    layers: readonly { readonly shapes: readonly Shape[] }[],
    copies: () => readonly CopiedTogether[],
  ) {
    this.#layers = layers;
    this.#copies = copies;
  }

  /** How many contours recur, or as many curves as make up one: of a net every few of its curves do. */
  of(around: readonly Agreement[]): number {
    const contours = new Set(around.flatMap((one) => [...one.contours].flat()));
    const curves = new Set(around.flatMap((one) => [...one.segments.keys()]));
    return Math.max(contours.size, curves.size / curvesPerContour);
  }

  /**
   * How many things recur by steps of a lattice; of a chain of copies each but the first. Two may be chance: any two steps of a drawing
   * are a lattice of the things that they lead from and to. Endless where nothing shows that any were copied together.
   */
  thingsOf(lattice: Lattice, around: readonly Agreement[]): number {
    const copies = around.flatMap((one) => [...one.contours]);
    const curves = new Map(around.flatMap((one) => [...one.segments]));
    const cell = cellSize(lattice);
    const ofNets = [...curves.values()].filter((contour) => this.#isNet(contour, cell)).length;
    return Math.max(this.#things(copies, lattice, cell), ofNets / curvesPerContour);
  }

  /** Whether a contour goes on past a period: its parts then recur in it. */
  #isNet(contour: number, { width, height }: Size): boolean {
    this.#sizes ??= this.#layers.flatMap(({ shapes }) =>
      shapes.flatMap(({ contours }) => contours.map((one) => sizeOf(hullBox([one])))),
    );
    const own = this.#sizes[contour - 1];
    return own !== undefined && (own.width > width || own.height > height);
  }

  /**
   * Contours that recur together by a step that is none of the lattice's, and lie within one period of one another, were copied as one: they
   * are one thing.
   */
  #things(copies: readonly (readonly [number, number])[], lattice: Lattice, cell: Size): number {
    const sets = new Sets();
    this.#copied ??= this.#copies();
    for (const { step, from, to, box } of this.#copied) {
      const { width, height } = sizeOf(box);
      if (width > cell.width || height > cell.height || offLattice(step, lattice) < clearlyOff) continue;
      sets.join(from);
      sets.join(to);
    }
    const contours = copies.flat();
    const things = sets.countOf(contours);
    if (things === new Set(contours).size) return Infinity;
    for (const copy of copies) sets.join(copy);
    return things - sets.countOf(contours);
  }
}

/** Sets of contours. Source: union-find (B. A. Galler, M. J. Fischer, 1964; from memory). */
class Sets {
  readonly #parent = new Map<number, number>();

  #rootOf(contour: number): number {
    let root = contour;
    for (let up = this.#parent.get(root); up !== undefined; up = this.#parent.get(root)) root = up;
    for (let at = contour; at !== root; ) {
      const up = this.#parent.get(at) ?? root;
      this.#parent.set(at, root);
      at = up;
    }
    return root;
  }

  join([first, ...others]: readonly number[]): void {
    if (first === undefined) return;
    for (const other of others) {
      const [root, under] = [this.#rootOf(first), this.#rootOf(other)];
      if (root !== under) this.#parent.set(under, root);
    }
  }

  countOf(contours: readonly number[]): number {
    return new Set(contours.map((contour) => this.#rootOf(contour))).size;
  }
}

const sizeOf = ({ minX, minY, maxX, maxY }: Box): Size => ({ width: maxX - minX, height: maxY - minY });

/** How wide and how high a period of a lattice is. */
const cellSize = ({ a, b }: Lattice): Size => sizeOf(boxOfPoints([{ x: 0, y: 0 }, a, b, add(a, b)]));
