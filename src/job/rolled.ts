// The picture of the finished vessel, from the written files.

import type { Blank } from '../blank/blank.ts';
import { readSvg } from '../deliver/read-svg.ts';
import type { DrawWords } from '../drawing/words.ts';
import { rolledPicture } from '../picture/rolled.ts';
import { wallRings } from '../picture/rolled-rings.ts';
import { originOf } from '../prove/locate.ts';
import type { Written } from './deliverables.ts';
import type { Draft } from './draft.ts';

/** The text of rolled.svg: four views of the vessel with the sheet of the written cut file around it. */
export function rolledOf({ plan, job }: Draft, blank: Blank, written: Written, words: DrawWords): string {
  const { wall, template, build } = plan;
  const origin = originOf(readSvg(written.guide, 'wrap.guide.svg', ['seam']), template, 'wrap.guide.svg');
  const { footRound, lipRound, handle } = blank;
  return rolledPicture(
    readSvg(written.cut, 'wrap.cut.svg'),
    {
      origin,
      wall: template.wall,
      // The sheet is drawn at its mid-thickness, on top of the coats, as it was sized.
      profile: wallRings(wall, build.coats + build.film / 2),
      band: template.band,
      seam: template.seam,
      // What is cut through ends up edge to edge.
      overlap: job.seam.style === 'cut-through' ? 0 : template.overlap,
      ...(job.seam.strip === undefined || handle ? {} : { strip: job.seam.strip }),
      footRound,
      lipRound,
      ...(handle ? { handleSpan: handle.spans } : {}),
    },
    words,
  );
}
