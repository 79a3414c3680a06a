// The files of a job whose artwork was mended: the tile as it is laid, and its picture over what it was.
import { writeArt } from '../deliver/write-art.ts';
import type { Units } from '../lengths/length.ts';
import type { Drawn } from './artwork/drawn.ts';
import type { NamedFile } from './deliverables.ts';
import { mendPicture } from './inspect/mend-picture.ts';
import { pictureFiles } from './pictures/picture-files.ts';
import type { JobTools } from './tools.ts';

/** None where nothing was to be mended. */
export function mendedFiles(
  drawn: Pick<Drawn, 'artwork' | 'plan' | 'mended'> | undefined,
  units: Units,
  { words, ...tools }: JobTools,
): NamedFile[] {
  if (!drawn?.mended) return [];
  const { mended, artwork, plan } = drawn;
  const { width, height } = plan.tile;
  const title = `${artwork.file}, mended`;
  const picture = mendPicture({ ...mended, title, width, height, units }, words);
  return [
    {
      file: 'mended.svg',
      role: 'artwork',
      content: writeArt({ width, height, layers: mended.after }, title),
    },
    ...pictureFiles('mended-picture', picture, tools),
  ];
}
