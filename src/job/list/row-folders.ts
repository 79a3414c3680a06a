// A folder for each row, named for what stands on the vessel: safe on every file system, and no two alike.

/** Names that Windows keeps for devices, whatever ending they have. Source: Microsoft, "Naming Files, Paths, and Namespaces". */
const devices = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/** Longest name made of a label: a path has room for 260 characters on some systems. */
const longest = 40;

/** Letters that no accent comes off. */
const spelt: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
};

/**
 * Small Latin letters, digits and single hyphens of a label, accents taken off; empty where it has none of them.
 * Capitals are made small because some file systems tell them apart and some don't.
 */
export const plainName = (label: string): string =>
  label
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[ßæœøłđðþı]/g, (letter) => spelt[letter] ?? '')
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, longest)
    .replace(/^-+|-+$/g, '');

/** A name for a file or folder: of a label that has no plain letter, the other one. */
export function safeName(label: string, otherwise: string): string {
  const plain = plainName(label);
  if (plain === '') return otherwise;
  return devices.test(plain) ? `name-${plain}` : plain;
}

export interface Labelled {
  readonly line: number;
  readonly label: string;
}

/** One folder name a row, in their order: a label with no plain letter gives its line, equal ones a number. */
export function rowFolders(rows: readonly Labelled[]): readonly string[] {
  const taken = new Set<string>();
  return rows.map(({ line, label }) => {
    const name = safeName(label, `line-${line}`);
    let free = name;
    for (let next = 2; taken.has(free); next++) free = `${name}-${next}`;
    taken.add(free);
    return free;
  });
}
