// Sentences with lengths in mm, told in the maker's unit.
import type { Units } from './length.ts';

/** What is quoted stands as it was typed or drawn: a key, a name, a way. */
const quoted = /"[^"]*"/;

/**
 * Lengths as the engine writes them, `6 mm`, and those that share their unit: `54.6, 145.7 mm`, `300 by 600 mm`. Not those of
 * areas (`4 mm²`), of a file's name (`kelp 30 mm.svg`), nor what is told in both units already (`25 mm and 1 in`, `0.25 mm (0.0098 in)`). A turn and
 * a length along stand side by side, `turn 0.072, 15.6 mm along`, and only the second is a length.
 */
const lengths =
  /(?<!turn |[\w.])-?\d+(?:\.\d+)?(?:(?:, | x | by | to )-?\d+(?:\.\d+)?)* mm(?![²³\w]|\.\w| and 1 in\b| \([\d.]+ in\))/;

/** Areas of film; those in mm² are a film's own figures, and stand as its key has them. */
const area = /\d+(?:\.\d+)? cm²/;

/** How far a blade goes. */
const way = /\d+(?:\.\d+)? m of cutting/;

const quotedOrLengths = new RegExp([quoted, lengths, area, way].map(({ source }) => source).join('|'), 'g');

/** A sentence of the engine's with its lengths in `units`; inches to 0.001, what is thinner than 1 mm to 0.0001. */
export const toldIn = (says: string, units: Units): string =>
  units === 'mm' ? says : says.replace(quotedOrLengths, foundInInches);

function foundInInches(found: string): string {
  if (found.startsWith('"')) return found;
  if (found.endsWith('cm²')) return `${inSquareInches(found.slice(0, -' cm²'.length))} in²`;
  if (found.endsWith(' of cutting')) return `${(Number.parseFloat(found) / 0.3048).toFixed(1)} ft of cutting`;
  return `${found.slice(0, -' mm'.length).replace(/-?\d+(?:\.\d+)?/g, (mm) => inInches(mm))} in`;
}

/** A number of mm as it is written, in inches: a digit more than it has, and never fewer than a maker can tell. */
function inInches(mm: string): string {
  const told = mm.split('.')[1]?.length ?? 0;
  const least = Math.abs(Number(mm)) < 1 ? 4 : 3;
  return String(Number((Number(mm) / 25.4).toFixed(Math.max(least, told > 2 ? told + 1 : 0))));
}

/** A number of cm² as it is written, in square inches, to three figures or the whole inch. */
function inSquareInches(cm: string): string {
  const inches = Number(cm) / 2.54 ** 2;
  return String(inches < 1000 ? Number(inches.toPrecision(3)) : Math.round(inches));
}
