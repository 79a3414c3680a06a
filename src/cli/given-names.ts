// Files as the maker named them on the command line. The engine knows each by its name alone, so that what is written is the same
// wherever it lies; but of two drawings by one name in two folders, which is meant must be told.
import { basename } from 'node:path';
import type { Finding } from '../finding.ts';

let given = new Map<string, string>();

/** A run begins: what stands on its command line beside flags. Of two files by one name neither is told by it. */
export function beginNaming(words: readonly string[]): void {
  const named = new Map<string, string>();
  for (const word of words) {
    const name = basename(word);
    named.set(name, named.has(name) ? name : word);
  }
  given = named;
}

/** A finding with its file as it was given. */
export function asGiven(finding: Finding): Finding {
  const { file } = finding.where;
  const path = file === undefined ? undefined : given.get(file);
  return path === undefined ? finding : { ...finding, where: { ...finding.where, file: path } };
}
