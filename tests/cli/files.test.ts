// How files reach the disk: whole or not at all, whatever happens to the run; and a fault of ours.
import { spawnSync } from 'node:child_process';
import { existsSync, linkSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { FilesTogether } from '../../src/cli/files.ts';
import { withStatus } from '../../src/cli/output.ts';
import { Refused } from '../../src/finding.ts';
import { fails, inFs, kill } from './at-call.ts';
import { command, patience, run, Workshop } from './run.ts';

const shop = new Workshop();
const unroll = (...rest: string[]) => ['unroll', 'cup.blank.json', '--out', 'out', ...rest];

beforeAll(async () => {
  expect((await run(unroll(), { cwd: shop.folder })).status).toBe(0);
}, 30_000);
afterAll(() => shop.clear());

describe('files that are there already', () => {
  test('are replaced, never written into: whoever holds the old one keeps it whole', patience, async () => {
    const old = shop.read('out/template.cut.svg');
    linkSync(shop.at('out/template.cut.svg'), shop.at('held.svg'));
    expect((await run(unroll('--overlap', '9'), { cwd: shop.folder })).status).toBe(0);
    expect(shop.read('held.svg')).toBe(old);
    expect(shop.read('out/template.cut.svg')).not.toBe(old);
    expect(readdirSync(shop.at('out')).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  test('stay as they were when a run dies while it writes', patience, async () => {
    const before = readFileSync(shop.at('out/template.cut.svg'));
    const dies = inFs(`const write = fs.promises.writeFile; let count = 0;
      fs.promises.writeFile = (...args) => (++count === 3 ? ${kill} : write(...args))`);
    const { status } = await run(unroll('--overlap', '12'), { cwd: shop.folder, hook: dies, alone: true });
    expect(status).toBeNull();
    expect(readFileSync(shop.at('out/template.cut.svg')).equals(before)).toBe(true);
  });

  test('stay as they were, all of them, when a folder stands where one is to go', patience, async () => {
    mkdirSync(shop.at('blocked/report.json'), { recursive: true });
    shop.write('blocked/template.cut.svg', 'dear to me');
    const { status, lines } = await run(['unroll', 'cup.blank.json', '--out', 'blocked'], {
      cwd: shop.folder,
    });
    expect(status).toBe(2);
    expect(lines.at(-1)).toMatch(
      /^blocked\/report\.json: is a folder, and a file of this name is to be written; move/,
    );
    expect(shop.read('blocked/template.cut.svg')).toBe('dear to me');
    expect(readdirSync(shop.at('blocked')).sort()).toEqual(['report.json', 'template.cut.svg']);
  });

  test('stay as they were when the disk is full, which is told', patience, async () => {
    const before = shop.state();
    const full = inFs(`fs.promises.writeFile = async () => { ${fails('ENOSPC')} }`);
    const { status, lines } = await run(['unroll', 'cup.blank.json', '--out', 'out'], {
      cwd: shop.folder,
      hook: full,
    });
    expect(status).toBe(2);
    expect(lines).toEqual([
      expect.stringMatching(/^out: can't be written to \(ENOSPC\): the disk is full; give another folder/),
    ]);
    // What the run that died before left is taken away; nothing else has changed.
    const kept = (state: readonly string[]) =>
      state.filter((line) => !/^out[ /]\.?(?!template|report)/.test(line));
    expect(kept(shop.state())).toEqual(kept(before));
    expect(readdirSync(shop.at('out')).filter((name) => name.startsWith('.'))).toEqual([]);
  });
});

describe('a fault of ours', () => {
  const broken = inFs(`const read = fs.promises.readFile;
    fs.promises.readFile = (path, ...rest) => (String(path).endsWith('.ttf') ? Promise.reject(new Error('lettering is gone')) : read(path, ...rest))`);

  test('ends with 70, in words and without a stack trace; nothing is written', patience, async () => {
    const { status, out, lines } = await run(['unroll', 'cup.blank.json', '--out', 'new'], {
      cwd: shop.folder,
      hook: broken,
      alone: true,
    });
    expect([status, out]).toEqual([70, '']);
    expect(lines).toEqual([
      "a fault of seamwright's own: lettering is gone",
      'run again with --debug and report what it prints',
    ]);
    expect(existsSync(shop.at('new'))).toBe(false);
  });

  test('shows where it came from with --debug', patience, async () => {
    const { status, lines } = await run(['unroll', 'cup.blank.json', '--out', 'new', '--debug'], {
      cwd: shop.folder,
      hook: broken,
      alone: true,
    });
    expect(status).toBe(70);
    expect(lines.some((line) => /^\s+at /.test(line))).toBe(true);
  });
});

describe('what is printed and can not be written', () => {
  // Linux: a device that is always full, full(4).
  test.runIf(existsSync('/dev/full'))('is said, and the files are there', patience, () => {
    const begin = `exec ${process.execPath} ${command} blank cup.blank.json --out`;
    const ran = (words: string) =>
      spawnSync('sh', ['-c', `${begin} ${words}`], { cwd: shop.folder, encoding: 'utf8' });
    const { status, stderr } = ran('full --json > /dev/full');
    expect([status, stderr]).toEqual([1, 'look: what was to be printed is not all written (ENOSPC)\n']);
    expect(readdirSync(shop.at('full'))).toContain('profile.svg');
  });
});

test('a folder that is gone is no place to run in, and that is said', patience, () => {
  mkdirSync(shop.at('here'));
  const shell = `rmdir ../here; exec ${process.execPath} ${command} unroll --height 90 --foot-across 80 --lip-across 80 --out ../there`;
  const { status, stderr } = spawnSync('sh', ['-c', shell], { cwd: shop.at('here'), encoding: 'utf8' });
  expect([status, stderr]).toEqual([
    2,
    'the folder that this is run in is gone; go to another one, and run it there\n',
  ]);
  expect(existsSync(shop.at('there'))).toBe(false);
});

test('a reader that stops reading, as head does, is no fault', patience, async () => {
  const { status, lines } = await run(['blank', 'cup.blank.json', '--json'], {
    cwd: shop.folder,
    deaf: true,
  });
  expect(lines).toEqual([]);
  expect(status).toBe(0);
});

test('files that are read together are refused once they hold more than 100 MB, before the next is read', async () => {
  const together = new FilesTogether();
  let read = 0;
  const next = async () => {
    read++;
    return new Uint8Array(40_000_000);
  };
  const fault = await (async () => {
    for (let i = 0; i < 200; i++)
      await together.read(next, { file: 'a.job.json', key: `artwork.over[${i}]` });
  })().catch((error: unknown) => error);
  expect(fault).toBeInstanceOf(Refused);
  expect(String(fault)).toMatch(
    /a\.job\.json: artwork\.over\[2\]: with the files before it comes to 120 MB; up to 100 MB/,
  );
  expect(read).toBe(3);
});

test('a system that lets no more files be opened is told, and is no fault of ours', async () => {
  const said: unknown[] = [];
  const write = vi.spyOn(process.stderr, 'write').mockImplementation((text) => said.push(text) > 0);
  const before = process.exitCode;
  await withStatus({ json: false, debug: false, units: 'mm' }, () =>
    Promise.reject(Object.assign(new Error('EMFILE: too many open files'), { code: 'EMFILE' })),
  );
  write.mockRestore();
  const status = process.exitCode;
  process.exitCode = before;
  expect([status, said]).toEqual([
    2,
    [expect.stringMatching(/^the system lets no more files be opened \(EMFILE\)/)],
  ]);
});

test('a flag as long as the command line is told by its beginning and end', async () => {
  const { status, lines } = await run(['make', `--${'x'.repeat(1e5)}`], { cwd: shop.folder });
  expect([status, lines]).toEqual([2, [expect.stringMatching(/^unknown option '--x+…x+'; add --help/)]]);
  expect(lines.join('').length).toBeLessThan(1000);
});
