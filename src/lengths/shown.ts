// A value as the maker typed it, fit to stand in a one-line sentence.

/** Longest piece of typed text repeated back: enough to be found again, short enough to keep the sentence on its line. */
const mostShown = 40;

/** The value as typed: text in quotes, on one line, cut short when long; anything else as JSON writes it. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return quoted(value);
  if (typeof value === 'number' || value === undefined) return String(value);
  return cutShort(JSON.stringify(value) ?? String(value));
}

/** Longest word of what is told: a flag or a path may be as long as the command line. */
const mostOfWord = 500;

/** A line whose words are cut short where they are longer than any that is meant: its beginning and end are enough to find it. */
export const withShortWords = (line: string): string =>
  line.replace(/\S+/gu, (word) =>
    word.length > mostOfWord ? `${word.slice(0, mostOfWord / 2)}…${word.slice(-mostOfWord / 4)}` : word,
  );

/** Text in quotes. Single ones where the text holds an inch mark, so that no backslash is shown. */
function quoted(text: string): string {
  const oneLine = JSON.stringify(cutShort(text)).slice(1, -1).replaceAll('\\"', '"');
  const mark = oneLine.includes('"') ? "'" : '"';
  return mark + oneLine + mark;
}

/** Never within a letter that takes two places. */
const cutShort = (text: string): string =>
  text.length > mostShown ? `${text.slice(0, mostShown).replace(/\p{Surrogate}$/u, '')}…` : text;
