// Faults in the middle of writing: `unroll` killed at every call to the file system and in the middle of every file, a run stopped
// by the maker, met by another run, out of room, or its folder gone. The old files stand, or the new ones, and the next run leaves nothing behind.
import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
} from 'node:fs';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { recover } from '../../src/cli/staging.ts';
import { atCall, atCalls, fails, kill } from './at-call.ts';
import { command, patience, run, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => shop.clear());

const names = ['report.json', 'template.cut.svg', 'template.guide.svg'] as const;
const unroll = (overlap: number, folder = 'out') => [
  'unroll',
  'cup.blank.json',
  '--out',
  folder,
  '--overlap',
  `${overlap}`,
];

const textsIn = (folder: string) => names.map((name) => shop.read(`${folder}/${name}`));
const hiddenIn = (folder: string) => readdirSync(shop.at(folder)).filter((name) => name.startsWith('.'));

let older: readonly string[] = [];
let newer: readonly string[] = [];
beforeAll(async () => {
  expect((await run(unroll(9, 'new'), { cwd: shop.folder })).status).toBe(0);
  newer = textsIn('new');
  expect((await run(unroll(6), { cwd: shop.folder })).status).toBe(0);
  older = textsIn('out');
  expect(older.every((text, i) => text !== newer[i])).toBe(true);
}, 60_000);

describe('a run that is killed', () => {
  // Node compiles on its own thread, and nothing for good: that takes a run of half a second a sixth less.
  const soon = { cwd: shop.folder, alone: true, node: ['--single-threaded', '--no-opt'] } as const;
  const filesIn = (folder: string) =>
    new Map(
      readdirSync(shop.at(folder), { withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map(({ name }) => [name, readFileSync(shop.at(`${folder}/${name}`), 'latin1')]),
    );

  test(
    'leaves the old files or the new ones, at whatever call it dies, and in the middle of whatever file',
    patience,
    async () => {
      const [old, next] = [filesIn('out'), filesIn('new')];
      expect([...next].every(([name, text]) => old.get(name) !== text)).toBe(true);
      const ends: string[] = [];
      for (let call = 1; call < 100; call++) {
        rmSync(shop.at('made'), { recursive: true, force: true });
        cpSync(shop.at('out'), shop.at('made'), { recursive: true });
        const hook = atCall(call, kill, { inFiles: true });
        const { status } = await run(unroll(9, 'made'), { ...soon, hook });
        // Every file by itself is whole at any moment.
        const found = filesIn('made');
        for (const name of next.keys()) expect([old.get(name), next.get(name)]).toContain(found.get(name));
        await recover(shop.at('made'));
        const kept = filesIn('made');
        const end = kept.get('report.json') === old.get('report.json') ? 'old' : 'new';
        expect([call, kept]).toEqual([call, end === 'old' ? old : next]);
        ends.push(end);
        if (status === 0) break;
        expect([call, status]).toEqual([call, null]);
      }
      // Killed before they were all written: old. After: new. Every file was met in its middle, before it and while all were moved.
      expect(ends.filter((end) => end === 'old').length).toBeGreaterThan(2 * next.size);
      expect(ends.filter((end) => end === 'new').length).toBeGreaterThan(next.size);
      expect(ends.join(' ')).toMatch(/^(old )+(new ?)+$/);
    },
  );

  test('with its folder new leaves nothing that a next run stumbles on', patience, async () => {
    await run(unroll(6, 'fresh'), { cwd: shop.folder, hook: atCall(5, kill), alone: true });
    expect(hiddenIn('fresh')).toHaveLength(1);
    expect((await run(unroll(6, 'fresh'), { cwd: shop.folder })).status).toBe(0);
    expect(readdirSync(shop.at('fresh')).sort()).toEqual(names);
  });
});

describe('a run that the maker stops', () => {
  // Sent to itself, and time given for it to arrive.
  const stops = (signal: string): string =>
    `process.kill(process.pid, '${signal}'); const end = Date.now() + 200; while (Date.now() < end);`;

  test('ends with 130 and leaves the folder as it was', patience, async () => {
    expect((await run(unroll(6), { cwd: shop.folder })).status).toBe(0);
    const hook = atCall(6, stops('SIGINT'));
    const { status, lines } = await run(unroll(9), { cwd: shop.folder, alone: true, hook });
    expect([status, lines]).toEqual([130, ['stopped: out is as it was']]);
    expect(textsIn('out')).toEqual(older);
    expect(hiddenIn('out')).toEqual([]);
  });

  // Killed there it left its folder without a word.
  test('while it takes its folder says so, and leaves nothing', patience, async () => {
    expect((await run(unroll(6), { cwd: shop.folder })).status).toBe(0);
    const hook = atCalls(`if (name === 'rename') { ${stops('SIGHUP')} }`);
    const { status, lines } = await run(unroll(9), { cwd: shop.folder, alone: true, hook });
    expect([status, lines]).toEqual([129, ['stopped: out is as it was']]);
    expect(textsIn('out')).toEqual(older);
    expect(hiddenIn('out')).toEqual([]);
  });

  test('while a file is on its way takes that away too', patience, async () => {
    expect((await run(unroll(6), { cwd: shop.folder })).status).toBe(0);
    const hook = atCalls(
      `if (count === 6) { ${stops('SIGINT')} } if (count > 6 && name === 'rmSync' && (globalThis.left ??= 3) > 0) { globalThis.left -= 1; ${fails('ENOTEMPTY')} }`,
    );
    const { status } = await run(unroll(9), { cwd: shop.folder, alone: true, hook });
    expect([status, hiddenIn('out')]).toEqual([130, []]);
  });

  // A file that was still being written made the folder it was in stay, and that ended in a stack trace.
  test(
    'while what it leaves can not be taken away says so no less, and the next run takes it away',
    patience,
    async () => {
      expect((await run(unroll(6), { cwd: shop.folder })).status).toBe(0);
      const hook = atCalls(
        `if (count === 6) { ${stops('SIGTERM')} } if (name === 'rmSync') ${fails('ENOTEMPTY')}`,
      );
      const { status, lines } = await run(unroll(9), { cwd: shop.folder, alone: true, hook });
      expect([status, lines]).toEqual([143, ['stopped: out is as it was']]);
      expect(textsIn('out')).toEqual(older);
      await recover(shop.at('out'));
      expect(hiddenIn('out')).toEqual([]);
    },
  );

  // Killed between two of its moves it left old files beside new ones, for the next run to put right.
  test('while its files are moved leaves all of them moved', patience, async () => {
    expect((await run(unroll(6), { cwd: shop.folder })).status).toBe(0);
    // The third of its moves: of the list, of one file, of another.
    const hook = atCalls(
      `globalThis.moves = (globalThis.moves ?? 0) + (name === 'renameSync'); if (name === 'renameSync' && globalThis.moves === 3) { ${stops('SIGTERM')} }`,
    );
    const { status, lines } = await run(unroll(9), { cwd: shop.folder, alone: true, hook });
    expect([status, lines]).toEqual([143, ['stopped once all was written to out']]);
    expect(textsIn('out')).toEqual(newer);
    expect(hiddenIn('out')).toEqual([]);
  });
});

test(
  'a run whose files are whole but can not all be moved says so, and the next moves them',
  patience,
  async () => {
    expect((await run(unroll(6), { cwd: shop.folder })).status).toBe(0);
    // The third of its moves: of the list, of one file, of another.
    const fault = `globalThis.moves = (globalThis.moves ?? 0) + (name === 'renameSync'); if (name === 'renameSync' && globalThis.moves === 3) ${fails('EIO')}`;
    const { status, lines } = await run(unroll(9), { cwd: shop.folder, hook: atCalls(fault) });
    expect([status, lines]).toEqual([2, [expect.stringMatching(/^out: can't be written to \(EIO\)/)]]);
    expect(hiddenIn('out')).toHaveLength(1);
    await recover(shop.at('out'));
    expect(textsIn('out')).toEqual(newer);
    expect(hiddenIn('out')).toEqual([]);
  },
);

test(
  'a folder that is a link is written to; a file that is one is replaced, and what it led to stays',
  patience,
  async () => {
    shop.write('kept/far.txt', 'dear to me');
    mkdirSync(shop.at('there'));
    symlinkSync(shop.at('there'), shop.at('link'));
    symlinkSync('../kept/far.txt', shop.at('there/report.json'));
    symlinkSync('../kept/nothing', shop.at('there/template.cut.svg'));
    expect((await run(unroll(6, 'link'), { cwd: shop.folder })).status).toBe(0);
    expect(textsIn('there')).toEqual(older);
    expect(readdirSync(shop.at('kept'))).toEqual(['far.txt']);
    expect(shop.read('kept/far.txt')).toBe('dear to me');
    for (const [from, to] of [
      ['nowhere', 'dangling'],
      ['round', 'round'],
    ] as const) {
      symlinkSync(from, shop.at(to));
      const { status, lines } = await run(unroll(6, to), { cwd: shop.folder });
      expect([status, lines]).toEqual([2, [expect.stringMatching(/can't be written to \((ENOENT|ELOOP)\)/)]]);
    }
  },
);

describe('what no run of ours left under its name', () => {
  const names = (files: readonly string[]) => JSON.stringify(files);
  const left = '.seamwright-writing';
  test.each([
    ['a note that the current cut off', { [`${left}/owner.json`]: '', [`${left}/ready.json`]: '' }],
    ['a note that is none', { [`${left}/owner.json`]: 'null', [`${left}/ready.json`]: '{"a":1}' }],
    [
      'a list that names files elsewhere',
      {
        [`${left}/owner.json`]: '{"pid":"none"}',
        [`${left}/ready.json`]: names(['../../../dear.txt', 'x/../../../../dear.txt']),
      },
    ],
    ['nothing', { [`${left}/files/report.json`]: 'half' }],
  ])('%s: is taken away, and moves nothing', patience, async (_, files) => {
    rmSync(shop.at('odd'), { recursive: true, force: true });
    shop.write('dear.txt', 'dear to me');
    expect((await run(unroll(6, 'odd'), { cwd: shop.folder })).status).toBe(0);
    for (const [file, text] of Object.entries(files)) shop.write(`odd/${file}`, text);
    const { status } = await run(['prove', 'odd'], { cwd: shop.folder });
    // `unroll` leaves no job to prove by: that is what is told, after the folder was put right.
    expect(status).toBe(2);
    expect(textsIn('odd')).toEqual(older);
    expect(hiddenIn('odd')).toEqual([]);
    expect(shop.read('dear.txt')).toBe('dear to me');
  });

  test.each([
    ['a list whose files stand elsewhere', { from: 'vault', to: `${left}/files` }, 'dear.txt'],
    ['a list that goes elsewhere by a link', { from: 'vault', to: 'sub' }, 'sub/dear.txt'],
    ['a link to nothing', { from: 'nowhere', to: left }, undefined],
  ])('%s: is taken away, and moves nothing', patience, async (_, { from, to }, listed) => {
    rmSync(shop.at('odd'), { recursive: true, force: true });
    shop.write('vault/dear.txt', 'dear to me');
    mkdirSync(shop.at('odd'));
    if (listed !== undefined) {
      shop.write(`odd/${left}/ready.json`, names([listed]));
      if (to === 'sub') shop.write(`odd/${left}/files/${listed}`, 'instead');
    }
    symlinkSync(shop.at(from), shop.at(`odd/${to}`));
    expect((await run(unroll(6, 'odd'), { cwd: shop.folder })).status).toBe(0);
    expect(textsIn('odd')).toEqual(older);
    expect(hiddenIn('odd')).toEqual([]);
    expect(readdirSync(shop.at('vault'))).toEqual(['dear.txt']);
    expect(shop.read('vault/dear.txt')).toBe('dear to me');
  });

  test('a folder where one of its files goes: is told, and moved once that is gone', patience, async () => {
    const ready = { [`${left}/ready.json`]: names(['report.json']), [`${left}/files/report.json`]: 'whole' };
    for (const [file, text] of Object.entries(ready)) shop.write(`way/${file}`, text);
    mkdirSync(shop.at('way/report.json'));
    for (const args of [unroll(6, 'way'), ['prove', 'way']]) {
      const { status, lines } = await run(args, { cwd: shop.folder });
      expect([status, lines]).toEqual([
        2,
        [expect.stringMatching(/way\/report\.json: is a folder, and a file/)],
      ]);
    }
    rmSync(shop.at('way/report.json'), { recursive: true });
    await run(['prove', 'way'], { cwd: shop.folder });
    expect(shop.read('way/report.json')).toBe('whole');
    expect(hiddenIn('way')).toEqual([]);
  });
});

test(
  'of two runs into one folder the second is told, or comes after; what stands is of one of them',
  patience,
  async () => {
    const ran = await Promise.all(
      [6, 9].map((overlap) => run(unroll(overlap, 'both'), { cwd: shop.folder, alone: true })),
    );
    for (const { status, lines } of ran)
      if (status !== 0) {
        expect(status).toBe(2);
        expect(lines.join()).toMatch(/^both: another run is writing here; wait for it/);
      }
    expect(ran.some(({ status }) => status === 0)).toBe(true);
    expect([older, newer]).toContainEqual(textsIn('both'));
    expect(hiddenIn('both')).toEqual([]);
  },
);

test('a run that is writing is not disturbed by another, nor by prove', patience, async () => {
  const slow = spawn(
    process.execPath,
    [
      '--import',
      atCall(6, `while (!fs.existsSync(${JSON.stringify(shop.at('go'))}));`),
      command,
      ...unroll(9, 'slow'),
    ],
    { cwd: shop.folder },
  );
  onTestFinished(() => void slow.kill('SIGKILL'));
  const done = new Promise((resolve) => slow.on('close', resolve));
  mkdirSync(shop.at('slow'), { recursive: true });
  while (hiddenIn('slow').length === 0) await new Promise((resolve) => setTimeout(resolve, 20));
  for (const args of [unroll(6, 'slow'), ['prove', 'slow']]) {
    const { status, lines } = await run(args, { cwd: shop.folder });
    expect([status, lines.join()]).toEqual([2, expect.stringMatching(/another run is writing here/)]);
  }
  shop.write('go', '');
  expect(await done).toBe(0);
  expect(textsIn('slow')).toEqual(newer);
});

describe('a place that can not be written', () => {
  test(
    'for want of room: the real limit of a file, in words, and the old files stand',
    patience,
    async () => {
      expect((await run(unroll(6), { cwd: shop.folder })).status).toBe(0);
      // 100 blocks of 512 bytes: the guide is larger than that.
      const shell = `ulimit -f 100; exec ${process.execPath} ${command} ${unroll(9).join(' ')}`;
      const { status, stderr } = spawnSync('sh', ['-c', shell], { cwd: shop.folder, encoding: 'utf8' });
      expect(stderr).toMatch(/^out: can't be written to \(EFBIG\); give another folder with --out\n$/);
      expect(status).toBe(2);
      expect(textsIn('out')).toEqual(older);
      expect(hiddenIn('out')).toEqual([]);
    },
  );

  test('because it may only be read: old files in it stand', patience, async () => {
    expect((await run(unroll(6, 'shut'), { cwd: shop.folder })).status).toBe(0);
    const before = readdirSync(shop.at('shut'));
    chmodSync(shop.folder, 0o755);
    chmodSync(shop.at('shut'), 0o555);
    onTestFinished(() => chmodSync(shop.at('shut'), 0o755));
    // The superuser may write anywhere: a run of theirs is made one of nobody's.
    const nobody = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
    const options = { cwd: shop.folder, encoding: 'utf8', ...nobody } as const;
    const { status, stderr } = spawnSync(process.execPath, [command, ...unroll(9, 'shut')], options);
    expect(stderr).toBe(
      "shut: can't be written to (EACCES): it may only be read; give another folder with --out\n",
    );
    expect(status).toBe(2);
    expect(textsIn('shut')).toEqual(older);
    expect(readdirSync(shop.at('shut'))).toEqual(before);
  });

  test('because it is taken away in the middle', patience, async () => {
    const gone = `fs.rmSync(${JSON.stringify(shop.at('gone'))}, { recursive: true, force: true })`;
    const { status, lines } = await run(unroll(6, 'gone'), { cwd: shop.folder, hook: atCall(6, gone) });
    expect(status).toBe(2);
    expect(lines).toEqual([expect.stringMatching(/^gone: can't be written to \(ENOENT\)/)]);
  });

  // Node's own way of making folders went round without end there.
  test.runIf(existsSync('/proc/self'))('because the system lets none be made there', patience, () => {
    const words = unroll(6, '/proc/self/wraps/cup');
    const options = { cwd: shop.folder, encoding: 'utf8', timeout: 60_000, killSignal: 'SIGKILL' } as const;
    const { status, stderr } = spawnSync(process.execPath, [command, ...words], options);
    expect([status, stderr]).toEqual([
      2,
      expect.stringMatching(/can't be written to \(ENOENT\); give another/),
    ]);
  });

  test('several that lie in one another are made', patience, async () => {
    expect((await run(unroll(6, 'one/in/another'), { cwd: shop.folder })).status).toBe(0);
    expect(textsIn('one/in/another')).toEqual(older);
  });

  test('because it is a file, or lies in one', patience, async () => {
    shop.write('taken', 'a file');
    for (const folder of ['taken', 'taken/deeper']) {
      const { status, lines } = await run(unroll(6, folder), { cwd: shop.folder });
      expect(status).toBe(2);
      expect(lines).toEqual([
        expect.stringMatching(
          new RegExp(`^${folder}: can't be written to \\((EEXIST|ENOTDIR)\\): a file has its name`),
        ),
      ]);
    }
    expect(shop.read('taken')).toBe('a file');
    rmSync(shop.at('taken'));
  });
});
