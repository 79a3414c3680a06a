// A picture as it is delivered: the drawing itself, and as pixels for whatever shows no drawings.
import { flatPicture } from '../../deliver/flat-picture.ts';
import type { NamedFile } from '../deliverables.ts';
import type { JobTools } from '../tools.ts';

/** Width of a picture made of pixels, px: some 230 to the inch over a whole page of paper. */
const widthPx = 1600;

/** `stem.svg`, and `stem.png` on white, so wide. The page of the job shows the same pixels: drawing them is most of a picture's time. */
export const pictureFiles = (
  stem: string,
  svg: string,
  { onWhite }: Pick<JobTools, 'onWhite'>,
  width = widthPx,
): NamedFile[] => [
  { file: `${stem}.svg`, role: 'picture', content: svg },
  { file: `${stem}.png`, role: 'picture', content: flatPicture(onWhite(svg, width)).png },
];
