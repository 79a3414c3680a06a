// `names` as a maker runs it: good rows done and bad ones told, a run that was killed gone on with, nothing where it is refused.
import { readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { patience, projectFolder, type Ran, run, runMany, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => shop.clear());

const job = {
  name: '{name}',
  blank: {
    name: 'a mug',
    stations: [
      { height: 0, girth: 250 },
      { height: 80, girth: '{girth}' },
    ],
    use: 'other',
  },
  film: { thickness: 0.08, minWidth: 0.2, minPiece: 0.5 },
  lettering: [{ text: '{name}', capHeight: 9, at: { turn: 0.5, along: 40 } }],
};
// Spelt as spreadsheets do: a byte order mark, semicolons, Windows line ends, a decimal comma.
const list =
  '\uFEFFname;girth\r\n../x;262,5\r\nCON;261\r\n"Kelp; Moor";shell\r\n🐚;262\r\nPebble;262,5\r\nPebble;262\r\n';
const names = (...more: readonly string[]) => ['names', 'mug.job.json', 'names.csv', '--zip', ...more];
const inShop = (args: readonly string[], node: readonly string[] = []): Promise<Ran> =>
  run(args, { cwd: shop.folder, node });

/** Every file under a folder with its content. */
const filesIn = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(shop.at(folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((path) => [path.slice(shop.at(folder).length + 1), readFileSync(path, 'utf8')]),
  );

let whole: Ran;
beforeAll(async () => {
  shop.write('mug.job.json', job);
  shop.write('names.csv', list);
  whole = await inShop(names('--out', 'whole', '--json'));
}, 120_000);

describe('a list with good rows and bad ones', () => {
  test('ends with 1, tells the bad rows by their lines, and does the others', () => {
    expect(whole.status).toBe(1);
    const { done, refused, files } = JSON.parse(whole.out);
    expect(done).toBe(4);
    expect(refused).toEqual([
      { line: 4, says: expect.stringContaining('stations[1].girth: "shell" is not a length') },
      {
        line: 5,
        says: expect.stringMatching(/lettering\[0\]\.text: the font .* has no glyph for "🐚" \(U\+1F41A\)/),
      },
    ]);
    expect(files.map(({ file }: { file: string }) => file).sort()).toEqual(
      Object.keys(filesIn('whole'))
        .filter((file) => !file.endsWith('row.json'))
        .sort(),
    );
    expect(whole.lines.filter((line) => line.startsWith('left out: '))).toEqual([
      expect.stringMatching(/^left out: names\.csv:4: "Kelp; Moor": /),
      expect.stringMatching(/^left out: names\.csv:5: "🐚": /),
    ]);
  });

  test('gives each a folder of its own, whatever the name', () => {
    expect(readdirSync(shop.at('whole')).sort()).toEqual([
      'all.zip',
      'index.html',
      'name-con',
      'names.json',
      'pebble',
      'pebble-2',
      'x',
    ]);
    expect(JSON.parse(shop.read('whole/names.json'))).toEqual(JSON.parse(whole.out));
  });

  test('gives all of it as one archive too, and a page that opens each vessel', () => {
    const packed = unzipSync(readFileSync(shop.at('whole/all.zip')));
    const found = filesIn('whole');
    expect(Object.keys(packed).sort()).toEqual(
      Object.keys(found)
        .filter((file) => file !== 'all.zip' && !file.endsWith('row.json'))
        .sort(),
    );
    for (const [file, bytes] of Object.entries(packed))
      expect(Buffer.from(bytes).toString(), file).toBe(found[file]);
    const links = [...(found['index.html'] ?? '').matchAll(/href="([^"]*)"/g)].map(([, link]) => link ?? '');
    expect(links).toContain('name-con/index.html');
    for (const link of links) expect(Object.keys(found)).toContain(link);
  });

  test('gives each the girth of its row', () => {
    const girthOf = (folder: string) =>
      JSON.parse(shop.read(`whole/${folder}/report.json`)).blank.girthAt.at(-1).girth as number;
    expect(girthOf('pebble')).toBeCloseTo(262.5, 6);
    expect(girthOf('pebble-2')).toBeCloseTo(262, 6);
  });

  test('are folders that prove takes', patience, async () => {
    expect((await inShop(['prove', 'whole/pebble'])).status).toBe(0);
  });
});

/** Preloaded into a run: it dies where it is about to move a file of a row into place. */
const killedMoving = (folder: string, file: string): readonly string[] => [
  '--import',
  `data:text/javascript,${encodeURIComponent(`import fs from 'node:fs'; import { syncBuiltinESMExports } from 'node:module';
    const move = fs.renameSync;
    fs.renameSync = (from, to) => {
      if (to.endsWith('${folder}/${file}')) process.kill(process.pid, 'SIGKILL');
      move(from, to);
    };
    syncBuiltinESMExports();`)}`,
];

describe('a run that was stopped', () => {
  test('and is given again goes on where it was, to the same files', patience, async () => {
    const killed = await inShop(names('--out', 'stopped'), killedMoving('name-con', 'report.json'));
    expect(killed.status).toBeNull();
    // The second row has some of its files, and no list has been written of any.
    expect(readdirSync(shop.at('stopped')).filter((name) => !name.startsWith('.'))).toEqual([
      'name-con',
      'x',
    ]);
    expect(readdirSync(shop.at('stopped/name-con'))).toContain('wrap.cut.svg');
    expect(readdirSync(shop.at('stopped/name-con'))).not.toContain('report.json');
    const again = await inShop(names('--out', 'stopped'));
    expect(again.status).toBe(1);
    expect(again.out).toMatch(
      /^4 vessels made, 2 of them as an earlier run left them; 2 of the list left out\n/,
    );
    expect(filesIn('stopped')).toEqual(filesIn('whole'));
  });

  test('makes a row anew that is no longer what it was made to be', patience, async () => {
    writeFileSync(shop.at('stopped/pebble/wrap.cut.svg'), 'cut short');
    rmSync(shop.at('stopped/x/job-sheet.html'));
    shop.write('names.csv', list.replace('CON;261', 'CON;263'));
    const again = await inShop(names('--out', 'stopped'));
    expect(again.out).toContain('1 of them as an earlier run left them');
    expect(JSON.parse(shop.read('stopped/name-con/report.json')).blank.girthAt.at(-1).girth).toBeCloseTo(
      263,
      6,
    );
    shop.write('names.csv', list);
    expect((await inShop(names('--out', 'stopped'))).out).toContain('3 of them as an earlier run left them');
    expect(filesIn('stopped')).toEqual(filesIn('whole'));
  });
});

test('rows of a long list, two at work in a thread, are as those of a short one', patience, async () => {
  const more = Array.from({ length: 22 }, (_, i) => `Skerry ${i};26${i % 4}`);
  shop.write('long.csv', `${list}${more.join('\r\n')}\r\n`);
  const ran = await inShop(['names', 'mug.job.json', 'long.csv', '--out', 'long', '--json']);
  expect(JSON.parse(ran.out).done).toBe(4 + more.length);
  const ofRows = (files: Readonly<Record<string, string>>) =>
    Object.entries(files).filter(([path]) => /^(?:x|name-con|pebble[^/]*)\//.test(path));
  expect(ofRows(filesIn('whole')).length).toBeGreaterThan(20);
  expect(ofRows(filesIn('long'))).toEqual(ofRows(filesIn('whole')));
});

test('what is refused writes nothing, and says why', patience, async () => {
  shop.write('slip.job.json', { ...job, name: '{nmae}' });
  shop.write('bad.csv', 'name,girth\n🐚,260\nBo\n');
  writeFileSync(shop.at('latin.csv'), Buffer.from('name,girth\nZo\u00eb,260\n', 'latin1'));
  shop.write('huge.csv', '');
  truncateSync(shop.at('huge.csv'), 1e9);
  const cases: readonly (readonly [string, string, RegExp])[] = [
    [
      'slip.job.json',
      'names.csv',
      /^slip\.job\.json: name: \{nmae\} is no column of names\.csv; the nearest is \{name\}$/,
    ],
    ['mug.job.json', 'bad.csv', /no row can be made, so nothing is written$/],
    ['mug.job.json', 'latin.csv', /^latin\.csv:2: is not text in UTF-8/],
    // Told by its size alone: it would not fit in memory.
    ['mug.job.json', 'huge.csv', /^huge\.csv: is 1000 MB; up to 50 MB is read$/],
  ];
  const before = shop.state();
  const ran = await runMany(
    cases.map(([file, csv]) => ['names', file, csv]),
    shop.folder,
  );
  ran.forEach(({ status, lines }, i) => {
    expect([status, lines.join('\n')]).toEqual([2, expect.stringMatching(cases[i]?.[2] ?? '')]);
  });
  expect(ran).toHaveLength(cases.length);
  expect(shop.state()).toEqual(before);
});

test('the sample is done but for the name its font lacks', patience, async () => {
  const folder = join(projectFolder, 'samples/name-cups');
  const { status, out, lines } = await run([
    'names',
    join(folder, 'names.job.json'),
    join(folder, 'names.csv'),
    '--out',
    shop.at('sample'),
  ]);
  expect(status).toBe(1);
  expect(out).toMatch(/^5 vessels made; 1 of the list left out\nproof: .* hold\n/);
  expect(lines.filter((line) => line.startsWith('look'))).toEqual([]);
});
