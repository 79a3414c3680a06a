// The pieces on their sheets while a nest is sought: where each lies, and what it costs to lie elsewhere.
import { boxOfPoints } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';
import { type Corners, cornersOf } from './convolution.ts';
import { type NoFit, noFit } from './no-fit.ts';
import { depthAt } from './overlap-depth.ts';

/** One kind of piece: its outline, how many of it, and the turns (radians, counter-clockwise) it may be laid at. */
export interface NestPiece {
  readonly outline: readonly Point[];
  /** What has to lie inside the sheet, where the outline stands off the piece; left out, the outline. */
  readonly edge?: readonly Point[];
  readonly count: number;
  readonly turns: readonly number[];
}

/** The usable part of a sheet, mm. A roll has no end: its length is Infinity. */
export interface NestSheet {
  readonly length: number;
  readonly height: number;
}

/** A kind of piece at one of its turns: the box that has to lie inside the sheet. */
interface Variant {
  readonly kind: number;
  readonly turn: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

const turned = (outline: readonly Point[], angle: number): Point[] => {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return outline.map(({ x, y }) => ({ x: x * c - y * s, y: x * s + y * c }));
};

const toGrid = (outline: readonly Point[], step: number) =>
  outline.map(({ x, y }) => ({ x: Math.round(x / step), y: Math.round(y / step) }));

/** Grid steps across the largest piece: fine enough to be exact for every purpose, small enough to multiply safely. */
const gridSteps = 1e7;

const fullTurn = 2 * Math.PI;
const wrapped = (angle: number): number => ((angle % fullTurn) + fullTurn) % fullTurn;

/** What a region with an unturned fixed piece is known by. */
const keyOf = (fixed: number, moving: number, twist: number): string =>
  `${fixed} ${moving} ${twist.toFixed(9)}`;

/** A no-fit region turned with both of its pieces. */
function turnedRegion(region: NoFit, angle: number): NoFit {
  if (angle === 0) return region;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const turnColumns = (x: Float64Array, y: Float64Array) => ({
    x: x.map((value, i) => value * c - (y[i] ?? 0) * s),
    y: y.map((value, i) => (x[i] ?? 0) * s + value * c),
  });
  const from = turnColumns(region.x0, region.y0);
  const to = turnColumns(region.x1, region.y1);
  const box = boxOfPoints(Array.from(from.x, (x, i) => ({ x, y: from.y[i] ?? 0 })));
  return { x0: from.x, y0: from.y, x1: to.x, y1: to.y, ...box };
}

/** Where a piece lies: which of its variants, on which sheet, and its outline's origin. */
export interface Lie {
  readonly variant: number;
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
}

/** The state of a nest. Positions change in place: a search makes millions of trials. */
export class NestBoard {
  readonly pieces: number;
  readonly kindOf: Int32Array;
  readonly variants: readonly Variant[];
  readonly variantsOf: readonly (readonly number[])[];
  /** The size of the largest kind, by which lengths of the search are measured, mm. */
  readonly size: number;
  readonly variant: Int32Array;
  readonly sheet: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** How much an overlap of two pieces counts. */
  readonly weight: Float64Array;
  readonly height: number;
  /** Right end of each sheet's usable part. */
  readonly ends: number[] = [];
  /** Trials made so far: the clock of the search, the same on every machine. */
  trials = 0;
  readonly #kinds: readonly NestPiece[];
  readonly #step: number;
  readonly #regions: (NoFit | undefined)[];
  readonly #base = new Map<string, NoFit>();
  readonly #corners = new Map<string, Corners>();

  constructor(kinds: readonly NestPiece[], height: number) {
    this.#kinds = kinds;
    this.height = height;
    this.kindOf = Int32Array.from(kinds.flatMap(({ count }, kind) => Array<number>(count).fill(kind)));
    this.pieces = this.kindOf.length;
    const variants: Variant[] = [];
    this.variantsOf = kinds.map(({ outline, edge = outline, turns }, kind) =>
      turns.map((turn) => variants.push({ kind, turn, ...boxOfPoints(turned(edge, turn)) }) - 1),
    );
    this.variants = variants;
    this.size = Math.max(...variants.map(({ minX, maxX, minY, maxY }) => Math.max(maxX - minX, maxY - minY)));
    this.#step = this.size / gridSteps;
    this.#regions = Array(variants.length ** 2).fill(undefined);
    this.variant = new Int32Array(this.pieces).fill(-1);
    this.sheet = new Int32Array(this.pieces);
    this.x = new Float64Array(this.pieces);
    this.y = new Float64Array(this.pieces);
    this.weight = new Float64Array(this.pieces ** 2).fill(1);
  }

  variantAt(index: number): Variant {
    return this.variants[index] as Variant;
  }

  /** The no-fit region of two variants. */
  region(fixed: number, moving: number): NoFit {
    const at = fixed * this.variants.length + moving;
    const known = this.#regions[at];
    if (known) return known;
    const a = this.variantAt(fixed);
    const b = this.variantAt(moving);
    const made = turnedRegion(this.#untwisted(a, b), a.turn);
    this.#regions[at] = made;
    return made;
  }

  /** The region with the fixed piece unturned: the same for every pair that is turned alike against each other. */
  #untwisted(a: Variant, b: Variant): NoFit {
    const twist = wrapped(b.turn - a.turn);
    const key = keyOf(a.kind, b.kind, twist);
    const known = this.#base.get(key);
    if (known) return known;
    const made =
      this.#asSeenFromOther(a, b, twist) ??
      noFit(this.#cornersAt(a.kind, 0), this.#cornersAt(b.kind, twist), this.#step);
    this.#base.set(key, made);
    return made;
  }

  /** Where one may not be against the other says where the other may not be against the one: the same, turned by half a turn and by the twist. */
  #asSeenFromOther(a: Variant, b: Variant, twist: number): NoFit | undefined {
    const other = this.#base.get(keyOf(b.kind, a.kind, wrapped(-twist)));
    return other && turnedRegion(other, twist + Math.PI);
  }

  #cornersAt(kind: number, turn: number): Corners {
    const key = `${kind} ${turn.toFixed(9)}`;
    const known = this.#corners.get(key);
    if (known) return known;
    const made = cornersOf(toGrid(turned(this.#kinds[kind]?.outline ?? [], turn), this.#step));
    this.#corners.set(key, made);
    return made;
  }

  /** Whether a variant fits between the ends of a sheet at all. */
  fits(variant: number, sheet: number): boolean {
    const { minX, maxX, minY, maxY } = this.variantAt(variant);
    return maxX - minX <= (this.ends[sheet] ?? 0) + this.slack && maxY - minY <= this.height + this.slack;
  }

  /** How deep an overlap is no overlap: rounding, mm. */
  get slack(): number {
    return this.size * 1e-7;
  }

  clampX(variant: number, sheet: number, x: number): number {
    const { minX, maxX } = this.variantAt(variant);
    return Math.max(-minX, Math.min((this.ends[sheet] ?? 0) - maxX, x));
  }

  clampY(variant: number, y: number): number {
    const { minY, maxY } = this.variantAt(variant);
    return Math.max(-minY, Math.min(this.height - maxY, y));
  }

  place(piece: number, { variant, sheet, x, y }: Lie): void {
    this.variant[piece] = variant;
    this.sheet[piece] = sheet;
    this.x[piece] = x;
    this.y[piece] = y;
  }

  lie(piece: number): Lie {
    return {
      variant: this.variant[piece] ?? 0,
      sheet: this.sheet[piece] ?? 0,
      x: this.x[piece] ?? 0,
      y: this.y[piece] ?? 0,
    };
  }

  /** The weighted depths a piece would have in the others; stops counting at `enough`. */
  cost(piece: number, variant: number, sheet: number, x: number, y: number, enough: number): number {
    this.trials++;
    const { pieces, weight, variants } = this;
    const row = piece * pieces;
    let sum = 0;
    for (let other = 0; other < pieces; other++) {
      if (other === piece || this.sheet[other] !== sheet) continue;
      const lain = this.variant[other] as number;
      if (lain < 0) continue;
      const region = this.#regions[lain * variants.length + variant] ?? this.region(lain, variant);
      const depth = depthAt(region, x - (this.x[other] as number), y - (this.y[other] as number));
      if (depth === 0) continue;
      sum += (weight[row + other] as number) * depth;
      if (sum >= enough) return sum;
    }
    return sum;
  }

  /** How deep two pieces lie in one another, mm. */
  depth(a: number, b: number): number {
    if (this.sheet[a] !== this.sheet[b]) return 0;
    const region = this.region(this.variant[a] as number, this.variant[b] as number);
    return depthAt(
      region,
      (this.x[b] as number) - (this.x[a] as number),
      (this.y[b] as number) - (this.y[a] as number),
    );
  }

  /** How far to the right a sheet is used, mm. */
  used(sheet: number): number {
    let used = 0;
    for (let i = 0; i < this.pieces; i++) {
      if (this.sheet[i] !== sheet || (this.variant[i] as number) < 0) continue;
      used = Math.max(used, (this.x[i] as number) + this.variantAt(this.variant[i] as number).maxX);
    }
    return used;
  }
}
