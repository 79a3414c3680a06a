// Contours that lie long: kept as plain numbers, and made into segments again whenever they are asked for.
import { type Contour, cubic, line, type Segment, type Shape } from './contour.ts';
import type { Point } from './point.ts';

/** Contours of more segments are left as they are: somebody may ask for one segment after another. */
const mostSegments = 64;

/**
 * The same contour, number for number, for a fifth of the memory: node keeps a cubic's points and their coordinates in some twelve
 * objects of 280 bytes, six numbers take 48. Of 20,000 shapes that is 60 MB each time they are held. For what lies while others are
 * worked on: whoever goes over `segments` again and again takes them `atHand`, for each time they are asked for they are made anew.
 * One segment is told from another by its being another object where corners touch and where lines are doubled: both take them once,
 * and `tests/geometry/kept-contour.test.ts` holds them to finding the same in contours that are kept.
 */
export function keptContour(contour: Contour): Contour {
  if (contour instanceof KeptContour) return contour;
  if (contour.segments.length === 0 || contour.segments.length > mostSegments) return contour;
  const numbers = numbersOf(contour.segments);
  if (!numbers) return contour;
  return new KeptContour(contour.closed, kindsOf(contour.segments), numbers);
}

export const keptShape = ({ contours }: Shape): Shape => ({ contours: contours.map(keptContour) });

export const keptLayers = <Layer extends { readonly shapes: readonly Shape[] }>(
  layers: readonly Layer[],
): Layer[] => layers.map((layer) => ({ ...layer, shapes: layer.shapes.map(keptShape) }));

/** A contour with segments that stay the same. */
export const atHand = ({ closed, segments }: Contour): Contour => ({ closed, segments });

/** Where a contour begins, where it ends and how many segments it has: of one that is kept no segment is made for that. */
export const startOf = (contour: Contour): Point | undefined =>
  contour instanceof KeptContour ? contour.place(0) : contour.segments[0]?.from;

export const endOf = (contour: Contour): Point | undefined =>
  contour instanceof KeptContour ? contour.place(-2) : contour.segments.at(-1)?.to;

export const segmentCount = (contour: Contour): number =>
  contour instanceof KeptContour ? contour.count : contour.segments.length;

class KeptContour implements Contour {
  readonly closed: boolean;
  declare readonly segments: readonly Segment[];
  /** A letter a segment: l for a line, c for a cubic. */
  readonly #kinds: string;
  /** The first point, then of each segment all others. */
  readonly #numbers: readonly number[];

  constructor(closed: boolean, kinds: string, numbers: readonly number[]) {
    this.closed = closed;
    this.#kinds = kinds;
    this.#numbers = numbers;
    // Its own, and not its kind's: so it is there too in a copy, and where it is handed to another thread.
    Object.defineProperty(this, 'segments', KeptContour.#asked);
  }

  /** What was asked for last, and its segments: most who ask once ask again at once. */
  static #lately: { readonly of?: KeptContour; readonly segments: readonly Segment[] } = { segments: [] };

  get count(): number {
    return this.#kinds.length;
  }

  /** The point whose x is number `at`, counted from the end where it is under nought. */
  place(at: number): Point {
    return { x: this.#numbers.at(at) ?? 0, y: this.#numbers.at(at + 1) ?? 0 };
  }

  static #asked: PropertyDescriptor & ThisType<KeptContour> = {
    enumerable: true,
    get() {
      if (KeptContour.#lately.of !== this)
        KeptContour.#lately = { of: this, segments: segmentsAgain(this.#kinds, this.#numbers) };
      return KeptContour.#lately.segments;
    },
  };
}

const kindsOf = (segments: readonly Segment[]): string => {
  let kinds = '';
  for (const { kind } of segments) kinds += kind === 'line' ? 'l' : 'c';
  return kinds;
};

const isSame = (p: Point, q: Point): boolean => Object.is(p.x, q.x) && Object.is(p.y, q.y);

/** None where a segment does not begin exactly where the one before ends. */
function numbersOf(segments: readonly Segment[]): readonly number[] | undefined {
  const [first] = segments;
  if (!first) return undefined;
  const numbers = [first.from.x, first.from.y];
  let at = first.from;
  for (const s of segments) {
    if (!isSame(s.from, at)) return undefined;
    if (s.kind === 'cubic') numbers.push(s.c1.x, s.c1.y, s.c2.x, s.c2.y);
    numbers.push(s.to.x, s.to.y);
    at = s.to;
  }
  // An array that grew has room to grow on: a copy has none.
  return numbers.slice();
}

function segmentsAgain(kinds: string, numbers: readonly number[]): Segment[] {
  const segments: Segment[] = [];
  let next = 0;
  const point = (): Point => {
    const at = next;
    next += 2;
    return { x: numbers[at] ?? 0, y: numbers[at + 1] ?? 0 };
  };
  let from = point();
  for (let i = 0; i < kinds.length; i++) {
    const s: Segment = kinds[i] === 'l' ? line(from, point()) : cubic(from, point(), point(), point());
    segments.push(s);
    from = s.to;
  }
  return segments;
}
