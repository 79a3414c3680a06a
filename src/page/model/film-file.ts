// The film of a job where a file has its figures: told, and typed into the job to go on from.
import { Refused } from '../../finding.ts';
import { parseJson } from '../../job/typed/read-json.ts';
import { readFilm } from '../../job/typed/read-material.ts';
import { formatLength, type Units } from '../../lengths/length.ts';
import { typedText } from '../../lengths/typed-text.ts';
import { type Bench, isObject, type Json, type JsonObject, valueAt } from './bench.ts';

const lengths = ['thickness', 'minWidth', 'minGap'] as const;
/** What a file says of itself. */
const ofFile: readonly string[] = ['name', 'source', 'sources', 'units'];

const unitsIn = ({ units }: JsonObject): Units => (units === 'in' ? 'in' : 'mm');

/** What reads what a maker gave; undefined where that can't be read: the engine says what is wrong with it. */
function readable<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (fault) {
    if (fault instanceof Refused) return undefined;
    throw fault;
  }
}

function parsed(bytes: Uint8Array | undefined, file: string): JsonObject | undefined {
  const content = bytes && readable(() => parseJson(typedText(bytes, file), file));
  return isObject(content) ? content : undefined;
}

/** The film as it is typed in the job, or in the file that the job names. */
export function filmOf({ job, files }: Bench): JsonObject | undefined {
  const film = valueAt(job, 'film');
  if (typeof film === 'string') return parsed(files[film], film);
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

/** The figures that a film of a file is reckoned with, in the words of the fields they would stand in; nothing where it is refused. */
export function filmInWords(content: JsonObject, units: Units): string | undefined {
  const film = readable(() => readFilm(content, 'film'));
  if (!film) return undefined;
  const length = (mm: number): string => formatLength(mm, units);
  const share = (label: string, of: number): string[] => (of === 0 ? [] : [`${label} ${of} of 1`]);
  const figures = [
    `film thickness ${length(film.thickness)}`,
    ...share('it stretches by', film.stretch),
    ...share('it gathers by', film.gather),
    `thinnest film ${length(film.minWidth)}`,
    `narrowest gap ${length(film.minGap)}`,
    `smallest piece ${film.minPiece} mm²`,
  ];
  const stays =
    film.use === 'mask'
      ? 'a mask: all around the artwork stays on the vessel, until it is pulled after the spray'
      : 'a decal: the artwork stays on the vessel';
  return `Its figures: ${[...figures, stays].join('; ')}.`;
}
