// The handle on the guide: the half of it that stands beside either end of the piece, up to its middle at turn 0.
import type { Shape } from '../../geometry/contour.ts';
import { line, reverseContour } from '../../geometry/contour.ts';
import { edgePoint, levelLine, type SideEdge, type Template, turnOfEdge } from '../../unroll/template.ts';

/**
 * Both halves of a handle that takes so much of the girth, mm, in the sheet's own frame: at the left, then at the right.
 * A panel has only the half beside its own outer end, if any.
 */
export function handleHalves({ wall, piece, seam }: Template, spans: number): readonly Shape[] {
  const half = spans / 2;
  // Its side stands off turn 0 as the piece's own sides do, which lie further out by what is kept bare.
  const ends = [seam.start, seam.finish].filter(({ offset }) => offset !== 0);
  return ends.map(({ turn, offset }): Shape => {
    const side = { turn, offset: Math.sign(offset) * Math.min(half, Math.abs(offset)) };
    const middle = { turn, offset: 0 };
    const level = (along: number) =>
      levelLine(wall, along, turnOfEdge(wall, side, along), turnOfEdge(wall, middle, along)).segments;
    const upright = (edge: SideEdge, from: number, to: number) =>
      line(edgePoint(wall, edge, from), edgePoint(wall, edge, to));
    const lip = reverseContour({ closed: false, segments: level(piece.to) });
    return {
      contours: [
        {
          closed: true,
          segments: [
            ...level(piece.from),
            upright(middle, piece.from, piece.to),
            ...lip.segments,
            upright(side, piece.to, piece.from),
          ],
        },
      ],
    };
  });
}
