// Reading typed values out of a parsed file: every problem at once, each with its file and key.
import { distance } from 'fastest-levenshtein';
import { type Finding, stop } from '../../finding.ts';
import type { Units } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';

/** Where a value stands, and where to report what is wrong with it. */
export interface Place {
  readonly file: string;
  /** As the maker would write it, such as `stations[1].across`; empty for the file's own object. */
  readonly key: string;
  /** The unit of bare numbers here. */
  readonly units: Units;
  readonly report: (finding: Finding) => void;
}

/** Gives the value in our terms; or reports at least one problem and gives undefined. */
export type Reader<T> = (value: unknown, place: Place) => T | undefined;

/** One key of a file: what it is called on screen, how it is read, and what holds when it is left out. */
export interface Key<T> {
  readonly label: string;
  readonly read: Reader<T>;
  /** The keys of the object that stands here, or of each in a list of them: for finding a key typed too far out. */
  readonly inside?: { readonly keys: Keys; readonly isList: boolean };
}
export interface RequiredKey<T> extends Key<T> {
  readonly required: true;
}
export interface StandardKey<T> extends Key<T> {
  /** What holds when the key is left out, mm where it is a length. */
  readonly standard: T;
}

export const required = <T>(label: string, read: Reader<T>): RequiredKey<T> => ({
  label,
  read,
  required: true,
});
export const optional = <T>(label: string, read: Reader<T>): Key<T> => ({ label, read });
export const standard = <T>(label: string, read: Reader<T>, value: NoInfer<T>): StandardKey<T> => ({
  label,
  read,
  standard: value,
});

/** A key at which an object with these keys stands, and one at which a list of them does. */
export const holding = <K extends Key<unknown>>(key: K, keys: Keys): K => ({
  ...key,
  inside: { keys, isList: false },
});
export const holdingList = <K extends Key<unknown>>(key: K, keys: Keys): K => ({
  ...key,
  inside: { keys, isList: true },
});

export type Keys = Readonly<Record<string, Key<unknown>>>;

/** What reading gives for each key: undefined only for one that is left out or was reported, and has no standard. */
export type Values<K extends Keys> = {
  readonly [N in keyof K]: K[N] extends StandardKey<infer T>
    ? T
    : K[N] extends Key<infer T>
      ? T | undefined
      : never;
};

/** The values of an object's keys; reports unknown keys, missing ones, and whatever is wrong with each value. */
export function readKeys<K extends Keys>(value: unknown, keys: K, place: Place): Values<K> | undefined {
  const given = readObject(value, keys, place);
  if (given === undefined) return undefined;
  const unknown = Object.keys(given).filter((name) => !Object.hasOwn(keys, name));
  if (unknown.length > mostUnknown)
    report(
      place,
      'unknown-key',
      `has ${unknown.length} unknown keys, the first ${shown(unknown[0])}; is this the file you meant?`,
    );
  else for (const name of unknown) reportUnknown(name, keys, place);
  const values = Object.entries(keys).map(([name, key]) => [name, readKey(given, name, key, place)]);
  // The entries are made from `keys` one for one, which the compiler cannot follow.
  return Object.fromEntries(values) as Values<K>;
}

function readKey(given: Given, name: string, key: Key<unknown>, place: Place): unknown {
  const fallback = 'standard' in key ? key.standard : undefined;
  if (Object.hasOwn(given, name)) return key.read(given[name], within(place, name)) ?? fallback;
  if ('required' in key)
    report(within(place, name), 'missing-key', `is missing; add ${shown(name)} (${key.label.toLowerCase()})`);
  return fallback;
}

export type Given = Readonly<Record<string, unknown>>;

/** How many keys a report names of an object that is not there. */
const namedKeys = 4;

/** The value as an object, unread; or a report, which names those of its keys that must be there, else the first. */
function readObject(value: unknown, keys: Keys, place: Place): Given | undefined {
  if (isObject(value)) return value;
  const names = Object.keys(keys);
  const needed = names.filter((name) => 'required' in (keys[name] ?? {}));
  const named = (needed.length > 0 ? needed : names).slice(0, namedKeys).map(shown);
  const which = needed.length > 0 ? '' : 'any of ';
  const says = `${shown(value)} will not do here; give an object, { ... }, with ${which}${named.join(', ')}`;
  return report(place, 'not-an-object', says);
}

export const isObject = (value: unknown): value is Given =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether a key was typed at all, whatever stands there. */
export const isTyped = (value: unknown, key: string): boolean => isObject(value) && Object.hasOwn(value, key);

/** Of more keys that are none of ours nobody looks for the nearest to each: it is another file. */
const mostUnknown = 40;

/** Longest key that is looked at, and told of: a longer one is none of ours. */
const longestKey = 60;

function reportUnknown(typed: string, keys: Keys, place: Place): void {
  const name = typed.slice(0, longestKey);
  const far = (known: string): number => distance(name.toLowerCase(), lastOf(known).toLowerCase());
  const own = nearestOf(Object.keys(keys), far);
  // A key of a part, typed outside it, must match well: parts have many keys, and a slip of a key here is likelier.
  const deeper = nearestOf(
    pathsInside(keys).filter((path) => far(path) <= name.length / 4),
    far,
  );
  const isOwn = deeper.length === 0 || far(own[0] ?? '') <= far(deeper[0] ?? '');
  const nearest = isOwn ? `here is ${shown(own[0])}` : `is ${deeper.map(shown).join(' or ')}`;
  report(within(place, name), 'unknown-key', `unknown key ${shown(name)}; the nearest known one ${nearest}`);
}

/** The known name that the fewest letters set apart from one typed; undefined where none is known. */
export const nearestTo = (name: string, known: readonly string[]): string | undefined =>
  nearestOf(known, (one) => distance(name.toLowerCase(), one.toLowerCase()))[0];

const lastOf = (path: string): string => path.slice(path.lastIndexOf('.') + 1);

/** The known names that the fewest typed letters set apart from this one, upper and lower case alike. */
function nearestOf(known: readonly string[], far: (name: string) => number): readonly string[] {
  const least = Math.min(...known.map(far));
  return known.filter((name) => far(name) === least);
}

/** Every key inside the objects that stand at these keys, such as `seam.overlap` or `coats[0].thickness`. */
const pathsInside = (keys: Keys): readonly string[] =>
  Object.entries(keys).flatMap(([name, { inside }]): string[] => {
    if (inside === undefined) return [];
    const start = inside.isList ? `${name}[0]` : name;
    return [...Object.keys(inside.keys), ...pathsInside(inside.keys)].map((path) => `${start}.${path}`);
  });

/** The place of a key, or of an item of a list, inside this one. */
export const within = (place: Place, part: string | number): Place => ({
  ...place,
  key: typeof part === 'number' ? `${place.key}[${part}]` : place.key === '' ? part : `${place.key}.${part}`,
});

/** Reports a problem at a place, and gives the undefined that stands for the value. */
export function report(place: Place, rule: string, says: string): undefined {
  const { file, key } = place;
  place.report(stop(rule, { ...(file === '' ? {} : { file }), ...(key === '' ? {} : { key }) }, says));
  return undefined;
}

/** Findings of the layers below put in their place: their file named, their key made one within this place. */
export const placed = (
  findings: readonly Finding[],
  { file, key }: Pick<Place, 'file' | 'key'>,
): readonly Finding[] =>
  findings.map((finding) => ({
    ...finding,
    where: {
      ...(file === '' ? {} : { file }),
      ...finding.where,
      ...(key === '' ? {} : { key: finding.where.key === undefined ? key : `${key}.${finding.where.key}` }),
    },
  }));
