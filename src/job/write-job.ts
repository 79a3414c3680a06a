// A resolved job and blank written back in the words of their files, in mm, so that nothing else is needed later.
import type { Blank } from '../blank/blank.ts';
import type { Job, Repeat } from './resolved-job.ts';

/** A blank as the content of a blank file. */
export const blankContent = ({ stations, ...blank }: Blank): object => ({
  name: blank.name,
  units: 'mm',
  stations: stations.map(({ position, reading }) => ({
    [position.kind]: position.mm,
    [reading.kind]: reading.mm,
  })),
  footRound: blank.footRound,
  lipRound: blank.lipRound,
  wall: blank.wall,
  ...(blank.handle ? { handle: blank.handle } : {}),
  reading: blank.reading,
  heightReading: blank.heightReading,
  tape: blank.tape,
});

const repeatContent = (repeat: Repeat): object =>
  repeat.kind === 'lattice'
    ? { a: [repeat.a.x, repeat.a.y], b: [repeat.b.x, repeat.b.y] }
    : Object.fromEntries(Object.entries(repeat).filter(([key]) => key !== 'kind'));

/** A job as the content of a job file; `blankFile` and `artworkFile` are paths as seen from where it will stand. */
export function jobContent(job: Job, blankFile: string, artworkFile: string | undefined): object {
  const { artwork, sheet } = job;
  return {
    name: job.name,
    units: 'mm',
    blank: blankFile,
    ...(job.band ? { band: job.band } : {}),
    coats: job.coats,
    film: job.film,
    ...(artwork
      ? { artwork: { ...artwork, file: artworkFile ?? artwork.file, repeat: repeatContent(artwork.repeat) } }
      : {}),
    edges: job.edges,
    seam: job.seam,
    trim: job.trim,
    ...(sheet ? { sheet } : {}),
  };
}
