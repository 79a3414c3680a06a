// The picture of a piece's films in their order, from its written file.
import { readSvg } from '../../deliver/read-svg.ts';
import { layerStack } from '../../picture/layer-stack.ts';
import type { NamedFile, WrittenPiece } from '../deliverables.ts';
import type { JobTools } from '../tools.ts';
import type { Job } from '../typed/resolved-job.ts';
import { pictureFiles } from './picture-files.ts';

/** None where the job says nothing of layers, or the piece has only one. */
export function layerStackPictures(
  { name, layers: asked }: Pick<Job, 'name' | 'layers'>,
  piece: WrittenPiece | undefined,
  { words, ...tools }: Pick<JobTools, 'words' | 'onWhite'>,
): NamedFile[] {
  if (!asked || !piece) return [];
  const { groups } = readSvg(piece.cut, `${piece.stem}.cut.svg`);
  const art = groups.filter(({ role, paths }) => role === 'artwork' && paths.length > 0);
  if (art.length < 2) return [];
  const outlines = groups
    .filter(({ role }) => role === 'outline')
    .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));
  const layers = art.map(({ layer = '', colour = '#38434a', paths }) => ({
    name: layer,
    colour,
    shapes: paths,
  }));
  const picture = layerStack({ title: `${name}: films from the lowest up`, outlines, layers }, words);
  return pictureFiles('layers', picture, tools);
}
