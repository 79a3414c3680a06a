// The pictures of weeding: one a cut file, with all its layers.
import { weedingRates } from '../../cut/films/weeding.ts';
import { weedingMap } from '../../picture/weeding-map.ts';
import { type FilmsOfFile, timeInWords } from '../blade/weeding.ts';
import type { NamedFile } from '../deliverables.ts';
import type { JobTools } from '../tools.ts';
import { pictureFiles } from './picture-files.ts';

export function weedingPictures(
  films: FilmsOfFile,
  name: string,
  { words, ...tools }: Pick<JobTools, 'words' | 'onWhite'>,
): NamedFile[] {
  return [...new Set(films.map(({ stem }) => stem))].flatMap((stem) => {
    const own = films.filter((one) => one.stem === stem);
    const [first] = own;
    if (!first) return [];
    const { outlines } = first;
    const seconds = own.reduce((sum, { film }) => sum + film.seconds, 0);
    const picture = weedingMap(
      {
        title: `${name}, ${stem}: where it is hard to weed`,
        outlines,
        relief: first.relief,
        layers: own.map(({ colour = '#38434a', film }) => ({ colour, shapes: film.stays })),
        edges: own.flatMap(({ film }) => weedingRates(film)),
        notes: [`About ${timeInWords(seconds)} of weeding; painted film stays, bare film is weeded.`],
      },
      words,
    );
    const file = stem === 'wrap' ? 'weeding' : `weeding-${stem}`;
    return pictureFiles(file, picture, tools);
  });
}
