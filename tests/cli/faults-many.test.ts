// What goes wrong on the disk, met by the commands that write most: `make`, and `names`, whose rows have folders of their own.
// `faults.test.ts` has the same for one command at every call, `killed.test.ts` the end of all of them.
import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { randomFrom } from '../geometry/drawn.ts';
import { atCall, atCalls, fails, inFs } from './at-call.ts';
import { aJob, command, patience, run, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => {
  chmodSync(shop.folder, 0o755);
  shop.clear();
});

shop.write('make.job.json', aJob());
shop.write('names.job.json', {
  name: '{name}',
  blank: { stations: [0, 50].map((height) => ({ height, girth: 250 })), use: 'other' },
  artwork: { file: 'dots.svg' },
  sheet: { across: 300, up: 200, margin: 5 },
});
shop.write('names.csv', 'name\nPebble\nKelp\n');

const commands = [
  { name: 'make', words: ['make', 'make.job.json', '--no-pictures'], own: 'report.json', seed: 11 },
  { name: 'names', words: ['names', 'names.job.json', 'names.csv'], own: 'names.json', seed: 12 },
] as const;

/** Every file under a folder, without its content; hidden ones too. */
const filesIn = (folder: string): readonly string[] =>
  readdirSync(shop.at(folder), { recursive: true, encoding: 'utf8' }).sort();
const hiddenIn = (folder: string) => filesIn(folder).filter((name) => name.includes('.seamwright'));

describe.each(commands)('$name', ({ name, words, own, seed }) => {
  const into = (folder: string) => [...words, '--out', `${name}/${folder}`];
  // Rows are made in threads, into which a hook comes only with a process of its own.
  const alone = name === 'names';
  const inShop = (folder: string, hook?: string) =>
    run(into(folder), { cwd: shop.folder, ...(hook === undefined ? {} : { hook, alone }) });
  const refusal = (folder: string, code: string) =>
    expect.stringMatching(
      new RegExp(
        `^${name}/${folder}(/\\w+)?: can't be written to \\(${code}\\)(: [^;]+)?; give another folder with --out$`,
      ),
    );

  beforeAll(async () => {
    // Done, or done and something to look at.
    expect((await inShop('whole')).status).toBeLessThan(2);
  }, 120_000);

  test('for want of room: is told, and what stands is nothing, or whole rows', patience, async () => {
    const random = randomFrom(seed);
    // `faults.test.ts` has such a fault at the other calls of a run.
    for (let i = 0; i < (name === 'names' ? 2 : 1); i++) {
      const call = 3 + Math.floor(random() * 16);
      const { status, lines } = await inShop(`full-${i}`, atCall(call, fails('ENOSPC')));
      expect([call, status, lines.at(-1)]).toEqual([call, 2, refusal(`full-${i}`, 'ENOSPC')]);
      expect(hiddenIn(`${name}/full-${i}`)).toEqual([]);
      // Of a list some rows may be made, each of them whole; of another no more than its folder.
      for (const entry of readdirSync(shop.at(`${name}/full-${i}`)))
        expect([[], filesIn(`${name}/whole/${entry}`)]).toContainEqual(filesIn(`${name}/full-${i}/${entry}`));
    }
  });

  test('a folder that may only be read: is told, and nothing is written', patience, async () => {
    mkdirSync(shop.at(`${name}/shut`));
    chmodSync(shop.folder, 0o755);
    chmodSync(shop.at(`${name}/shut`), 0o555);
    onTestFinished(() => chmodSync(shop.at(`${name}/shut`), 0o755));
    // The superuser may write anywhere: a run of theirs is made one of nobody's.
    const nobody = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
    const options = { cwd: shop.folder, encoding: 'utf8', ...nobody } as const;
    const { status, stderr } = spawnSync(process.execPath, [command, ...into('shut')], options);
    expect([status, stderr.trimEnd().split('\n').at(-1)]).toEqual([2, refusal('shut', 'EACCES')]);
    expect(filesIn(`${name}/shut`)).toEqual([]);
  });

  test('a folder that is taken away in the middle: is told', patience, async () => {
    const gone = `rmSync(${JSON.stringify(shop.at(`${name}/gone`))}, { recursive: true, force: true })`;
    // Of a list: once its rows are made, and the sheets that they share are laid from their files.
    const act = name === 'make' ? atCall(8, gone) : atCall(5, gone);
    const { status, lines } = await inShop('gone', act);
    expect(status).toBe(2);
    expect(lines.at(-1)).toMatch(
      /^\S+: (can't be written to \(ENOENT\); give another|there is no such file; check)/,
    );
    expect(existsSync(shop.at(`${name}/gone/${own}`))).toBe(false);
  });

  test('a name of its own that a folder has: is told, and nothing else is touched', patience, async () => {
    mkdirSync(shop.at(`${name}/taken/${own}`), { recursive: true });
    const { status, lines } = await inShop('taken');
    expect(status).toBe(2);
    expect(lines.at(-1)).toBe(
      `${name}/taken/${own}: is a folder, and a file of this name is to be written; move it away, or give another folder with --out`,
    );
    // Rows are whole, and found as made by the next run.
    expect(readdirSync(shop.at(`${name}/taken`)).sort()).toEqual(
      name === 'make' ? [own] : ['kelp', own, 'pebble'],
    );
    expect(hiddenIn(`${name}/taken`)).toEqual([]);
  });

  test('two at once into one folder: one is done, the other told or done after it', patience, async () => {
    const ran = await Promise.all([1, 2].map(() => run(into('both'), { cwd: shop.folder, alone: true })));
    for (const { status, lines } of ran)
      if (status !== 0 && status !== 1)
        expect([status, lines.at(-1)]).toEqual([
          2,
          expect.stringMatching(/: another run is writing here; wait for/),
        ]);
    expect(ran.some(({ status }) => status === 0 || status === 1)).toBe(true);
    expect(filesIn(`${name}/both`)).toEqual(filesIn(`${name}/whole`));
  });
});

// Nothing was heard until all of it was worked out: of a large job half a minute.
test('make: stopped while its pieces are proved, hears it before the next step', patience, async () => {
  const act = `const plain = setImmediate; globalThis.setImmediate = (...rest) => { process.kill(process.pid, 'SIGTERM'); const end = Date.now() + 100; while (Date.now() < end); return plain(...rest); }`;
  const words = ['make', 'make.job.json', '--no-pictures', '--out', 'make/ended'];
  const { status, lines } = await run(words, { cwd: shop.folder, alone: true, hook: inFs(act) });
  expect([status, lines, filesIn('make/ended')]).toEqual([143, ['stopped: make/ended is as it was'], []]);
});

test(
  'names: stopped while a row is written, leaves no half of it, and says how far it came',
  patience,
  async () => {
    // From the thread that makes rows, once it has begun the second of them, with time for it to arrive.
    const act = `globalThis.begun = (globalThis.begun ?? 0) + (name === 'rename'); if (isRow && begun === 2 && name === 'writeFile') { process.kill(process.pid, 'SIGTERM'); const end = Date.now() + 300; while (Date.now() < end); }`;
    const { status, lines } = await run(['names', 'names.job.json', 'names.csv', '--out', 'names/ended'], {
      cwd: shop.folder,
      alone: true,
      hook: atCalls(act),
    });
    expect([status, lines]).toEqual([
      143,
      ['names: stopped with 1 of 2 made; the same command goes on from there'],
    ]);
    expect(hiddenIn('names/ended')).toEqual([]);
  },
);

test('names: a file that has the name of a row: is told, and stays', patience, async () => {
  shop.write('names/odd/kelp', 'dear to me');
  const { status, lines } = await run(['names', 'names.job.json', 'names.csv', '--out', 'names/odd'], {
    cwd: shop.folder,
  });
  expect(status).toBe(2);
  expect(lines.at(-1)).toMatch(/^names\/odd\/kelp: can't be written to \((EEXIST|ENOTDIR)\)/);
  expect(shop.read('names/odd/kelp')).toBe('dear to me');
});
