// Thick coats on walls that bend: the sheet is as long as the wall that it lies on, not as the bare one.
import { beforeAll, describe, expect, test } from 'vitest';
import { proofOfDrafts } from '../../src/job/proof/proof.ts';
import { edgePoint } from '../../src/unroll/template.ts';
import { expectWithin } from '../closeness.ts';
import { folderOf } from './a-folder.ts';
import { leafTile, madeOf } from './a-job.ts';

/** A barrel whose side is an arc of 120 mm, 60 mm up and down from its widest; by close stations. */
const bend = 120;
const barrel = {
  use: 'other',
  wall: 'smooth',
  stations: Array.from({ length: 49 }, (_, i) => {
    const height = i * 2.5;
    return { height, across: 2 * (50 - bend + Math.sqrt(bend ** 2 - (height - 60) ** 2)) };
  }),
};
const half = bend * Math.asin(60 / bend);

/** A cup that steps out to a wider top. */
const stepped = {
  use: 'other',
  wall: 'stepped',
  stations: [
    { height: 0, across: 60 },
    { height: 40, across: 64 },
    { height: 50, across: 80 },
    { height: 100, across: 84 },
  ],
};

const coats = [{ name: 'resin', thickness: 2 }];
const film = { thickness: 0.08, stretch: 0.02 };
/** Of the sheet's middle above the bare wall. */
const off = 2.04;
const tile = leafTile(40, 30);

type Made = Awaited<ReturnType<typeof madeOf>>;

/** Lengths of the seam lines of a job's pieces, from the foot up. */
const seamLengths = ({ drafts }: Made): number[] =>
  drafts.map(({ plan: { template } }) => {
    const { wall, seam, band } = template;
    const [foot, lip] = [band.from, band.to].map((on) => edgePoint(wall, seam.start, on));
    return Math.hypot((lip?.x ?? 0) - (foot?.x ?? 0), (lip?.y ?? 0) - (foot?.y ?? 0));
  });

const sum = (lengths: readonly number[]): number => lengths.reduce((all, length) => all + length, 0);

const failed = ({ proof }: Pick<Made, 'proof'>): string[] =>
  proof.checks.filter(({ pass }) => !pass).map(({ rule }) => rule);

describe('a barrel under 2 mm of resin', () => {
  const band = { from: half - 16, to: half + 14 };
  let [one, stacked, withItem]: (Made | undefined)[] = [];

  beforeAll(async () => {
    one = await madeOf({ blank: barrel, job: { coats, film, band } });
    stacked = await madeOf({
      blank: barrel,
      job: {
        coats,
        film,
        band: { from: 12, to: 108 },
        pieces: 'stacked',
        seam: { style: 'strip', overlap: 0, strip: 10 },
      },
      tile,
    });
    withItem = await madeOf({
      blank: barrel,
      job: { coats, film, band, items: [{ file: 'a.svg', across: 9, at: { turn: 0.5, along: 70 } }] },
      files: { 'a.svg': tile },
    });
  });

  const made = (which: Made | undefined): Made => {
    if (!which) throw new Error('not made');
    return which;
  };

  // Source: the parallel of an arc of radius R at a distance d is an arc of radius R + d.
  test('takes a piece as much longer as its arc is', () => {
    const [length = 0] = seamLengths(made(one));
    expectWithin(length, (30 * (bend + off)) / bend, 2e-4);
    expect(made(one).report.template?.band).toEqual(band);
  });

  test('takes stacked pieces that are as long together, and its proof knows', () => {
    const lengths = seamLengths(made(stacked));
    expect(lengths.length).toBeGreaterThan(2);
    expectWithin(sum(lengths), (96 * (bend + off)) / bend, 5e-4);
    expect(failed(made(stacked))).toEqual([]);
  });

  test('is proved in one piece, and the files of a bare wall do not pass for it', async () => {
    expect(failed(made(one))).toEqual([]);
    const { draft, blank } = made(one);
    const bare = await madeOf({ blank: barrel, job: { film, band } });
    const files = bare.drafts.map(({ cut, guide }) => ({ stem: 'wrap-1', cut, guide }));
    const proof = proofOfDrafts([draft], blank, files);
    expect(failed({ proof })).toEqual(expect.arrayContaining(['finished-edges', 'fits-wall']));
  });

  test('has items where the bare wall has them', () => {
    const { report, draft, proof } = made(withItem);
    const [item] = report.items ?? [];
    // The tile reaches as far above its place as below, mm on the sheet.
    const { reach } = item ?? {};
    const middle = ((reach?.from ?? 0) + (reach?.to ?? 0)) / 2;
    expectWithin(middle, 70, 2e-3);
    expectWithin(draft.plan.lengths.toGrown(70), (70 * (bend + off)) / bend, 1e-3);
    expect(failed({ proof })).toEqual([]);
  });
});

describe('a stepped cup under 2 mm of resin', () => {
  test('takes a piece from corner to corner as long as its coated stretch, and is proved', async () => {
    // The stretch from (32, 40) to (40, 50): its lines moved out by the coats meet those of its neighbours at the mitres.
    const leans = [Math.atan2(2, 40), Math.atan2(8, 10), Math.atan2(2, 50)] as const;
    const from = Math.hypot(2, 40);
    const to = from + Math.hypot(8, 10);
    const made = await madeOf({ blank: stepped, job: { coats, film, band: { from, to } } });
    const due =
      Math.hypot(8, 10) + off * (Math.tan((leans[0] - leans[1]) / 2) + Math.tan((leans[1] - leans[2]) / 2));
    expectWithin(seamLengths(made)[0] ?? 0, due, 1e-3);
    expect(failed(made)).toEqual([]);
  });

  test('keeps lengths away from its corners', async () => {
    const made = await madeOf({ blank: stepped, job: { coats, film, band: { from: 70, to: 90 } } });
    expectWithin(seamLengths(made)[0] ?? 0, 20, 1e-9);
    expect(failed(made)).toEqual([]);
  });

  test('takes stacked pieces over all its stretches', async () => {
    const made = await madeOf({
      blank: stepped,
      job: { coats, film, band: { from: 5, to: 95 }, pieces: 'stacked' },
    });
    expect(failed(made)).toEqual([]);
  });
});

// A report tells heights up the bare wall, and its files are measured on the coats: past a corner they are longer.
test('a motif cut apart on a coated wall that steps is proved from its report too', async () => {
  const dot =
    '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="30mm"><circle cx="15mm" cy="15mm" r="14mm"/></svg>';
  const folder = await folderOf({
    blank: {
      use: 'other',
      wall: 'stepped',
      stations: [
        { height: 0, across: 127 },
        { height: 15.2, across: 130.2 },
        { height: 31.8, across: 138.3 },
        { height: 47.6, across: 131.8 },
      ],
    },
    job: {
      pieces: 'stacked',
      coats: [{ name: 'clear', thickness: 1 }],
      items: [{ file: 'dot.svg', across: 30, at: { turn: 0.5, along: 28 }, apart: true }],
    },
    files: { 'dot.svg': dot },
  });
  expect(folder.failed()).toEqual([]);
});
