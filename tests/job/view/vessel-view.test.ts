// Several pieces on the vessel as a screen shows them: a pattern that fills its tile covers the whole band, once.
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { rolledPieces } from '../../../src/job/pictures/rolled.ts';
import { goresOnVessel } from '../../../src/job/pictures/rolled-gores.ts';
import { draftGores } from '../../../src/job/proof/gores.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { seenInPieces, type VesselView } from '../../../src/job/view/vessel-view.ts';
import { expectWithin } from '../../closeness.ts';
import { pictureEngine } from '../../pictures/compare.ts';
import { setText } from '../a-font.ts';
import { filesOf, madeOf } from '../a-job.ts';

interface GridPoint {
  readonly X: number;
  readonly Y: number;
}
type GridRing = readonly GridPoint[];

/** What is used of clipper-lib (BSL-1.0), which comes without types. */
interface Booleans {
  readonly Clipper: {
    readonly SimplifyPolygons: (rings: readonly GridRing[], fill: number) => readonly GridRing[];
    readonly Area: (ring: GridRing) => number;
  };
  readonly PolyFillType: { readonly pftNonZero: number };
}
const { Clipper, PolyFillType } = createRequire(import.meta.url)('clipper-lib') as Booleans;

const barrel = {
  name: 'barrel',
  use: 'other',
  wall: 'smooth',
  stations: [0, 30, 60, 90, 120].map((height, i) => ({ height, across: [80, 90, 94, 90, 80][i] })),
};
const full = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><path d="M0 0H40V30H0Z"/></svg>`;

/** Rings of path data in straight steps, hundredths of a mm. */
function ringsOf(d: string): readonly GridRing[] {
  return d
    .split('z')
    .filter((ring) => ring !== '')
    .map((ring) => {
      const numbers = (ring.match(/-?\d*\.?\d+/g) ?? []).map((text) => Math.round(Number(text) * 100));
      let [x, y] = [0, 0];
      return Array.from({ length: numbers.length / 2 }, (_, i) => {
        x += numbers[2 * i] ?? 0;
        y += numbers[2 * i + 1] ?? 0;
        return { X: x, Y: y };
      });
    });
}

/** Share of the sheet's box that film covers, as clipper-lib unites it, and as the pieces' areas add up. */
function covered({ layers, sheet: { box } }: VesselView): { readonly united: number; readonly sum: number } {
  const rings = layers.flatMap(({ pieces }) => pieces).flatMap(ringsOf);
  const united = Clipper.SimplifyPolygons(rings, PolyFillType.pftNonZero);
  const areaOf = (all: readonly GridRing[]) =>
    Math.abs(all.reduce((sum, ring) => sum + Clipper.Area(ring), 0)) / 1e4;
  const whole = box.width * box.height;
  return { united: areaOf(united) / whole, sum: areaOf(rings) / whole };
}

test('stacked pieces', async () => {
  const job = { band: { from: 15, to: 90 }, pieces: 'stacked', film: { stretch: 0.005 } };
  const { drafts, blank } = await madeOf({ blank: barrel, job, tile: full });
  expect(drafts.length).toBeGreaterThan(1);
  const [draft] = drafts;
  if (!draft) throw new Error('no piece');
  const { solid } = seenInPieces(draft, rolledPieces(drafts, blank, drafts), () => []);
  const { united, sum } = covered(solid());
  // A piece is a cone beside the true wall: its edges stray by what the film gives, half a percent here.
  expectWithin(united, 1, 0.005);
  expectWithin(sum, 1, 0.005);
  expect(solid().height).toBeCloseTo(120, 1);
});

test('gores', async () => {
  const { normalise } = await pictureEngine();
  const job = {
    name: 'barrel',
    blank: 'b.blank.json',
    pieces: 'gores',
    gores: 10,
    film: { stretch: 0.02 },
    artwork: { file: 'tile.svg' },
  };
  const blank = readBlank(barrel, 'b.blank.json');
  const draft = draftGores({
    job: readJob(job, 't.job.json'),
    jobFile: 't.job.json',
    blank,
    blankFile: 'b.blank.json',
    files: filesOf({ 'tile.svg': full }),
    tools: { normalise, words: () => [], setText },
    gores: { count: 10, joined: 'loose', strip: 0 },
  });
  const { solid, svg } = seenInPieces(draft, goresOnVessel(draft, blank, draft), () => []);
  const { united, sum } = covered(solid());
  expectWithin(united, 1, 0.005);
  expectWithin(sum, 1, 0.005);
  expect(svg()).toContain('<svg');
});
