// The pictures of a job sheet, made once for the screen and for paper.
import { type FlatPicture, flatPicture, flatPictureIn, halfOf } from '../../deliver/flat-picture.ts';
import type { Page } from '../../deliver/write-page.ts';
import type { NamedFile } from '../deliverables.ts';
import type { JobTools } from '../tools.ts';

/** Widths of what is drawn for the page, px: of a picture over the whole of it, some 200 to the inch on paper; of those in rows. */
const widths = { whole: 1400, inRow: 800 } as const;

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
      // The pixels that are delivered beside a drawing do, whole or by half: drawing is most of a picture's time.
      const made = contentOf(file.replace(/svg$/, 'png'));
      if (made instanceof Uint8Array)
        return { file, ...(width === widths.whole ? flatPictureIn(made) : halfOf(made)) };
      return { file, ...flatPicture(onWhite(content, width)) };
    });
}
