// Whole commands against node's own start-up and against the floor: the same bytes in and out with the same libraries.
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeFloorReady, refuseOtherBytes } from './floor-ready.ts';
import { type Comparison, compare, counted } from './harness.ts';
import { bin, root, run } from './run-node.ts';

const rounds = { rounds: 9, warmUp: 1 };
/** Jobs of seconds: fewer rounds keep the whole table under five minutes. */
const slowRounds = { rounds: 3, warmUp: 0 };

const floorFile = join(import.meta.dirname, 'make-floor.mjs');

/** A cup job whose tile is drawn so small that this many go around. */
function jobWithRepeats(folder: string, around: number): string {
  const side = 250 / around;
  const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="${side}mm" height="${10}mm" viewBox="0 0 20 20" preserveAspectRatio="none"><path d="M4 4C8 2 12 2 16 4C18 8 18 12 16 16C12 18 8 18 4 16C2 12 2 8 4 4Z"/><path d="M-3 10C-1 8 1 8 3 10C1 12 -1 12 -3 10Z"/><path d="M17 10C19 8 21 8 23 10C21 12 19 12 17 10Z"/></svg>`;
  writeFileSync(join(folder, `tile-${around}.svg`), tile);
  const job = {
    name: `${around} around`,
    blank: {
      stations: [
        { height: 0, across: 62 },
        { height: 150, girth: 270.2 },
      ],
    },
    artwork: { file: `tile-${around}.svg`, around, scale: 'across' },
  };
  const file = join(folder, `repeats-${around}.job.json`);
  writeFileSync(file, JSON.stringify(job));
  return file;
}

/** Twenty and two hundred repeats around one cup: time and bytes. */
export function growthComparisons(): Comparison[] {
  const folder = mkdtempSync(join(tmpdir(), 'seamwright-growth-'));
  try {
    return growth(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function growth(folder: string): Comparison[] {
  const [few, many] = [20, 200].map((around) => {
    const job = jobWithRepeats(folder, around);
    const out = join(folder, `out-${around}`);
    return { make: () => run([bin, 'make', job, '--no-pictures', '--out', out]), out };
  });
  if (!few || !many) return [];
  const time = compare('make: 200 repeats against 20', many.make, few.make, { rounds: 1, warmUp: 0 });
  const bytes = (out: string) => statSync(join(out, 'wrap.cut.svg')).size;
  return [time, counted('bytes: 200 repeats against 20', bytes(many.out), bytes(few.out), 'bytes')];
}

export function commandComparisons(): Comparison[] {
  const folder = mkdtempSync(join(tmpdir(), 'seamwright-speed-'));
  try {
    const job = join(root, 'samples/tapered-cup/cup.job.json');
    const out = join(folder, 'out');
    const make = () => run([bin, 'make', job, '--no-pictures', '--out', out]);
    make();
    const ready = join(folder, 'ready');
    makeFloorReady(out, ready);
    const floor = () => run([floorFile, job, out, join(folder, 'floor'), ready]);
    const copying = () => run([floorFile, job, out, join(folder, 'floor-copied')]);
    const shown = join(folder, 'shown');
    const makeAll = () => run([bin, 'make', job, '--out', shown]);
    // Its drawings to be cut are the same ones.
    const floorAll = () => run([floorFile, job, shown, join(folder, 'floor-shown'), ready]);
    const bare = () => run(['-e', '0']);
    const comparisons = [
      compare('--help against bare node', () => run([bin, '--help']), bare, rounds),
      compare('make of the tapered cup against the floor', make, floor, slowRounds),
      compare('the same against a floor that copies text', make, copying, { rounds: 1, warmUp: 0 }),
      compare('the same with its pictures and pages', makeAll, floorAll, { rounds: 1, warmUp: 0 }),
    ];
    refuseOtherBytes(out, join(folder, 'floor'));
    refuseOtherBytes(shown, join(folder, 'floor-shown'));
    return comparisons;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
