// Which layers of the flat drawing are sprayed, and in what: as the vessel's colours say, for both views show one job.
import { valueAt } from '../model/bench.ts';
import { bench, flatLaid } from '../store.ts';
import { coloursOf, looks, mannerOf } from '../vessel/looks.ts';
import type { Spray } from './spray-ink.ts';

/** Under this name what is hidden has them. */
export const sprayKey = 'spray';

/** Whether colour comes onto the vessel through a mask. */
export const isSprayed = (): boolean =>
  mannerOf(looks.value, valueAt(bench.value.job, 'film.use') === 'mask' ? 'mask' : 'decal') === 'mask';

/** By layers' names; none where they are not to be seen. They are blended from the foot end of all pieces to their lip end. */
export function spraysShown(hidden: ReadonlySet<string>): ReadonlyMap<string, Spray> {
  if (hidden.has(sprayKey) || !isSprayed()) return new Map();
  const pieces = flatLaid.value?.view.pieces ?? [];
  const bands = pieces.flatMap(({ place }) => (place ? [place.band] : []));
  const over = {
    from: Math.min(...bands.map(({ from }) => from)),
    to: Math.max(...bands.map(({ to }) => to)),
  };
  const layers = pieces.flatMap(({ groups }) => groups).filter(({ role }) => role === 'artwork');
  return new Map(
    layers.flatMap(({ layer: name, colour }) =>
      name === undefined ? [] : [[name, { colours: coloursOf(looks.value, { name, colour }), over }]],
    ),
  );
}
