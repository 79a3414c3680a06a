// The pictures of a job sheet, made once for the screen and for paper.
import { type FlatPicture, flatPicture, flatPictureIn } from '../../deliver/flat-picture.ts';
import type { Page } from '../../deliver/write-page.ts';
import type { NamedFile } from '../deliverables.ts';
import type { JobTools } from '../tools.ts';

/** Widths, px: of one over the whole page, some 200 to the inch on paper; of those that stand in rows. */
const widths = { whole: 1400, inRow: 850 } as const;

/** More pictures than this are not looked at on a sheet: a batch of hundreds has its files for that. */
const mostPictures = 16;

export interface SheetPicture extends FlatPicture {
  readonly file: string;
}

/** The pictures that a page shows of these files, each once. */
export function pagePictures(
  { sections }: Page,
  files: readonly NamedFile[],
  { onWhite }: Pick<JobTools, 'onWhite'>,
): readonly SheetPicture[] {
  const wanted = sections
    .flatMap(({ blocks }) => blocks)
    .flatMap((block): { readonly file: string; readonly width: number }[] => {
      if (block.kind === 'picture') return [{ file: block.file, width: widths.whole }];
      return block.kind === 'pictures' ? block.items.map(({ file }) => ({ file, width: widths.inRow })) : [];
    });
  const contentOf = (file: string) => files.find((one) => one.file === file)?.content;
  return wanted
    .flatMap(({ file, width }) => {
      const content = contentOf(file);
      return typeof content === 'string' ? [{ file, width, content }] : [];
    })
    .slice(0, mostPictures)
    .map(({ file, width, content }) => {
      // Over the whole page the pixels that are delivered beside the drawing do: they are made once.
      const made = width === widths.whole ? contentOf(file.replace(/svg$/, 'png')) : undefined;
      const picture = made instanceof Uint8Array ? flatPictureIn(made) : flatPicture(onWhite(content, width));
      return { file, ...picture };
    });
}
