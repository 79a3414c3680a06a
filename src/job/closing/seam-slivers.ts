// What a seam leaves of motifs that is too small to hold, told to the maker.
import { type Finding, look, note } from '../../finding.ts';
import { inMm, smallArea } from '../../lengths/length.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import { type SideSliver, sideSlivers } from '../../pattern/seam/side-slivers.ts';
import type { Template } from '../../unroll/template.ts';
import type { MakeInput } from '../make-input.ts';
import { topOf } from '../plan/seam.ts';
import { typedAt } from '../typed/typed-at.ts';

type SeamInput = Pick<MakeInput, 'job' | 'jobFile' | 'blank'>;
type Side = SideSliver['side'];

/**
 * Findings `seam-sliver`, one for each end that is seen: a note where the other end shows the same art there, else for the maker's eye.
 * `piece`: which of several it is, from the foot up.
 */
export function seamSliverFindings(
  input: SeamInput,
  template: Template,
  layers: readonly WrapLayer[],
  piece?: number,
): Finding[] {
  const { job } = input;
  // A mask's artwork is the film that goes: nothing of it has to hold.
  if (job.film.use === 'mask') return [];
  const ends = seenEnds(input);
  if (ends.length === 0) return [];
  const found = layers.flatMap(({ shapes }) => sideSlivers(shapes, asCut(input, template), job.film));
  return ends.flatMap((side) =>
    endFindings(
      input,
      side,
      found.filter((sliver) => sliver.side === side),
      piece,
    ),
  );
}

/** The ends whose edges are seen on the vessel: a cover strip hides both, and of an overlap one lies under the other. */
function seenEnds(input: SeamInput): readonly Side[] {
  const { strip } = input.job.seam;
  if (strip !== undefined && !input.blank.handle) return [];
  const { top } = topOf(input);
  return top === undefined ? ['start', 'finish'] : [top];
}

/** The piece as it ends on the vessel: what is cut through there ends at the seam. */
const asCut = ({ job, blank }: SeamInput, template: Template): Template =>
  job.seam.style === 'cut-through' && !blank.handle
    ? { ...template, left: template.seam.start, right: template.seam.finish }
    : template;

/** How much of an overlap is left beside an edge that is seen, mm: there the other end shows the same art. */
const shownBelow = ({ job: { seam }, blank }: SeamInput): number =>
  blank.handle || seam.style === 'cut-through' ? 0 : seam.overlap;

const cutName = ({ job: { seam }, blank }: SeamInput): string => {
  if (blank.handle) return 'the cut by the handle';
  return seam.style === 'winding' ? 'the winding seam' : 'the seam';
};

function endFindings(
  input: SeamInput,
  side: Side,
  slivers: readonly SideSliver[],
  piece: number | undefined,
): Finding[] {
  const smallest = slivers.reduce<SideSliver | undefined>(
    (least, one) => (least && least.area <= one.area ? least : one),
    undefined,
  );
  if (!smallest) return [];
  const { film, seam } = input.job;
  const widest = Math.max(...slivers.map(({ width }) => width));
  const isCovered = widest <= shownBelow(input);
  const count = slivers.length === 1 ? 'one piece' : `${slivers.length} pieces`;
  const what = `${cutName(input)}${piece === undefined ? '' : ` of piece ${piece} from the foot`} leaves ${count} at the ${side} smaller than this film holds (${film.minPiece} mm² or ${inMm(film.minWidth)} around), ${slivers.length === 1 ? 'of' : 'the smallest'} ${smallArea(smallest.area)} and ${inMm(smallest.width)} around`;
  const overlap = input.blank.handle
    ? ''
    : `; with an overlap of ${inMm(Math.ceil(widest))} or more the other end would show the same art there`;
  const says = isCovered
    ? `${what}; pull such a piece off with the waste: the other end shows the same art there`
    : `${what}; press such a piece down well, or pull it off and see the gap${overlap}`;
  const at = typedAt(input.jobFile, seam.style === 'winding' ? 'seam.style' : 'seam', smallest.at);
  const finding = isCovered ? note('seam-sliver', at, says) : look('seam-sliver', at, says);
  return [{ ...finding, times: slivers.length, size: smallest.area }];
}
