// The package as it would be handed on: the same bytes each time, and all that it needs in it.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { patience } from '../cli/run.ts';
import { root } from './licences.ts';

const folder = mkdtempSync(join(tmpdir(), 'seamwright-package-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Packed {
  readonly filename: string;
  readonly files: readonly { readonly path: string }[];
}

function packed(into: string): Packed {
  const out = execFileSync('npm', ['pack', '--ignore-scripts', '--json', '--pack-destination', into], {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const [one] = JSON.parse(out) as Packed[];
  if (!one) throw new Error('nothing was packed');
  return one;
}

const hashOf = (path: string): string => createHash('sha256').update(readFileSync(path)).digest('hex');

const first = packed(folder);

/** What a compiler told of, where it failed. */
function told(work: () => unknown): string {
  try {
    work();
    return '';
  } catch (fault) {
    return String((fault as { stdout?: string }).stdout ?? fault);
  }
}

test('packed twice it is the same bytes', patience, () => {
  const hash = hashOf(join(folder, first.filename));
  expect(hashOf(join(folder, packed(folder).filename))).toBe(hash);
  const paths = first.files.map(({ path }) => path);
  const texts = ['LICENSE', 'LICENCES.md', 'dist/LICENCES.txt', 'dist/page/LICENCES.txt'];
  expect(paths).toEqual(expect.arrayContaining([...texts, 'README.md', 'dist/cli/main.js']));
  expect(paths.filter((path) => /^(?:src|tests|fixtures|node_modules)\//.test(path))).toEqual([]);
  // Hundreds of modules took half a second to open; what was built before must not be packed either.
  expect(paths.filter((path) => /^dist\/(?!page\/).*\.js$/.test(path)).length).toBeLessThan(120);
});

test(
  'in an empty folder it installs without a script, runs, makes a sample and has its types',
  patience,
  () => {
    writeFileSync(join(folder, 'package.json'), '{"name":"empty","private":true,"type":"module"}');
    const inFolder = (command: string, ...args: string[]) =>
      execFileSync(command, args, { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
    inFolder(
      'npm',
      'install',
      '--ignore-scripts',
      '--prefer-offline',
      '--no-audit',
      '--no-fund',
      `./${first.filename}`,
    );
    const home = join(folder, 'node_modules/seamwright');
    const bin = join(folder, 'node_modules/.bin/seamwright');
    expect(inFolder(bin, '--help')).toMatch(/^Usage: seamwright/);
    inFolder(bin, 'make', join(home, 'samples/tapered-cup/cup.job.json'), '--no-pictures', '--out', 'out');
    expect(existsSync(join(folder, 'out/wrap.cut.svg'))).toBe(true);
    writeFileSync(
      join(folder, 'use.ts'),
      `import { makeFiles, readJob } from 'seamwright';\nconst job: ReturnType<typeof readJob> = readJob({}, 'x');\nexport const name: string = job.name;\nexport const make: typeof makeFiles = makeFiles;\n// @ts-expect-error A type that is not there would take anything.\nexport const wrong: number = job.name;\n`,
    );
    const compiler = join(root, 'node_modules/typescript/bin/tsc');
    // As each of the ways to look up a package's types does.
    for (const module of ['nodenext', 'node16', 'preserve']) {
      const moduleResolution = module === 'preserve' ? 'bundler' : module;
      const lookedUp = { module, moduleResolution, types: [], exactOptionalPropertyTypes: true };
      // The library of the language alone: that of browsers takes half of the time to check, and is not asked for.
      const compilerOptions = { strict: true, noEmit: true, target: 'es2023', lib: ['es2023'], ...lookedUp };
      writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ compilerOptions, files: ['use.ts'] }));
      expect([module, told(() => inFolder(process.execPath, compiler))]).toEqual([module, '']);
    }
  },
);
