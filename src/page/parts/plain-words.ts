// Sentences of the engine in the words that stand beside the fields, with what lies on the bench.
import type { Finding } from '../../finding.ts';
import { toldIn } from '../../lengths/told-in.ts';
import { type Half, isObject, type Json, listAt } from '../model/bench.ts';
import { stepOfKey } from '../model/field-words.ts';
import { fieldName, inPageWords, ownWords } from '../model/page-words.ts';
import { bench } from '../store.ts';

/** What a reading is called: by its place from the foot up. */
export function nameOfStation(index: number): string {
  const count = listAt(bench.value, 'blank', 'stations').length;
  if (index === 0) return 'Foot';
  return index === count - 1 ? 'Lip' : `Between, ${index}`;
}

/** A sentence of the engine's about a key, with fields in place of keys. */
export function inPlainWords(says: string, about = ''): string {
  const { job, blank } = bench.value;
  return inPageWords(says, nameOfStation, { about, own: new Set([...ownWords(job), ...ownWords(blank)]) });
}

/** The key of the job that names a file; undefined where none does. */
function keyNaming(file: string, value: Json = bench.value.job, key = ''): string | undefined {
  if (value === file) return key;
  const parts = Array.isArray(value)
    ? value.map((one: Json, i) => [`${key}[${i}]`, one] as const)
    : isObject(value)
      ? Object.entries(value).map(([name, one]) => [key === '' ? name : `${key}.${name}`, one] as const)
      : [];
  for (const [at, one] of parts) {
    const found = keyNaming(file, one, at);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The field that says how large a file of the job is drawn, by its key; undefined where the job names no such file. */
export const sizeKeyOf = (file: string): string | undefined => keyNaming(file)?.replace(/\.file$/, '.across');

/** As a sentence begins: names of files and numbers stay as they are. */
const asSentence = (says: string): string =>
  /^[a-z]+[ ,]/.test(says) ? says.charAt(0).toUpperCase() + says.slice(1) : says;

/** What a finding says, in the page's words. */
export const findingSays = ({ says, where: { key, file } }: Finding): string =>
  asSentence(
    inPlainWords(toldIn(says, bench.value.units), key ?? (file === undefined ? undefined : keyNaming(file))),
  );

/** Where it is: the step and the field of a key of this job or its vessel, else the file. */
export function findingPlace({ where: { file, key, element, line } }: Finding): string {
  const { jobFile, blankFile } = bench.value;
  const half: Half | undefined = file === jobFile ? 'job' : file === blankFile ? 'blank' : undefined;
  const name = key === undefined ? undefined : (fieldName(key, nameOfStation) ?? key);
  const at =
    half && key !== undefined ? [`Step ${stepOfKey(half, key)}: ${name}`] : [half ? undefined : file, name];
  return [...at, element, line === undefined ? undefined : `line ${line}`]
    .filter((part) => part !== undefined)
    .join(', ');
}
