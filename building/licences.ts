// Lays the licences of all that is bundled beside what is built: most ask that their text goes along with copies.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

interface Locked {
  readonly packages: Readonly<Record<string, { readonly version?: string; readonly dev?: boolean }>>;
}

const root = join(import.meta.dirname, '..');

const isLicence = (file: string): boolean => /^(?:licen[cs]e|copying|notice|ofl)(?:[._-]|$)/i.test(file);

/** The licence files of a package in its own words; where it has none, what its package.json tells. */
function licenceOf(folder: string): string {
  const files = readdirSync(folder).filter(isLicence).sort();
  const texts = files.map((file) => readFileSync(join(folder, file), 'utf8').trim());
  if (texts.length > 0) return texts.join('\n\n');
  const { license, author, repository } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const by = author?.name ?? author;
  return `${license}${by ? `, by ${by}` : ''}; its source: ${repository?.url ?? repository ?? 'as published'}`;
}

/** The licences of all packages that are delivered, in the order of their names. */
export function licenceTexts(): string {
  const { packages }: Locked = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  const delivered = Object.entries(packages).filter(([path, { dev }]) => path !== '' && !dev);
  return delivered
    .filter(([path]) => existsSync(join(root, path)))
    .map(([path, { version }]) => {
      const name = path.replace(/^.*node_modules\//, '');
      return `${name} ${version}\n\n${licenceOf(join(root, path))}\n`;
    })
    .join('\n----------------------------------------\n\n');
}

/** Writes them to a file. */
export const licencesBeside = (file: string): Plugin => ({
  name: 'licences-beside',
  writeBundle: () => writeFileSync(join(root, file), licenceTexts()),
});
