// Layers point one way: the house plan as data, held by every import of every file.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { parseSync, Visitor } from 'vite';
import { expect, test } from 'vitest';

/** What each folder may import besides itself and src/finding.ts. Types count as imports. */
const layers: Readonly<Record<string, readonly string[]>> = {
  lengths: [],
  geometry: ['lengths'],
  drawing: ['geometry'],
  blank: ['lengths', 'geometry'],
  unroll: ['geometry', 'drawing', 'blank'],
  artwork: ['lengths', 'geometry', 'drawing'],
  pattern: ['geometry', 'drawing', 'unroll', 'artwork'],
  cut: ['geometry', 'drawing', 'unroll'],
  sheet: ['lengths', 'geometry', 'drawing'],
  deliver: ['lengths', 'geometry', 'drawing'],
  picture: ['lengths', 'geometry', 'drawing', 'blank', 'unroll', 'deliver'],
  prove: ['lengths', 'geometry', 'drawing', 'blank', 'unroll', 'deliver'],
  job: [
    'lengths',
    'geometry',
    'drawing',
    'blank',
    'unroll',
    'artwork',
    'pattern',
    'cut',
    'deliver',
    'picture',
    'sheet',
    'prove',
  ],
  cli: ['job', 'lengths'],
  // The package's own face.
  '.': ['job'],
  // The page's parts: what it knows, the thread of the engine, and what is seen. Only `page` itself wires them.
  'page/model': ['job', 'lengths'],
  'page/worker': ['job', 'page/model'],
  page: ['job', 'lengths', 'page/model', 'page/worker', 'page/parts', 'page/board', 'page/steps'],
  'page/parts': ['lengths', 'page', 'page/model', 'page/steps'],
  'page/board': ['job', 'lengths', 'page', 'page/model', 'page/parts', 'page/vessel'],
  'page/vessel': ['job', 'page', 'page/board', 'page/model'],
  'page/steps': ['blank', 'job', 'lengths', 'page', 'page/model', 'page/parts'],
  'page/offline': [],
};

/**
 * The parts of a layer, each of which imports only from those before it. What stands in the layer's own folder puts the parts
 * together, or is shared by them all.
 */
const parts: Readonly<Record<string, readonly string[]>> = {
  artwork: ['text', 'svg', 'picture'],
  pattern: [
    'lattice',
    'tile',
    'film',
    'repeat',
    'pixels',
    'period',
    'joins',
    'study',
    'lay',
    'gores',
    'rigid',
    'ways',
    'seam',
  ],
  cut: ['guide', 'checks', 'films', 'mend', 'drawings'],
  picture: ['rolled', 'profile'],
  prove: ['written', 'seams', 'checks'],
  job: [
    'typed',
    'plan',
    'closing',
    'artwork',
    'motifs',
    'blade',
    'guide',
    'parts',
    'lay',
    'proof',
    'sheets',
    'cutter',
    'pictures',
    'job-sheet',
    'prints',
    'view',
    'blank',
    'inspect',
    'repeat',
    'list',
  ],
};

/** Packages that a whole shell is made with. */
const shellPackages: readonly (readonly [string, string])[] = [
  ['commander', 'cli'],
  ['preact', 'page'],
  ['preact/hooks', 'page'],
  ['@preact/signals', 'page'],
];

/** A package is imported by one adapter, named for what it does. */
const adapters: Readonly<Record<string, string | readonly string[]>> = {
  'clipper2-ts': 'geometry/polygon-clip.ts',
  flatbush: 'geometry/box-index.ts',
  saxes: 'drawing/xml.ts',
  svgpath: 'drawing/path-data.ts',
  '@resvg/resvg-wasm': 'artwork/svg/svg-normalise.ts',
  harfbuzzjs: 'artwork/text/lettering.ts',
  // One reads a maker's pictures, the other makes ours fit for a page.
  'fast-png': ['artwork/picture/decode-picture.ts', 'deliver/flat-picture.ts'],
  'jpeg-js': 'artwork/picture/decode-picture.ts',
  'bidi-js': 'artwork/text/bidi.ts',
  'fastest-levenshtein': 'job/typed/schema.ts',
  papaparse: 'job/typed/read-list.ts',
  pdfkit: 'deliver/write-pdf.ts',
  three: [
    'page/vessel/cover-texture.ts',
    'page/vessel/drag-marks.ts',
    'page/vessel/scene.ts',
    'page/vessel/vessel-parts.ts',
    'page/vessel/wall-parts.ts',
    'page/vessel/sheet-layer.ts',
  ],
  'modern-gif': 'page/vessel/turning.ts',
  // One packs what is written, the other measures what would be unpacked.
  fflate: ['deliver/compress.ts', 'artwork/picture/decode-picture.ts'],
  '@resvg/resvg-wasm/index_bg.wasm?url': 'page/worker/engine.ts',
  '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf?url':
    'page/worker/engine.ts',
  '@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf?url':
    'page/worker/engine.ts',
};

const root = join(import.meta.dirname, '../src');
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file))
  .sort();

/** The modules a file names: value, type, re-export and dynamic imports, and those of types where they are used. */
function importsOf(file: string, text: string): string[] {
  const found: string[] = [];
  const named = ({ source }: { source: unknown }): void => {
    if (source && typeof source === 'object' && 'value' in source) found.push(String(source.value));
  };
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file} is not read: ${errors[0]?.message}`);
  new Visitor({
    ImportDeclaration: named,
    ExportNamedDeclaration: named,
    ExportAllDeclaration: named,
    ImportExpression: named,
    TSImportType: named,
  }).visit(program);
  return found;
}

const folderOf = (file: string): string => dirname(file);

/** The layer a folder is of: itself, or the one that it is a part of. */
const layerOf = (folder: string): string => (layers[folder] ? folder : (folder.split('/')[0] ?? folder));

/** Whether a part of a layer comes after another of the same. */
function isAfter(folder: string, other: string): boolean {
  const order = parts[layerOf(folder)] ?? [];
  const placeOf = (name: string): number => order.indexOf(name.split('/')[1] ?? '');
  return placeOf(other) >= 0 && placeOf(folder) > placeOf(other);
}

/** What breaks the house plan in a file, in words. */
function breaches(file: string, names: readonly string[]): string[] {
  const folder = folderOf(file);
  const layer = layerOf(folder);
  return names.flatMap((name) => {
    if (name.startsWith('node:')) return folder === 'cli' ? [] : [`${file} imports ${name}`];
    if (!name.startsWith('.')) {
      const shell = shellPackages.find(([named]) => named === name)?.[1];
      if (shell !== undefined) return folder.split('/')[0] === shell ? [] : [`${file} imports ${name}`];
      return [adapters[name]].flat().includes(file)
        ? []
        : [`${file} imports the package ${name}, which is not its own`];
    }
    const target = normalize(join(folder, name));
    const into = folderOf(target);
    if (target === 'finding.ts' || into === folder) return [];
    const kept = layerOf(into) === layer ? !isAfter(into, folder) : layers[layer]?.includes(layerOf(into));
    return kept ? [] : [`${file} imports ${target}`];
  });
}

const textOf = (file: string): string => readFileSync(join(root, file), 'utf8');

const imports = new Map(files.map((file) => [file, importsOf(file, textOf(file))]));

test('every file imports only from the layers below its own', () => {
  expect(files.length).toBeGreaterThan(40);
  expect([...imports].flatMap(([file, names]) => breaches(file, names))).toEqual([]);
});

test('a breach of any kind is seen', () => {
  const kinds = [
    "import { x } from '../job/make.ts';",
    "import type { X } from '../job/make.ts';",
    "export { x } from '../job/make.ts';",
    "const x = () => import('../job/make.ts');",
    "type X = import('../job/make.ts').X;",
    "import { readFile } from 'node:fs';",
    "import Flatbush from 'flatbush';",
  ];
  const breachesOf = (file: string, text: string): string[] => breaches(file, importsOf(file, text));
  for (const text of kinds) expect(breachesOf('geometry/point.ts', text), text).toHaveLength(1);
  expect(breachesOf('pattern/tile/cell.ts', "import { x } from '../seam/winding-seam.ts';")).toHaveLength(1);
  expect(breachesOf('pattern/seam/winding-seam.ts', "import { x } from '../tile/cell.ts';")).toEqual([]);
});

test('every folder of src is in the plan', () => {
  const folders = new Set(files.map(folderOf).filter((folder) => folder !== '.'));
  const planned = new Set([
    ...Object.keys(layers),
    ...Object.entries(parts).flatMap(([layer, names]) => names.map((name) => `${layer}/${name}`)),
  ]);
  expect([...folders].filter((folder) => !planned.has(folder))).toEqual([]);
  // A part that is no longer there would hold nothing.
  const isThere = (name: string): boolean =>
    [...folders, '.'].some((folder) => folder === name || folder.startsWith(`${name}/`));
  expect([...planned].filter((name) => !isThere(name))).toEqual([]);
});

test('no file imports itself by way of others', () => {
  const graph = new Map(
    [...imports].map(([file, names]) => [
      file,
      names.filter((name) => name.startsWith('.')).map((name) => normalize(join(folderOf(file), name))),
    ]),
  );
  const done = new Set<string>();
  const cycles: string[] = [];
  const visit = (file: string, path: readonly string[]) => {
    if (path.includes(file)) cycles.push([...path, file].join(' > '));
    if (done.has(file) || path.includes(file)) return;
    for (const next of graph.get(file) ?? []) visit(next, [...path, file]);
    done.add(file);
  };
  for (const file of files) visit(file, []);
  expect(cycles).toEqual([]);
});

test('files are short enough to read in one sitting', () => {
  const long = files.filter((file) => textOf(file).split('\n').length > 350);
  expect(long.map((file) => relative(root, join(root, file)))).toEqual([]);
});
