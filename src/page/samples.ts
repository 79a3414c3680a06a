// Samples and shelf vessels, fetched only when they are picked. All invented, but where a profile names its source.
import type { NamedBytes } from './model/contract-files.ts';

type Text = () => Promise<{ readonly default: string }>;

const texts = import.meta.glob<{ readonly default: string }>(
  ['../../samples/*/*.json', '../../samples/*/*.svg', '../../profiles/*/*.json'],
  { query: '?raw' },
);

export interface Sample {
  readonly key: string;
  readonly label: string;
  readonly says: string;
}

/** Whole jobs, each with its vessel and artwork. */
export const sampleJobs: readonly Sample[] = [
  { key: 'tapered-cup', label: 'Fish-scale cup', says: 'tapered steel cup, one colour, in mm' },
  { key: 'canister', label: 'Rope canister', says: 'straight canister, in inches' },
  { key: 'pot', label: 'Tern pot', says: 'wider at the foot, two colours' },
  { key: 'mug', label: 'Shore mug', says: 'a cropped pattern made to meet' },
];

/** Artwork alone. */
export const sampleArt: readonly (Sample & { readonly file: string; readonly isMotif?: true })[] = [
  { key: 'tapered-cup', file: 'scales.svg', label: 'Fish scales', says: 'one colour' },
  { key: 'canister', file: 'ropes.svg', label: 'Ropes', says: 'a lattice' },
  { key: 'pot', file: 'terns.svg', label: 'Terns', says: 'two colours', isMotif: true },
  { key: 'mug', file: 'shore.svg', label: 'Shore', says: 'cropped off its repeat' },
];

const utf8 = new TextEncoder();

const bytesOf = async (load: Text): Promise<Uint8Array> => utf8.encode((await load()).default);

async function matching(test: (path: string) => boolean): Promise<readonly NamedBytes[]> {
  const found = Object.entries(texts).filter(([path]) => test(path));
  return Promise.all(
    found.map(async ([path, load]) => ({ name: path.split('/').at(-1) ?? path, bytes: await bytesOf(load) })),
  );
}

/** The files of a sample job. */
export const filesOfSample = (key: string): Promise<readonly NamedBytes[]> =>
  matching((path) => path.includes(`/samples/${key}/`));

export const artOfSample = ({ key, file }: { readonly key: string; readonly file: string }) =>
  matching((path) => path.endsWith(`/samples/${key}/${file}`));

/** Names of the vessels on the shelf: their files, without the ending. */
export const shelfVessels: readonly string[] = Object.keys(texts)
  .flatMap((path) => /profiles\/blanks\/(.*)\.blank\.json$/.exec(path)?.[1] ?? [])
  .sort();

export const filesOfVessel = (name: string): Promise<readonly NamedBytes[]> =>
  matching((path) => path.endsWith(`/profiles/blanks/${name}.blank.json`));

export type Material = 'film' | 'sheet' | 'cutter';

/** File names of the profiles of one kind of material. */
export const materialFiles = (kind: Material): readonly string[] =>
  Object.keys(texts)
    .flatMap((path) => new RegExp(`profiles/${kind}s/(.*\\.json)$`).exec(path)?.[1] ?? [])
    .sort();

export const materialNamed = (kind: Material, file: string): Promise<readonly NamedBytes[]> =>
  matching((path) => path.endsWith(`/profiles/${kind}s/${file}`));

/** A file's name as words: `can-12-oz` as `can 12 oz`. */
export const inWords = (name: string): string => name.replaceAll('-', ' ');
