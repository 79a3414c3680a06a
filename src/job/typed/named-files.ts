// The files that a job names, whoever fetches them.
import { Refused, stop } from '../../finding.ts';
import { typedText } from '../../lengths/typed-text.ts';
import type { Job } from './resolved-job.ts';

/** A file as the job names it, and the key that does. */
export interface FileNamed {
  readonly file: string;
  readonly key: string;
}

/** The bytes of files, by the names the job gives them. */
export type FileBytes = ReadonlyMap<string, Uint8Array>;

/** The files that a job's work is made from, beside its blank and its materials; each may be named more than once. */
export const filesNamed = ({
  artwork,
  items = [],
  lettering = [],
}: Pick<Job, 'artwork' | 'items' | 'lettering'>): readonly FileNamed[] => [
  ...(artwork ? [{ file: artwork.file, key: 'artwork.file' }] : []),
  ...(artwork?.over ?? []).map(({ file }, i) => ({ file, key: `artwork.over[${i}]` })),
  ...(artwork?.fonts ?? []).map((file, i) => ({ file, key: `artwork.fonts[${i}]` })),
  ...items.map(({ file }, i) => ({ file, key: `items[${i}].file` })),
  ...lettering.flatMap(({ font }, i) =>
    font === undefined ? [] : [{ file: font, key: `lettering[${i}].font` }],
  ),
];

/** @throws Refused where the file was not given. */
export function bytesOf(files: FileBytes, file: string): Uint8Array {
  const bytes = files.get(file);
  if (bytes) return bytes;
  throw new Refused([
    stop('unreadable', { file }, 'is named by the job, but was not given; give it beside the job'),
  ]);
}

/** A file as text. @throws Refused where the file was not given, or is no text. */
export const textOf = (files: FileBytes, file: string): string => typedText(bytesOf(files, file), file);
