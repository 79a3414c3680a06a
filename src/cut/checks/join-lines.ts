// Outlines drawn in pieces joined: open lines whose ends all but meet, end to end until they close.
import type { DrawnLine } from '../../drawing/drawn-line.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import { type Contour, line, reverseContour, type Segment } from '../../geometry/contour.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';

export interface JoinedOutline {
  readonly colour: string;
  readonly outline: Contour;
  /** The open pieces it was made of, as drawn. */
  readonly pieces: readonly Contour[];
  /** The widest gap that was bridged, mm, and where. */
  readonly gap: number;
  readonly at: Point;
}

interface Piece {
  readonly colour: string;
  readonly contour: Contour;
}

const startOf = ({ segments }: Contour): Point => segments[0]?.from ?? { x: 0, y: 0 };
const endOf = ({ segments }: Contour): Point => segments.at(-1)?.to ?? { x: 0, y: 0 };

/** Whether a contour stays open: one that ends where it began was meant closed, and its area is right already. */
const isOpen = (contour: Contour): boolean =>
  !contour.closed && distance(startOf(contour), endOf(contour)) > joinTolerance;

/** Outlines that lines of one colour make up, no gap between their ends wider than `reach`, mm. What stays open is left. */
export function joinedOutlines(lines: readonly DrawnLine[], reach: number): JoinedOutline[] {
  const pieces = lines.flatMap(({ contours, colour }) =>
    contours.filter(isOpen).map((contour): Piece => ({ colour, contour })),
  );
  const loose = new LoosePieces(pieces, reach);
  return pieces.flatMap((_, i) => loose.closedFrom(i) ?? []);
}

/** A piece by its number, turned so that it goes on from an end. */
interface Onward {
  readonly piece: number;
  readonly contour: Contour;
  readonly gap: number;
}

/** Open pieces, found by where their ends lie. */
class LoosePieces {
  readonly #pieces: readonly Piece[];
  readonly #reach: number;
  /** Those in an outline, and those that none began with: they go on from no other. */
  readonly #isGone: Uint8Array;
  /** Two of each piece: where it begins, and where it ends. */
  readonly #places: readonly Point[];
  readonly #ends: BoxIndex;

  constructor(pieces: readonly Piece[], reach: number) {
    this.#pieces = pieces;
    this.#reach = reach;
    this.#isGone = new Uint8Array(pieces.length);
    this.#places = pieces.flatMap(({ contour }) => [startOf(contour), endOf(contour)]);
    this.#ends = new BoxIndex(this.#places.length, (add) => {
      for (const { x, y } of this.#places) add(x, y, x, y);
    });
  }

  /** The outline that begins with a piece; undefined where it does not close, or is in one before it. */
  closedFrom(first: number): JoinedOutline | undefined {
    const begun = this.#pieces[first];
    if (!begun || this.#isGone[first] === 1) return undefined;
    this.#isGone[first] = 1;
    const { colour, contour } = begun;
    const chain = [contour];
    const taken = new Set([first]);
    for (;;) {
      const end = endOf(chain.at(-1) ?? contour);
      const home = distance(end, startOf(contour));
      const next = this.#nearest(end, colour, taken);
      if (home <= this.#reach && (!next || home <= next.gap)) {
        for (const piece of taken) this.#isGone[piece] = 1;
        return outlineOf(
          colour,
          chain,
          [...taken].flatMap((i) => this.#pieces[i]?.contour ?? []),
        );
      }
      if (!next) return undefined;
      chain.push(next.contour);
      taken.add(next.piece);
    }
  }

  /** The piece that goes on nearest to an end, of equals the first; undefined where none is within reach. */
  #nearest({ x, y }: Point, colour: string, taken: ReadonlySet<number>): Onward | undefined {
    const reach = this.#reach;
    const near = this.#ends.meeting(x - reach, y - reach, x + reach, y + reach);
    let [best, gap] = [-1, reach];
    for (const place of near) {
      const piece = place >> 1;
      const at = this.#places[place];
      if (!at || this.#isGone[piece] === 1 || taken.has(piece)) continue;
      if (this.#pieces[piece]?.colour !== colour) continue;
      const own = distance({ x, y }, at);
      if (own > gap || (own === gap && best >= 0 && place > best)) continue;
      [best, gap] = [place, own];
    }
    const contour = this.#pieces[best >> 1]?.contour;
    if (!contour) return undefined;
    return { piece: best >> 1, contour: best % 2 === 0 ? contour : reverseContour(contour), gap };
  }
}

function outlineOf(colour: string, chain: readonly Contour[], pieces: readonly Contour[]): JoinedOutline {
  const segments: Segment[] = [];
  let widest = { gap: 0, at: startOf(chain[0] ?? { closed: false, segments: [] }) };
  chain.forEach((contour, i) => {
    for (const segment of contour.segments) segments.push(segment);
    const [from, to] = [endOf(contour), startOf(chain[(i + 1) % chain.length] ?? contour)];
    const gap = distance(from, to);
    if (gap > widest.gap) widest = { gap, at: from };
    if (gap > 0) segments.push(line(from, to));
  });
  return { colour, outline: { closed: true, segments }, pieces, ...widest };
}
