// What to take care of at the bench, on the job sheet.
import type { Blank } from '../../blank/blank.ts';
import { lipZoneStart } from '../../blank/lip-zone.ts';
import { wallLength } from '../../blank/wall.ts';
import type { Section } from '../../deliver/write-page.ts';
import { inMm } from '../../lengths/length.ts';
import type { Ground } from '../plan/plan.ts';
import { seamCautions } from '../plan/seam.ts';
import type { Job } from '../typed/resolved-job.ts';

/** Never called a mask: beside film that is one it would be taken for that. */
const respirator = "the respirator that the product's own sheet names";

export const sprayedSafely = `outdoors or in an extracted booth, with ${respirator}`;

export interface CautionsInput {
  readonly job: Pick<Job, 'seam' | 'film' | 'mask'>;
  readonly blank: Blank;
  readonly ground: Pick<Ground, 'wall' | 'coats'>;
}

/** Of a vessel that is drunk from. */
function lipCautions(blank: Blank, length: number): readonly string[] {
  if (blank.use === 'other') return [];
  const from = lipZoneStart(blank, length);
  const zone = from === undefined ? '' : `the lip zone (${inMm(length - from)} below the rim) or `;
  return [`not for ${zone}the inside unless the coating is certified for food contact`];
}

/** Cautions of the trade; the product's own sheet goes before them. Common practice, no source. */
export function cautionsSection({ ground, blank, job: { seam, film, mask } }: CautionsInput): Section {
  const hasCoats = ground.coats.coats.length > 0;
  const isSprayed = hasCoats || film.use === 'mask' || mask !== undefined;
  return {
    heading: 'Take care',
    blocks: [
      {
        kind: 'caution',
        items: [
          'blades: a fresh one, cut away from the hand that holds, cap it when you put it down; never press so hard that the vessel is scratched',
          ...(blank.handle ? [] : seamCautions(seam)),
          'cleaning with solvent: fresh air, gloves that suit it, no flame and no spark; soaked rags dry flat outdoors, not in a heap',
          ...(hasCoats
            ? [
                `resins and clear coats irritate and can sensitise skin and lungs until cured: gloves, eye cover, fresh air or ${respirator}; a turning spindle catches sleeves and hair`,
                "mix by the product's own ratio and weigh it; a large mixed amount can grow hot by itself",
              ]
            : []),
          ...(isSprayed ? [`spraying: ${sprayedSafely}`] : []),
          ...lipCautions(blank, wallLength(ground.wall)),
          "this sheet does not replace a product's own data sheet, local rules, or licensed practice where the law asks for it",
        ],
      },
    ],
  };
}
