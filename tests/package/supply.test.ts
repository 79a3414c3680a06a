// What comes with us: few packages, pinned, under licences that let a maker use them, running nothing while they install.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { licenceTexts } from '../../building/licences.ts';
import { licenceList, licencesFile, lockedPackages, root } from './licences.ts';

const packages = lockedPackages();
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  dependencies: Record<string, string>;
  devDependencies: Record<string, string>;
};

describe('packages', () => {
  test('are pinned to one version each', () => {
    const versions = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(versions.length).toBeGreaterThan(20);
    expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });

  test('are locked by what they hold, not by where they were fetched', () => {
    expect(packages.filter(({ integrity }) => !integrity?.startsWith('sha512-'))).toEqual([]);
    expect(packages.filter(({ resolved }) => resolved !== undefined)).toEqual([]);
  });

  test('that are delivered are listed with their licences, each of which allows it', () => {
    expect(readFileSync(licencesFile, 'utf8')).toBe(licenceList());
    const allowed =
      /^\(?(?:MIT|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|BSL-1\.0|MPL-2\.0|OFL-1\.1|Zlib|Unlicense|CC0-1\.0|BlueOak-1\.0\.0)(?: (?:AND|OR) (?:MIT|OFL-1\.1|Apache-2\.0|Zlib|BSD-3-Clause))*\)?$/;
    expect(packages.filter(({ isDev, licence }) => !isDev && !allowed.test(licence))).toEqual([]);
  });

  test('that are bundled go along with the texts of their licences', () => {
    const texts = licenceTexts();
    for (const { path, version } of packages.filter(({ isDev }) => !isDev))
      expect(texts).toContain(`${path.replace(/^.*node_modules\//, '')} ${version}\n`);
    const without = texts.split(/\n-{40}\n/).filter((one) => !/copyright|©|public domain/i.test(one));
    // These have no licence file: what their package.json tells stands there, with where their source is.
    const untold = ['@resvg/resvg-wasm', 'brotli', 'dfa', 'fontkit', 'saxes'];
    expect(without.map((one) => one.trim().split(' ')[0])).toEqual(untold);
    for (const one of without) expect(one).toMatch(/\d\n\n(?:MIT|ISC|MPL-2\.0).*its source: \S+/);
  });

  test('whose package tells no licence carry the licence read by hand', () => {
    const text = readFileSync(join(root, 'node_modules/png-js/LICENSE'), 'utf8');
    expect(text).toContain('Permission is hereby granted, free of charge');
  });

  test('run no script of theirs when they are installed, but for one that is not needed', () => {
    const scripted = packages.filter(({ hasInstallScript }) => hasInstallScript);
    // esbuild's only checks a binary that comes as a package of its own; what is delivered has none.
    expect(scripted.map(({ path, isDev }) => [path, isDev])).toEqual([['node_modules/esbuild', true]]);
  });

  test('are few: those we name, each of which some file of ours imports', () => {
    const names = Object.keys(manifest.dependencies);
    expect(names.length).toBeLessThanOrEqual(24);
    expect(names.filter((name) => !existsSync(join(root, 'node_modules', name)))).toEqual([]);
  });
});
