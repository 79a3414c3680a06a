// A resolved job and blank written back in the words of their files, in mm, so that nothing else is needed later.
import type { Blank, Station } from '../../blank/blank.ts';
import { degrees } from '../../lengths/angle.ts';
import type { Job, Repeat } from './resolved-job.ts';

/** A blank as the content of a blank file. */
export const blankContent = ({ stations, ...blank }: Blank): object => ({
  name: blank.name,
  units: 'mm',
  stations: stationsContent(stations),
  footRound: blank.footRound,
  lipRound: blank.lipRound,
  wall: blank.wall,
  flatGap: blank.flatGap,
  ...(blank.handle ? { handle: blank.handle } : {}),
  reading: blank.reading,
  heightReading: blank.heightReading,
  tape: blank.tape,
  ...(blank.keepOuts ? { keepOut: blank.keepOuts } : {}),
  ...(blank.use ? { use: blank.use } : {}),
  ...(blank.lipZone === undefined ? {} : { lipZone: blank.lipZone }),
  ...(blank.source ? { source: blank.source } : {}),
  ...(blank.fits ? { fits: blank.fits.map(({ template: _, replaces: __, ...fit }) => fit) } : {}),
});

/** Stations as they were typed: readings that were one station are one again. */
function stationsContent(stations: readonly Station[]): readonly object[] {
  const typed: Station[][] = [];
  for (const station of stations) {
    const last = typed.at(-1);
    const isSame = station.typed && last?.[0]?.typed?.station === station.typed.station;
    if (last && isSame) last.push(station);
    else typed.push([station]);
  }
  return typed.map((group) => {
    const sizes = (kind: 'across' | 'girth') => {
      const read = group
        .filter(({ reading }) => reading.kind === kind)
        .flatMap(({ reading }) => reading.diameters ?? [reading.mm]);
      return read.length === 0 ? {} : { [kind]: read.length === 1 ? read[0] : read };
    };
    const { kind, mm, along } = group[0]?.position ?? { kind: 'height', mm: 0 };
    return { [kind]: mm, ...(along === undefined ? {} : { along }), ...sizes('across'), ...sizes('girth') };
  });
}

const repeatContent = (repeat: Repeat): object =>
  repeat.kind === 'lattice'
    ? { a: [repeat.a.x, repeat.a.y], b: [repeat.b.x, repeat.b.y] }
    : Object.fromEntries(Object.entries(repeat).filter(([key]) => key !== 'kind'));

/** A job as the content of a job file; `blankFile` and what `path` gives are as seen from where it will stand. */
export function jobContent(
  job: Job,
  blankFile: string,
  path: (file: string) => string = (file) => file,
): object {
  const { artwork, collars, sheet, panels, items, lettering, layers, mask, relief, stencil } = job;
  return {
    name: job.name,
    units: 'mm',
    blank: blankFile,
    ...(job.band ? { band: job.band } : {}),
    coats: job.coats,
    ...(job.shown ? { shown: job.shown } : {}),
    film: { ...job.film, minAngle: degrees(job.film.minAngle) },
    cutter: job.cutter,
    ...(job.printer ? { printer: job.printer } : {}),
    ...(artwork
      ? {
          artwork: {
            ...artwork,
            file: path(artwork.file),
            ...(artwork.over ? { over: artwork.over.map((one) => ({ ...one, file: path(one.file) })) } : {}),
            ...(artwork.fonts ? { fonts: artwork.fonts.map(path) } : {}),
            repeat: repeatContent(artwork.repeat),
          },
        }
      : {}),
    ...(lettering
      ? {
          lettering: lettering.map(({ font, ...rest }) => ({
            ...rest,
            ...(font === undefined ? {} : { font: path(font) }),
          })),
        }
      : {}),
    ...(items ? { items: items.map((item) => ({ ...item, file: path(item.file) })) } : {}),
    ...(layers ? { layers } : {}),
    ...(mask ? { mask } : {}),
    ...(relief ? { relief } : {}),
    ...(stencil ? { stencil } : {}),
    pieces: job.pieces,
    ...(job.gores === undefined ? {} : { gores: job.gores }),
    edges: job.edges,
    seam: job.seam,
    trim: job.trim,
    ...(collars ? { collars } : {}),
    ...(sheet ? { sheet } : {}),
    ...(panels ? { panels } : {}),
    ...(job.batch === undefined ? {} : { batch: job.batch }),
  };
}
