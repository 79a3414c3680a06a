// Where the maker typed a thing, and what it is called there: a key of a file, or a flag of the command line.
import { type Finding, inFile, type Where } from '../../finding.ts';

/** The file that a job or a blank was typed in; undefined where it was given by flags. */
export type TypedIn = string | undefined;

/** The flags that stand for keys, and for all keys within them; a blank by flags has two stations. */
const flags: readonly (readonly [string, string])[] = [
  ['band', '--band'],
  ['coats', '--coat'],
  ['film.stretch', '--stretch'],
  ['film.gather', '--gather'],
  ['film', '--film'],
  ['seam', '--overlap'],
  ['trim.lip', '--trim-lip'],
  ['trim.foot', '--trim-foot'],
  ['pieces', '--pieces'],
  ['gores', '--gores'],
  ['stations[0].across', '--foot-across'],
  ['stations[0].girth', '--foot-girth'],
  ['stations[1].across', '--lip-across'],
  ['stations[1].girth', '--lip-girth'],
  ['stations[1].height', '--height'],
  ['stations[1].along', '--along'],
  ['footRound', '--foot-round'],
  ['lipRound', '--lip-round'],
  ['reading', '--reading'],
  ['use', '--use'],
];

const flagOf = (key: string): string | undefined =>
  flags.find(([name]) => key === name || key.startsWith(`${name}.`) || key.startsWith(`${name}[`))?.[1];

/** The place of a key in its file, or of the flag that stands for it; `rest` is what else is known of the place. */
export function typedAt(typedIn: TypedIn, key: string, rest: Omit<Where, 'file' | 'key'> = {}): Where {
  if (typedIn !== undefined) return { file: typedIn, key, ...rest };
  const flag = flagOf(key);
  return { ...(flag === undefined ? {} : { key: flag }), ...rest };
}

/** A key in words, as the maker types it there: `"band"`, or `--band`. */
export const called = (typedIn: TypedIn, key: string): string =>
  (typedIn === undefined ? flagOf(key) : undefined) ?? `"${key}"`;

/** A key given a value, as the maker types it there: `"pieces": "stacked"`, or `--pieces stacked`. */
export const given = (typedIn: TypedIn, key: string, value: string): string => {
  const flag = typedIn === undefined ? flagOf(key) : undefined;
  return flag === undefined ? `"${key}": "${value}"` : `${flag} ${value}`;
};

/** A key as it is pointed at: by itself, or as the flag that stands for it. */
export const keyShown = (typedIn: TypedIn, key: string): string =>
  (typedIn === undefined ? flagOf(key) : undefined) ?? key;

/** Findings of the layers below, whose keys are those of a blank or a job, told where these were typed. */
export const toldAt = (findings: readonly Finding[], typedIn: TypedIn): readonly Finding[] =>
  typedIn !== undefined
    ? inFile(findings, typedIn)
    : findings.map((finding) => {
        const { key, file: _, ...rest } = finding.where;
        return { ...finding, where: key === undefined ? rest : typedAt(undefined, key, rest) };
      });
