// Keys of the files in the words that stand beside the fields.
import { listAt } from '../model/bench.ts';
import { bench } from '../store.ts';

/** What a reading is called: by its place from the foot up. */
export function nameOfStation(index: number): string {
  const count = listAt(bench.value, 'blank', 'stations').length;
  if (index === 0) return 'Foot';
  return index === count - 1 ? 'Lip' : `Between, ${index}`;
}

const stationKey = /stations\[(\d+)\](?:\.(across|girth|height|along))?/g;

/** A sentence of the engine's with a reading's key told as the field is: `stations[0].across` as `Foot, across`. */
export const inPlainWords = (says: string): string =>
  says.replace(stationKey, (_, index: string, kind?: string) => {
    const name = nameOfStation(Number(index));
    return kind === undefined ? name : `${name}, ${kind}`;
  });
