// What a winding seam leaves of motifs that is too small to hold, told to the maker.
import { type Finding, look, note } from '../../finding.ts';
import { inMm, smallArea } from '../../lengths/length.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import { type SideSliver, sideSlivers } from '../../pattern/seam/side-slivers.ts';
import type { Template } from '../../unroll/template.ts';
import type { MakeInput } from '../make-input.ts';
import { typedAt } from '../typed/typed-at.ts';

/** Findings `seam-sliver`, one for each end: a note where the other end shows the same art there, else for the maker's eye. */
export function seamSliverFindings(
  { job: { film, seam }, jobFile }: Pick<MakeInput, 'job' | 'jobFile'>,
  template: Template,
  layers: readonly WrapLayer[],
): Finding[] {
  // A mask's artwork is the film that goes: nothing of it has to hold.
  if (film.use === 'mask') return [];
  const found = layers.flatMap(({ shapes }) => sideSlivers(shapes, template, film));
  return (['start', 'finish'] as const).flatMap((side) => {
    const here = found.filter((sliver) => sliver.side === side);
    const smallest = here.reduce<SideSliver | undefined>(
      (least, one) => (least && least.area <= one.area ? least : one),
      undefined,
    );
    if (!smallest) return [];
    const isCovered = here.every(({ width }) => width <= seam.overlap);
    const what = `the winding seam leaves ${here.length === 1 ? 'one piece' : `${here.length} pieces`} at its ${side} smaller than this film holds (${film.minPiece} mm² or ${inMm(film.minWidth)} around), the smallest ${smallArea(smallest.area)}`;
    const says = isCovered
      ? `${what}; pull such a piece off with the waste: the other end shows the same art there`
      : `${what}; press such a piece down well, or pull it off and see the gap; with an overlap of ${inMm(Math.ceil(Math.max(...here.map(({ width }) => width))))} or more the other end would show the same art there`;
    const at = typedAt(jobFile, 'seam.style', smallest.at);
    const finding = isCovered ? note('seam-sliver', at, says) : look('seam-sliver', at, says);
    return [{ ...finding, times: here.length, size: smallest.area }];
  });
}
