// Outlines drawn in pieces joined: open lines whose ends all but meet, end to end until they close.
import type { DrawnLine } from '../../drawing/drawn-line.ts';
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
  const loose = lines.flatMap(({ contours, colour }) =>
    contours.filter(isOpen).map((contour): Piece => ({ colour, contour })),
  );
  const joined: JoinedOutline[] = [];
  while (loose.length > 0) {
    const first = loose.shift();
    const outline = first && closedFrom(first, loose, reach);
    if (outline) joined.push(outline);
  }
  return joined;
}

/** The outline that begins with a piece; its pieces are taken out of `loose` where it closes. */
function closedFrom({ colour, contour }: Piece, loose: Piece[], reach: number): JoinedOutline | undefined {
  const chain = [contour];
  const taken: Piece[] = [];
  for (;;) {
    const end = endOf(chain.at(-1) ?? contour);
    const home = distance(end, startOf(contour));
    const next = nearest(end, colour, loose, taken);
    if (home <= reach && (!next || home <= next.gap)) {
      for (const piece of taken) loose.splice(loose.indexOf(piece), 1);
      return outlineOf(colour, chain, [contour, ...taken.map((piece) => piece.contour)]);
    }
    if (!next || next.gap > reach) return undefined;
    chain.push(next.contour);
    taken.push(next.piece);
  }
}

/** The piece that goes on nearest to an end, turned so that it begins there. */
function nearest(
  end: Point,
  colour: string,
  loose: readonly Piece[],
  taken: readonly Piece[],
): { readonly piece: Piece; readonly contour: Contour; readonly gap: number } | undefined {
  return loose
    .filter((piece) => piece.colour === colour && !taken.includes(piece))
    .flatMap((piece) => [
      { piece, contour: piece.contour, gap: distance(end, startOf(piece.contour)) },
      { piece, contour: reverseContour(piece.contour), gap: distance(end, endOf(piece.contour)) },
    ])
    .reduce<{ piece: Piece; contour: Contour; gap: number } | undefined>(
      (best, one) => (best && best.gap <= one.gap ? best : one),
      undefined,
    );
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
