// How motifs that are cut apart are laid, on the job sheet.
import type { Blank } from '../../blank/blank.ts';
import type { Section } from '../../deliver/write-page.ts';
import { backingOff, carrierOff } from './laying-words.ts';
import { lineAtSeam } from './motif-places.ts';
import type { MotifReport } from './motif-report.ts';

/** Nothing where none is cut apart. Common practice, no source. */
export function layingSection(
  motifs: readonly Pick<MotifReport, 'name' | 'apart' | 'layers'>[],
  blank: Pick<Blank, 'handle'>,
): Section[] {
  const first = motifs.find(({ apart }) => apart);
  return first
    ? [
        {
          heading: 'Laying the motifs',
          blocks: [
            {
              kind: 'ticks',
              items: [
                `make --print gives each a paper template, such as ${first.name}.place.print.pdf: held by the foot or the lip and by the seam or the handle, its window is where the film goes (none where it would lie flat on no stretch of the wall)`,
                `or wrap a collar at each level line, and mark the plumb line on it, measured along its edge from ${lineAtSeam(blank)}`,
                `hold the film on its carrier to both lines of its guide, and only then ${backingOff}`,
                ...(motifs.some(({ apart, layers }) => apart && layers.length > 1)
                  ? [
                      'of one in several films lay the lowest first, in the order of its guide; its pieces of film are alike, so that the edges of each fall on those of the one before',
                    ]
                  : []),
                `lay it from its middle outwards, then ${carrierOff}`,
              ],
            },
          ],
        },
      ]
    : [];
}
