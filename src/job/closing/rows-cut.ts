// Whole rows in the band whose motifs reach past their row all the same: told, with the ways out.
import { type Finding, note } from '../../finding.ts';
import type { Shape } from '../../geometry/contour.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import { toWall, wallBox } from '../../unroll/flat-wall.ts';
import type { Template } from '../../unroll/template.ts';
import type { Job } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';

/** Film that reaches this far past an edge on both sides is cut by it, mm. */
const reaches = 0.1;

/** How many pieces of film each edge of the band cuts; what goes on over both has no rows. */
function cutByEdges(shapes: readonly Shape[], { wall, band, seam }: Template) {
  const cut = { foot: 0, lip: 0 };
  for (const { contours } of shapes) {
    const places = (contours[0]?.segments ?? []).map(({ from }) => toWall(wall, from));
    const { minX, maxX, minY: low, maxY: high } = wallBox(places);
    const middle = (minX + maxX) / 2;
    // The run-off of the art past the seam is there twice.
    if (middle < seam.start.turn || middle >= seam.finish.turn) continue;
    const isCut = (edge: number): boolean => low < edge - reaches && high > edge + reaches;
    const [foot, lip] = [isCut(band.from), isCut(band.to)];
    if (foot && !lip) cut.foot += 1;
    if (lip && !foot) cut.lip += 1;
  }
  return cut;
}

interface LaidPiece {
  readonly layers: readonly Pick<WrapLayer, 'shapes'>[];
  readonly template: Template;
  /** Those of its edges that are finished ones. */
  readonly ends: readonly ('foot' | 'lip')[];
}

/** Finding `rows-cut` (note), one an edge, where a job asks for whole rows. */
export function rowsCutFindings(
  { edges }: Pick<Job, 'edges'>,
  jobFile: TypedIn,
  { layers, template, ends }: LaidPiece,
): Finding[] {
  if (edges !== 'whole-rows') return [];
  const cut = cutByEdges(
    layers.flatMap(({ shapes }) => shapes),
    template,
  );
  return ends.flatMap((end) => {
    const count = cut[end];
    if (count === 0) return [];
    const along = end === 'foot' ? template.band.from : template.band.to;
    const pieces = count === 1 ? 'one piece' : `${count} pieces`;
    const says = `rows fill the band, yet the ${end} edge cuts ${pieces} of film that reach from one row into the next; leave such motifs out with "fade", or give artwork whose motifs stand clear of its upper and lower border, laid without a drop`;
    return [{ ...note('rows-cut', typedAt(jobFile, 'edges', { along }), says), times: count }];
  });
}
