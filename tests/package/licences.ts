// The packages that what we deliver is made of, with their licences, as package-lock.json has them.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export interface LockedPackage {
  readonly path: string;
  readonly version: string;
  readonly licence: string;
  readonly isDev: boolean;
  readonly integrity: string | undefined;
  readonly resolved: string | undefined;
  readonly hasInstallScript: boolean;
}

export const root = join(import.meta.dirname, '../..');
export const licencesFile = join(root, 'LICENCES.md');

interface LockEntry {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly hasInstallScript?: boolean;
}

/** Licences of packages whose own package.json tells none, from the licence file in the package. */
const readByHand: Readonly<Record<string, string>> = { 'node_modules/png-js': 'MIT' };

export function lockedPackages(): readonly LockedPackage[] {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
    packages: Readonly<Record<string, LockEntry>>;
  };
  return Object.entries(packages)
    .filter(([path]) => path !== '')
    .map(([path, entry]) => ({
      path,
      version: entry.version ?? '',
      licence: entry.license ?? readByHand[path] ?? 'not told',
      isDev: entry.dev === true || entry.devOptional === true,
      integrity: entry.integrity,
      resolved: entry.resolved,
      hasInstallScript: entry.hasInstallScript === true,
    }));
}

/** The text of LICENCES.md. */
export function licenceList(): string {
  const rows = lockedPackages()
    .filter(({ isDev }) => !isDev)
    .map(
      ({ path, version, licence }) =>
        `| ${path.replace(/^.*node_modules\//, '')} | ${version} | ${licence} |`,
    );
  return `# Licences of the packages Seamwright is made of

Made by \`npm run licences\` from package-lock.json; a test holds it to that. Packages used only in development are not listed.

| package | version | licence |
| --- | --- | --- |
${[...new Set(rows)].sort().join('\n')}
`;
}

if (process.argv[1] === import.meta.filename) writeFileSync(licencesFile, licenceList());
