// Which layers of the flat drawing are sprayed, and in what: as the vessel's colours say, for both views show one job.
import type { FlatPiece } from '../../job/view/flat-view.ts';
import { filmOf } from '../model/film-file.ts';
import { bench, flatLaid } from '../store.ts';
import { coloursOf, looks, mannerOf, maskNames } from '../vessel/looks.ts';
import type { Spray } from './spray-ink.ts';

/** Under this name what is hidden has them. */
export const sprayKey = 'spray';

/** Whether colour comes onto the vessel through the film. */
const isThroughFilm = (): boolean =>
  mannerOf(looks.value, filmOf(bench.value)?.use === 'mask' ? 'mask' : 'decal') === 'mask';

const pieces = (): readonly FlatPiece[] => flatLaid.value?.view.pieces ?? [];

/** Whether anything is sprayed: through the film, or past a mask of the job's own. */
export const isSprayed = (): boolean => isThroughFilm() || pieces().some(({ around }) => around);

/** From where to where up the wall sprays are blended: from the foot end of all pieces to their lip end. */
function blendedOver(): Spray['over'] {
  const bands = pieces().flatMap(({ place }) => (place ? [place.band] : []));
  return {
    from: Math.min(...bands.map(({ from }) => from)),
    to: Math.max(...bands.map(({ to }) => to)),
  };
}

/** What is sprayed past the job's own mask; undefined where there is none, or where it is not to be seen. */
export function sprayAround(hidden: ReadonlySet<string>): Spray | undefined {
  const colour = pieces().find(({ around }) => around)?.around?.sprayed;
  if (colour === undefined || hidden.has(sprayKey)) return undefined;
  return { colours: coloursOf(looks.value, { name: maskNames.spray, colour }), over: blendedOver() };
}

/** By layers' names; none where they are not to be seen. */
export function spraysShown(hidden: ReadonlySet<string>): ReadonlyMap<string, Spray> {
  if (hidden.has(sprayKey) || !isThroughFilm()) return new Map();
  const over = blendedOver();
  const layers = pieces()
    .flatMap(({ groups }) => groups)
    .filter(({ role }) => role === 'artwork');
  return new Map(
    layers.flatMap(({ layer: name, colour }) =>
      name === undefined ? [] : [[name, { colours: coloursOf(looks.value, { name, colour }), over }]],
    ),
  );
}
