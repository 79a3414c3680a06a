// Coats as typed on the command line: by thickness, or by what is poured, such as `12ml`.
import type { JobCoat } from '../job/typed/material.ts';
import type { FlagLengths } from './flag-lengths.ts';

/** Whether a text ends as a volume does. */
const isVolume = (text: string): boolean => /\d\s*(ml|cl|l)\s*$/i.test(text);

/** Coats under the film, in the order given; those that are neither a length nor a volume are left out, and told. */
export const coatsOfFlags = (texts: readonly string[], lengths: FlagLengths): readonly JobCoat[] =>
  texts.flatMap((text, i): JobCoat[] => {
    const coat = { name: `coat ${i + 1}`, over: false };
    if (!isVolume(text)) {
      const thickness = lengths.read('--coat', text);
      return thickness === undefined ? [] : [{ ...coat, thickness }];
    }
    const volume = lengths.readVolume('--coat', text);
    return volume === undefined ? [] : [{ ...coat, volume }];
  });

/** Thickness of all coats together, where no wall tells how thick a volume becomes; mm. */
export const thicknessOfFlags = (texts: readonly string[], lengths: FlagLengths): number =>
  texts.reduce((sum, text) => {
    if (isVolume(text))
      lengths.refuse('--coat', `"${text}" is a volume; give the coat's thickness here, such as 0.4 mm`);
    return sum + (isVolume(text) ? 0 : (lengths.read('--coat', text) ?? 0));
  }, 0);
