// `prove` of all vessels of a list: each by its own folder, then the sheets that they share.
import { atMost } from '../../prove/check.ts';
import type { Proof, SheetText } from '../../prove/proof.ts';
import { isObject } from '../typed/schema.ts';
import type { SharedSheetsReport } from './shared-sheets.ts';

/** What a folder of many vessels says of itself: their folders, and who shares sheets. */
export interface ListedVessels {
  readonly folders: readonly string[];
  readonly sets: readonly { readonly rows: readonly string[]; readonly sheets: readonly Told[] }[];
}

/** A sheet as it is told of. */
type Told = Pick<SharedSheetsReport['sheets'][number], 'file' | 'times' | 'film'>;

const texts = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];

const objects = (value: unknown): readonly Readonly<Record<string, unknown>>[] =>
  Array.isArray(value) ? value.filter(isObject) : [];

/** A folder's name, and nothing that leads out of the folder of all. */
const isName = (name: string): boolean => /^[^/\\]+$/.test(name) && name !== '..' && name !== '.';

function toldOf({ file, times, film }: Readonly<Record<string, unknown>>): Told[] {
  if (typeof file !== 'string' || !/^sheet-\d+\.cut\.svg$/.test(file)) return [];
  return [{ file, times: typeof times === 'number' ? times : 1, film: typeof film === 'string' ? film : '' }];
}

/** Reads names.json as it was delivered. */
export function listedVessels(parsed: unknown): ListedVessels {
  const { rows, shared } = isObject(parsed) ? parsed : {};
  const sets = isObject(shared) ? objects(shared.sets) : [];
  return {
    folders: objects(rows).flatMap(({ folder }) => texts([folder]).filter(isName)),
    sets: sets.map((set) => ({
      rows: texts(set.rows).filter(isName),
      sheets: objects(set.sheets).flatMap(toldOf),
    })),
  };
}

/** Sheets of a folder that its list does not tell of: an earlier run left them, and they are not proved. */
export function leftSheets({ sets }: ListedVessels, names: readonly string[]): readonly string[] {
  const told = new Set(sets.flatMap(({ sheets }) => sheets.map(({ file }) => stemOf(file))));
  return names.filter((name) => /^sheet-\d+\.(?:cut|guide)\.svg$/.test(name) && !told.has(stemOf(name)));
}

const stemOf = (file: string): string => file.replace(/\.(?:cut|guide)\.svg$/, '');

/** The sheets of a set with their texts, by name; one that is gone is a file without anything in it. */
export const sheetTexts = (
  sheets: readonly Told[],
  cuts: Readonly<Record<string, string>>,
): readonly SheetText[] =>
  sheets.map(({ file, times, film }) => {
    const stem = stemOf(file);
    const guide = cuts[`${stem}.guide.svg`];
    return { stem, cut: cuts[file] ?? '', times, film, ...(guide === undefined ? {} : { guide }) };
  });

/** One proof of all: a row a vessel, then those of each set of sheets. */
export function proofOfList(
  vessels: readonly { readonly folder: string; readonly proof: Proof }[],
  sets: readonly Proof[],
): Proof {
  const rows = vessels.map(({ folder, proof }) => {
    const failed = proof.checks.filter(({ pass }) => !pass);
    const names = failed.map(({ rule }) => rule).join(', ');
    return atMost({
      rule: folder,
      value: failed.length,
      limit: 0,
      unit: 'count',
      says:
        failed.length === 0 ? 'rows of its own proof that fail' : `rows of its own proof that fail: ${names}`,
    });
  });
  const checks = [...rows, ...sets.flatMap((set) => set.checks)];
  return { pass: checks.every(({ pass }) => pass), checks };
}
