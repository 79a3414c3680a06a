// Sentences of the engine in the words of the page: it speaks of keys and their values, as files and commands have them.
import { type FieldWords, fieldWords, listWords } from './field-words.ts';

/** What a reading is called by its place from the foot up. */
export type StationName = (index: number) => string;

const withoutPlaces = (key: string): string => key.replace(/\[\d+\]/g, '[]');

/** The words of a field by its key; undefined where the page has no such field. */
const wordsOf = (key: string): FieldWords | undefined => {
  const plain = withoutPlaces(key);
  return Object.hasOwn(fieldWords, plain) ? fieldWords[plain] : undefined;
};

/** A key as the page calls its field, such as `Foot, Girth` or `Text 1, Capitals`; undefined where it has none. */
export function fieldName(key: string, station: StationName): string | undefined {
  const [, list, index, rest = ''] = /^(.*?)\[(\d+)\]\.?(.*)$/.exec(key) ?? [];
  if (list === undefined) return wordsOf(key)?.label;
  const one =
    list === 'stations'
      ? station(Number(index))
      : Object.hasOwn(listWords, list)
        ? `${listWords[list]} ${Number(index) + 1}`
        : undefined;
  if (one === undefined || rest === '') return one;
  const label = wordsOf(key)?.label;
  return label && `${one}, ${label}`;
}

/** The key that a name stands for in a sentence about another key: one within it, beside it, or of the file. */
function keyOf(name: string, about: string): string | undefined {
  for (let around = about; ; around = around.replace(/[.[][^.[]*$/, '')) {
    const key = around === '' ? name : `${around}.${name}`;
    if (wordsOf(key)) return key;
    if (!/[.[]/.test(around)) break;
  }
  if (wordsOf(name)) return name;
  const called = Object.keys(fieldWords).filter((key) => key.endsWith(`.${name}`));
  return called.length === 1 ? called[0] : undefined;
}

const valueIn = (words: FieldWords | undefined, value: string): string | undefined =>
  words?.values && Object.hasOwn(words.values, value) ? words.values[value] : undefined;

/** Keys as they stand in a sentence by themselves: `lettering[0].capHeight`, `film.minWidth`; and what is in quotes, which stays. */
const bareKey = /"[^"]*"|(?<![\w/"])[a-zA-Z]+(?:\[\d+\])?(?:\.[a-zA-Z]+(?:\[\d+\])?)*(?![\w"])/g;
/** A key with its value. */
const pair = /"([a-zA-Z.]+)": ("[^"]*"|\[[^\]]*\]|true|false|-?[\d.]+)/g;
/** An object, with its key or without: what is in it says all. */
const holder = /(?:"[a-zA-Z.]+": )?\{ ([^{}]*) \}/g;
const quoted = /"([a-zA-Z.-]+)"/g;
/** A flag of a command, where a key is named beside it. */
const flag = /--[a-z-]+(?: \d\S*?)?, or (?=")/g;
/** What is said of a command alone, in brackets. */
const ofCommand = / \([^()]*--[a-z-]+[^()]*\)/g;

/** Words that the maker typed freely, in a job or a blank: what is lettered, and names. */
export function ownWords(typed: unknown): ReadonlySet<string> {
  if (typeof typed !== 'object' || typed === null) return new Set();
  return new Set(
    Object.entries(typed).flatMap(([key, value]) =>
      typeof value === 'string' ? (key === 'text' || key === 'name' ? [value] : []) : [...ownWords(value)],
    ),
  );
}

/** What a sentence is about, and what in it is the maker's own. */
export interface SentenceOptions {
  readonly about?: string;
  readonly own?: ReadonlySet<string>;
}

/** Commands that a sentence sends to; on the page what each does stands in a step. */
const commands = [
  ['"repeat" lists', '“Ways it can close” lists'],
  [
    '"seamwright names" fills it from a list\'s column',
    '“A list of names” in step 5 fills it from its column',
  ],
] as const;
const withoutCommands = (says: string): string =>
  commands.reduce((told, [command, step]) => told.replace(command, step), says);

/** A sentence about a key in the page's own words: each key as its field, each value as the choice it is. The maker's own words stay. */
export function inPageWords(
  says: string,
  station: StationName,
  { about = '', own = new Set() }: SentenceOptions = {},
): string {
  return withoutCommands(says)
    .replace(/ in the job's artwork$/, '')
    .replace(flag, '')
    .replace(ofCommand, '')
    .replace(holder, '$1')
    .replace(pair, (whole, name: string, given: string) => {
      const key = keyOf(name, about);
      const words = key === undefined ? undefined : wordsOf(key);
      if (!words) return whole;
      const value = given.replace(/^"|"$/g, '');
      const asked = words.label.endsWith('?') ? words.label : `${words.label}:`;
      return `“${asked} ${valueIn(words, value) ?? value}”`;
    })
    .replace(quoted, (whole, name: string) => {
      if (own.has(name)) return whole;
      const value = valueIn(wordsOf(about), name);
      if (value !== undefined) return `“${value}”`;
      const key = keyOf(name, about);
      return key === undefined ? whole : `“${wordsOf(key)?.label}”`;
    })
    .replace(bareKey, (whole) => (/^[^"]*[.[]/.test(whole) ? (fieldName(whole, station) ?? whole) : whole));
}
