// The film of a job where a file has its figures: told, and typed into the job to go on from.
import { formatLength, parseLength, type Units } from '../../lengths/length.ts';
import { type Bench, isObject, type Json, type JsonObject, valueAt } from './bench.ts';

const lengths = ['thickness', 'minWidth', 'minGap'] as const;
/** What a file says of itself. */
const ofFile: readonly string[] = ['name', 'source', 'sources', 'units'];

const unitsIn = ({ units }: JsonObject): Units => (units === 'in' ? 'in' : 'mm');

function parsed(bytes: Uint8Array | undefined): JsonObject | undefined {
  if (!bytes) return undefined;
  try {
    const content = JSON.parse(new TextDecoder().decode(bytes)) as Json;
    return isObject(content) ? content : undefined;
  } catch {
    // The engine says what is wrong with the file.
    return undefined;
  }
}

/** The film as it is typed in the job, or in the file that the job names. */
export function filmOf({ job, files }: Bench): JsonObject | undefined {
  const film = valueAt(job, 'film');
  if (typeof film === 'string') return parsed(files[film]);
  return isObject(film) ? film : undefined;
}

/** The film of a file as it stands in a job: its figures alone, each length with its unit. */
export function filmTyped(film: JsonObject): JsonObject {
  const kept = Object.entries(film).filter(([key]) => !ofFile.includes(key));
  const withUnit = (key: string, value: Json): Json =>
    typeof value === 'number' && lengths.some((length) => length === key)
      ? `${value}${unitsIn(film)}`
      : value;
  return Object.fromEntries(kept.map(([key, value]) => [key, withUnit(key, value)]));
}

/** The figures of a film's file, in the words of the fields they would stand in. */
export function filmInWords(film: JsonObject, units: Units): string {
  const length = (key: (typeof lengths)[number], label: string): string[] => {
    const typed = film[key];
    if (typeof typed !== 'number' && typeof typed !== 'string') return [];
    const read = parseLength(typed, { units: unitsIn(film), bare: 'text-too', sign: 'any' });
    return read.ok ? [`${label} ${formatLength(read.mm, units)}`] : [];
  };
  const number = (key: string, label: string, unit: string): string[] =>
    typeof film[key] === 'number' ? [`${label} ${film[key]} ${unit}`] : [];
  const figures = [
    ...length('thickness', 'film thickness'),
    ...number('stretch', 'it stretches by', 'of 1'),
    ...length('minWidth', 'thinnest film'),
    ...length('minGap', 'narrowest gap'),
    ...number('minPiece', 'smallest piece', 'mm²'),
  ];
  const stays =
    film.use === 'mask'
      ? 'a mask: all around the artwork stays on the vessel, until it is pulled after the spray'
      : 'a decal: the artwork stays on the vessel';
  return `Its file has: ${[...figures, stays].join('; ')}.`;
}
