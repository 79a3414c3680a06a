// Whole jobs of two hundred, two thousand and twenty thousand shapes, and a list of names: time against the floor, growth, memory.
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writePathData } from '../../src/drawing/path-data.ts';
import { makeFloorReady, refuseOtherBytes } from './floor-ready.ts';
import { type Comparison, compare, counted } from './harness.ts';
import { bin, peakMemory, root, run, runUnder } from './run-node.ts';
import { rowsOfBlobs } from './shapes.ts';

/** A canister that a drawing of so many blobs goes around once: blobs are of one size, so it is as large as they ask. */
function jobOfShapes(
  folder: string,
  columns: number,
  rows: number,
): { readonly job: string; readonly art: string } {
  const step = 5;
  const [across, up] = [columns * step, rows * step];
  const paths = rowsOfBlobs(columns, rows, step).map((contour) => `<path d="${writePathData([contour])}"/>`);
  const art = join(folder, `blobs-${columns * rows}.svg`);
  writeFileSync(
    art,
    `<svg xmlns="http://www.w3.org/2000/svg" width="${across}mm" height="${up}mm" viewBox="0 0 ${across} ${up}">${paths.join('\n')}</svg>`,
  );
  const name = `blobs-${columns * rows}`;
  const stations = [
    { height: 0, girth: across },
    { height: up + 10, girth: across * 1.05 },
  ];
  const blank = { name: 'a canister, invented', use: 'other', stations };
  writeFileSync(join(folder, `${name}.blank.json`), JSON.stringify(blank));
  const job = join(folder, `${name}.job.json`);
  const content = { name, blank: `${name}.blank.json`, artwork: { file: `${name}.svg`, around: 1 } };
  writeFileSync(job, JSON.stringify(content));
  return { job, art };
}

function jobs(folder: string): Comparison[] {
  const sizes = [
    [20, 10, 3],
    [50, 40, 1],
    [200, 100, 1],
  ] as const;
  const made = sizes.map(([columns, rows, rounds]) => {
    const { job, art } = jobOfShapes(folder, columns, rows);
    const [out, floorOut] = [join(folder, `out-${columns}`), join(folder, `floor-${columns}`)];
    const args = [bin, 'make', job, '--no-pictures', '--out', out];
    let peak = 0;
    const make = () => {
      peak = Math.max(peak, peakMemory(args));
      return 0;
    };
    const ready = `${out}-ready`;
    const floorRun = [join(import.meta.dirname, 'make-floor.mjs'), job, out, floorOut];
    let floorPeak = 0;
    const floor = () => {
      floorPeak = Math.max(floorPeak, peakMemory([...floorRun, ready]));
      return 0;
    };
    const time = compare(`make of ${columns * rows} shapes against the floor`, make, floor, {
      rounds,
      warmUp: 0,
      between: () => makeFloorReady(out, ready),
    });
    refuseOtherBytes(out, floorOut);
    const copying = timeOf(() => run(floorRun));
    const copied = counted('the same against a floor that copies text', time.ours, copying, 'ms');
    const memory = counted(`peak memory of that against its input, bytes`, peak, statSync(art).size, 'bytes');
    const overFloor = counted('the same against its floor, as node runs it, bytes', peak, floorPeak, 'bytes');
    return { time, copied, memory, overFloor, count: columns * rows };
  });
  const [small, , large] = made;
  if (!small || !large) return [];
  // What node takes to start grows with nothing.
  const start = compare(
    '',
    () => run(['-e', '0']),
    () => 1,
    { rounds: 5, warmUp: 1 },
  ).ours;
  const exponent =
    Math.log((large.time.ours - start) / (small.time.ours - start)) / Math.log(large.count / small.count);
  return [
    ...made.flatMap(({ time, copied, memory, overFloor }) => [time, copied, memory, overFloor]),
    counted('growth of make from 200 to 20,000 shapes, exponent against 1', exponent, 1, ''),
  ];
}

/** Names to lettering: a row is a vessel. The other side is what was asked: 500 rows in a minute. */
function names(folder: string): Comparison[] {
  // So many that what threads take to begin does not count: a thread begins for every dozen rows.
  const rows = 160;
  const sample = join(root, 'samples/name-cups');
  const [head, ...lines] = readFileSync(join(sample, 'names.csv'), 'utf8').trim().split(/\r?\n/);
  const list = Array.from({ length: rows }, (_, i) => lines[i % lines.length]);
  const csv = join(folder, 'names.csv');
  writeFileSync(csv, [head, ...list].join('\n'));
  const make = (before: readonly string[], out: string) => {
    const args = [bin, 'names', join(sample, 'names.job.json'), csv, '--out', join(folder, out)];
    return timeOf(() => runUnder([...before, process.execPath, ...args]));
  };
  const [both, one] = [make([], 'names'), make(['taskset', '-c', '0'], 'names-one')];
  return [
    counted('names: rows a second, against 500 a minute', rows / (both / 1000), 500 / 60, '/s'),
    counted('names: every core against one (taskset, util-linux)', both, one, 'ms'),
  ];
}

/** ms */
function timeOf(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

export function makingComparisons(): Comparison[] {
  const folder = mkdtempSync(join(tmpdir(), 'seamwright-making-'));
  try {
    return [...jobs(folder), ...names(folder)];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
