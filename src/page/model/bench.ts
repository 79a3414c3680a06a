// What lies on the bench: a job and its blank as the maker typed them, in the contract's own words, and the files they name.
import type { Units } from '../../lengths/length.ts';

export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

/** The two files that fields write to. */
export type Half = 'job' | 'blank';

export interface Bench {
  /** Names of the two files, as they are saved. */
  readonly jobFile: string;
  readonly blankFile: string;
  /** What they hold, key by key. */
  readonly job: JsonObject;
  readonly blank: JsonObject;
  /** The other files the job names, by the name it gives them. */
  readonly files: Readonly<Record<string, Uint8Array>>;
  /** The unit a bare number is typed in, and that rulers show. */
  readonly units: Units;
}

/** A bench on which nothing was typed yet: two empty readings, foot and lip. */
export const emptyBench = (units: Units): Bench => ({
  jobFile: 'my.job.json',
  blankFile: 'my.blank.json',
  job: { name: 'my job', units, blank: 'my.blank.json' },
  blank: { name: 'my vessel', units, stations: [{ height: 0 }, {}] },
  files: {},
  units,
});

/** Whether nothing was typed yet but names and units; the foot's height is 0 from the start. */
export function isUntyped({ job, blank, units }: Bench): boolean {
  const empty = emptyBench(units);
  const given = (half: JsonObject, start: JsonObject) =>
    Object.keys(half).some((key) => !Object.hasOwn(start, key));
  if (given(job, empty.job) || given(blank, empty.blank)) return false;
  const { stations } = blank;
  return (
    Array.isArray(stations) &&
    stations.every((station: Json) =>
      Object.values(isObject(station) ? station : {}).every((value) => value === 0 || value === ''),
    )
  );
}

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** `stations[1].across` as the steps down to it. */
const stepsOf = (path: string): readonly (string | number)[] =>
  path
    .split(/[.[\]]/)
    .filter((step) => step !== '')
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step));

/** The value at a path such as `stations[1].across`; undefined where nothing stands there. */
export function valueAt(holder: Json | undefined, path: string): Json | undefined {
  let value: Json | undefined = holder;
  for (const step of stepsOf(path)) {
    if (Array.isArray(value) && typeof step === 'number') value = value[step];
    else if (isObject(value) && Object.hasOwn(value, step)) value = value[step];
    else return undefined;
  }
  return value;
}

/**
 * The same value with another at a path; `undefined` takes the key away, and with it every object around it that is
 * left empty. Places in a list are only replaced or added at its end.
 */
function withValue(holder: JsonObject, path: string, value: Json | undefined): JsonObject {
  const changed = changedAt(holder, stepsOf(path), value);
  return isObject(changed) ? changed : {};
}

function changedAt(
  holder: Json | undefined,
  [step, ...rest]: readonly (string | number)[],
  value: Json | undefined,
): Json | undefined {
  if (step === undefined) return value;
  if (typeof step === 'number') {
    const items = Array.isArray(holder) ? [...holder] : [];
    items[step] = changedAt(items[step], rest, value) ?? {};
    return items;
  }
  const object = isObject(holder) ? holder : {};
  const next = changedAt(object[step], rest, value);
  if (next !== undefined) return { ...object, [step]: next };
  const { [step]: _, ...without } = object;
  return Object.keys(without).length === 0 ? undefined : without;
}

/** The bench with one value of the job or the blank changed. */
export const withField = (bench: Bench, half: Half, path: string, value: Json | undefined): Bench => ({
  ...bench,
  [half]: withValue(bench[half], path, value),
});

/** The list at a path of the job or the blank; empty where there is none. */
export function listAt(bench: Bench, half: Half, path: string): readonly Json[] {
  const value = valueAt(bench[half], path);
  return Array.isArray(value) ? value : [];
}

/** The bench with an item taken out of a list; a list that is left empty goes too. */
export function withoutItem(bench: Bench, half: Half, path: string, index: number): Bench {
  const left = listAt(bench, half, path).filter((_, i) => i !== index);
  return withField(bench, half, path, left.length > 0 ? left : undefined);
}

/** The bench with an item put into a list, at its end where no place is named. */
export function withItem(bench: Bench, half: Half, path: string, item: Json, at?: number): Bench {
  const items = [...listAt(bench, half, path)];
  items.splice(at ?? items.length, 0, item);
  return withField(bench, half, path, items);
}

/**
 * The bench with a file the job names, and the key that names it set. Where something else of the job has another file of that name, from
 * another folder, this one is given a name of its own.
 */
export function withFile(bench: Bench, path: string, name: string, bytes: Uint8Array): Bench {
  const others = filesInUse(withField(bench, 'job', path, undefined));
  const own = nameBeside(others, name, bytes);
  return { ...withField(bench, 'job', path, own), files: { ...bench.files, [own]: bytes } };
}

/** The name, with a number where a file of other bytes has it: `tern-2.svg`. */
function nameBeside(others: Readonly<Record<string, Uint8Array>>, name: string, bytes: Uint8Array): string {
  const [, stem = name, ending = ''] = /^(.*?)((?:\.[a-z]+)+)$/i.exec(name) ?? [];
  let own = name;
  for (let next = 2; Object.hasOwn(others, own) && !isSame(others[own], bytes); next++)
    own = `${stem}-${next}${ending}`;
  return own;
}

const isSame = (a: Uint8Array | undefined, b: Uint8Array): boolean =>
  a === b || (a?.length === b.length && a.every((byte, i) => byte === b[i]));

/** The files the job still names; undo keeps those it named before. */
export function filesInUse({ job, files }: Bench): Readonly<Record<string, Uint8Array>> {
  const named = new Set<string>();
  const collect = (value: Json): void => {
    if (typeof value === 'string') named.add(value);
    else if (Array.isArray(value)) value.forEach(collect);
    else if (isObject(value)) Object.values(value).forEach(collect);
  };
  collect(job);
  return Object.fromEntries(Object.entries(files).filter(([name]) => named.has(name)));
}
