// A search for less film that the maker stops: what was found so far is delivered whole.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { command, patience, run } from './run.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'seamwright-nest-'));
  const stations = [
    { height: 0, across: 62 },
    { height: 110, across: 80 },
  ];
  writeFileSync(join(folder, 'a.blank.json'), JSON.stringify({ name: 'cup', use: 'other', stations }));
  const job = { name: 'batch', blank: 'a.blank.json', batch: 12, sheet: { across: 600, margin: 8 } };
  writeFileSync(join(folder, 'a.job.json'), JSON.stringify(job));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Sheets {
  readonly proof: { readonly pass: boolean };
  readonly sheets: readonly { readonly up: number; readonly pieces: readonly unknown[] }[];
  readonly files: readonly { readonly file: string; readonly sheet?: number }[];
}

const reportIn = (out: string): Sheets => JSON.parse(readFileSync(join(folder, out, 'report.json'), 'utf8'));

test(
  'Ctrl-C ends a search that would take an hour, and the best so far is delivered and proved',
  patience,
  async () => {
    const args = [command, 'make', 'a.job.json', '--nest', '3600', '--no-pictures', '--out', 'stopped'];
    const child = spawn(process.execPath, args, { cwd: folder });
    let [said, isTold] = ['', false];
    child.stderr.on('data', (part: Buffer) => {
      said += part.toString();
      if (isTold || !said.includes('Ctrl-C keeps it')) return;
      isTold = true;
      child.kill('SIGINT');
    });
    const status = await new Promise((resolve) => child.on('close', resolve));
    expect(status).toBe(0);
    expect(said).toContain('stopped, the best so far is kept');
    const { sheets, proof, files } = reportIn('stopped');
    expect(sheets.flatMap(({ pieces }) => pieces)).toHaveLength(12);
    expect(proof.pass).toBe(true);
    // The sheet itself, and the piece that is cut from it.
    expect(files.filter(({ sheet }) => sheet === 1).map(({ file }) => file)).toEqual([
      'wrap.cut.svg',
      'wrap.guide.svg',
      'sheet-1.cut.svg',
    ]);
    expect((await run(['prove', 'stopped'], { cwd: folder })).status).toBe(0);
    rmSync(join(folder, 'stopped', 'sheet-1.cut.svg'));
    expect((await run(['prove', 'stopped'], { cwd: folder })).status).toBe(1);
  },
);

test(
  'a longer search takes no more film than the short one, which is the same every time',
  patience,
  async () => {
    const make = (out: string, ...more: string[]) =>
      run(['make', 'a.job.json', '--no-pictures', '--out', out, ...more], { cwd: folder });
    await make('short');
    await make('again');
    await make('long', '--nest', '4');
    const text = (out: string) => readFileSync(join(folder, out, 'sheet-1.cut.svg'), 'utf8');
    expect(text('again')).toBe(text('short'));
    const upOf = (out: string) => reportIn(out).sheets[0]?.up ?? Number.NaN;
    expect(upOf('long')).toBeLessThanOrEqual(upOf('short'));
  },
);

test('seconds that are none are refused', patience, async () => {
  const { status, lines } = await run(['make', 'a.job.json', '--nest', 'long'], { cwd: folder });
  expect(status).toBe(2);
  expect(lines.join()).toMatch(/--nest.*will not do here/);
});
