// Film that gives when it is pulled around, or shrinks after: what its test strip says of the length it is cut to.
import { inMm } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import type { Film } from './material.ts';
import { type Reader, readKeys, report, required, standard, within } from './schema.ts';
import { length } from './schema-values.ts';

/** Between the marks of the test strip as it is cut, mm. */
export const stripLength = 200;

/** Film that gives more than this is no film that could be laid to a pattern. Common practice, no source. */
const mostGiving = 0.05;

export const givingKeys = {
  drawn: standard('Marks apart as drawn', length(), stripLength),
  laid: required('Marks apart once laid', length()),
};

/** `measured` of a film: how far the marks of its strip are apart once it is laid. */
export const readGiving: Reader<NonNullable<Film['measured']>> = (value, place) => {
  const read = readKeys(value, givingKeys, place);
  if (read?.laid === undefined) return undefined;
  const { drawn, laid } = read;
  if (Math.abs(laid / drawn - 1) <= mostGiving) return { drawn, laid };
  return report(
    within(place, 'laid'),
    'measured-far-off',
    `${shown(laid)} for ${inMm(drawn)} drawn is more than ${100 * mostGiving} % off, which no film gives in laying; measure from mark to mark along the strip as it lies`,
  );
};

/** How long film is cut around for a mm of the wall: less than 1 where it gives, more where it shrinks. */
export const shareCut = ({ measured }: Pick<Film, 'measured'>): number =>
  measured ? measured.drawn / measured.laid : 1;

/** What is done for it, in words; nothing where the film stays as it is. */
export function givingInWords(film: Pick<Film, 'measured'>): string | undefined {
  const percent = 100 * (shareCut(film) - 1);
  if (Math.abs(percent) < 1e-4) return undefined;
  const [how, why] =
    percent < 0 ? ['shorter', 'gives when it is laid'] : ['longer', 'shrinks once it is laid'];
  return `it is cut ${Math.abs(percent).toFixed(2)} % ${how} around than the wall, for this film ${why}, as its strip told`;
}
