// The edges of the band from what is typed to what is told; sizes by the drawing itself.
import { expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { inverse, movePoint } from '../../src/geometry/affine.ts';
import { edgeFindings } from '../../src/job/closing/edge-findings.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { jobContent } from '../../src/job/typed/write-job.ts';
import { girthAt, toWall } from '../../src/unroll/flat-wall.ts';
import { expectWithin } from '../closeness.ts';
import { chordPoints } from '../geometry/drawn.ts';
import { madeOf } from './a-job.ts';

const blank = {
  use: 'other',
  stations: [
    { height: 0, across: 80 },
    { height: 120, across: 80 },
  ],
};
/** A dot of radius 6 in the middle of a tile of 40 by 30, and a speck 1 mm beside it. */
const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><circle cx="20" cy="15" r="6"/><circle cx="29" cy="15" r="2"/></svg>`;
const made = (job: object, artwork: object = {}) =>
  madeOf({ blank, job: { band: { from: 10, to: 100 }, ...job }, artwork, tile });
const rules = ({ report }: Awaited<ReturnType<typeof made>>) => report.checks.map(({ rule }) => rule);

test('edges that fade leave out whole motifs, count them, and say what counts as one', async () => {
  const faded = await made({ edges: 'fade', band: { from: 10, to: 86 } });
  const told = faded.report.checks.filter(({ rule }) => rule === 'faded');
  // 76 mm up are 2 rows of 31.4 mm and a piece of a third, which the lip edge cuts in all 6 repeats around.
  expect(told.map(({ says }) => says)).toEqual([
    expect.stringMatching(
      /^6 motifs that the lip edge would cut are left out; pieces up to 1\.?\d* mm apart count as one motif/,
    ),
  ]);
  expect(rules(faded)).not.toContain('sliver');
  expect(faded.proof.pass).toBe(true);
});

// The piece above laid its part of such a motif: only the piece below knew of the edge.
test('what the edge of a stack cuts is left out of every piece that it reaches into', async () => {
  const stepped = {
    ...blank,
    wall: 'stepped',
    stations: [
      { height: 0, across: 80 },
      { height: 20, across: 80 },
      { height: 120, across: 88 },
    ],
  };
  // On the lower border of its tile, which stands on the foot edge: a dot reaches from 8 mm below that to 8 mm up, and the joint is 5 mm up.
  const onBorder = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><circle cx="20" cy="0" r="8"/><circle cx="20" cy="30" r="8"/></svg>`;
  const { drafts, report, proof } = await madeOf({
    blank: stepped,
    job: { edges: 'fade', pieces: 'stacked', band: { from: 15, to: 110 } },
    artwork: { around: 6 },
    tile: onBorder,
  });
  expect(drafts).toHaveLength(2);
  const told = report.checks.filter(({ rule, says }) => rule === 'faded' && says.includes('foot'));
  expect(told.map(({ says }) => says)).toEqual([
    expect.stringMatching(/^6 motifs that the foot edge would cut/),
  ]);
  // Nothing of them is left for the joint to hold.
  expect(proof.checks.map(({ rule }) => rule)).not.toContain('level-joint-position');
  expect(proof.pass).toBe(true);
});

test('one motif is told of as one', () => {
  const { film } = readJob({ name: 'a', blank: 'b.json' }, 't.job.json');
  const faded = {
    motifs: [{ end: 'lip', count: 1, turn: 0, along: 9 } as const],
    hasNet: false,
    together: 0,
  };
  const [told] = edgeFindings({ slivers: [], faded }, { film }, 't.job.json');
  expect(told?.says).toMatch(/^one motif that the lip edge would cut is left out;/);
});

test('a straight cut leaves no film smaller than it holds, and names what it leaves out', async () => {
  // The third row begins at 63 + 9.4 mm up; the band ends 0.6 mm into its dots.
  const cut = await made({ band: { from: 10, to: 10 + 62.83 + 9.43 + 0.6 } }, { scale: 'both' });
  const told = cut.report.checks.find(({ rule }) => rule === 'sliver');
  expect(told?.says).toMatch(
    /^a straight cut at the lip edge would leave 6 pieces smaller than this film holds \(4 mm² or 1 mm up the wall\)/,
  );
  expect(told?.where.along).toBeCloseTo(82.5, 0);
  const fine = await made({ band: { from: 10, to: 10 + 78.54 } });
  expect(rules(fine)).not.toContain('sliver');
});

test('half a motif that a tile has on its lower border is cut there, where the other half goes on past the edge', async () => {
  // Half a disc of 1.5 mm, laid 4.8 % larger: 3.88 mm². Its straight side lies on the edge, where the pattern begins.
  const half = (y: number, sweep: 0 | 1) => `<path d="M8.5 ${y}A1.5 1.5 0 0 ${sweep} 11.5 ${y}Z"/>`;
  const drawn = (more: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><circle cx="25" cy="15" r="6"/>${half(30, 1)}${more}</svg>`;
  const laid = (more: string, artwork: object) =>
    madeOf({
      blank,
      tile: drawn(more),
      job: { band: { from: 10, to: 88 } },
      artwork,
    });
  const told = (await laid(half(0, 0), { around: 6 })).report.checks.filter(({ rule }) => rule === 'sliver');
  expect(told.map(({ says }) => says)).toEqual([
    expect.stringMatching(/^a straight cut at the foot edge would leave 6 pieces .* the smallest 3\.88 mm²/),
  ]);
  // Where nothing goes on past it, it was drawn so.
  expect(rules(await laid('', { way: 'as-drawn' }))).not.toContain('sliver');
});

test('a pattern that hangs together all around is told of, and cut straight', async () => {
  const stripes = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><rect width="40" height="9" y="8"/></svg>`;
  const net = await madeOf({ blank, job: { edges: 'fade' }, tile: stripes });
  expect(rules(net)).toContain('fade-net');
});

test('how far the pieces of a motif stand apart is read, and written again', () => {
  const typed = { name: 'n', blank: 'b', edges: 'fade', artwork: { file: 'a', together: '2.1mm' } };
  const job = readJob(typed, 'j');
  expect(job.artwork?.together).toBe(2.1);
  expect(readJob(jobContent(job, 'b'), 'j').artwork?.together).toBe(2.1);
  expect(() => readJob({ ...typed, artwork: { file: 'a', together: '-1mm' } }, 'j')).toThrow();
});

test('whole rows that an edge cuts all the same are told, with the ways out', async () => {
  const whole = await made({ edges: 'whole-rows' });
  expect(rules(whole)).not.toContain('rows-cut');
  // With a half drop every other dot and speck stands on the border of two rows: on both edges of the band.
  const { report } = await made({ edges: 'whole-rows' }, { repeat: { across: 40, up: 30, drop: 15 } });
  const told = report.checks.filter(({ rule }) => rule === 'rows-cut');
  const columns = (report.pattern?.around ?? 0) / 2;
  expect(told.map(({ level, times }) => [level, times])).toEqual([
    ['note', 2 * columns],
    ['note', 2 * columns],
  ]);
  expect(told[0]?.says).toMatch(/the foot edge cuts \d+ pieces of film .*"fade".*without a drop$/);
});

/** By a conformal lay equal steps up a pattern are equal steps of ln(girth): J. P. Snyder, Map Projections (USGS PP 1395, 1987), ch. 15, from memory. */
test('whole rows of a conformal lay end as far from both edges, drawn, as rows that stay alike', async () => {
  const pot = {
    use: 'other',
    stations: [
      { height: 0, girth: 240 },
      { height: 120, girth: 440 },
    ],
  };
  const edges = { edges: 'whole-rows' };
  const { draft, report } = await madeOf({ blank: pot, job: edges, artwork: { lay: 'conformal' }, tile });
  const { wall, band } = draft.plan.template;
  const toSheet = inverse(draft.toFile);
  const alongs = readSvg(draft.cut, 'wrap')
    .groups.filter(({ role }) => role === 'artwork')
    .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours))
    .flatMap((dot) => chordPoints(dot, 1e-4))
    .map((point) => toWall(wall, movePoint(toSheet, point)).along)
    .filter((along) => along > band.from && along < band.to);
  const [low, high] = [Math.min(...alongs), Math.max(...alongs)];
  const up = (from: number, to: number) => Math.log(girthAt(wall, to) / girthAt(wall, from));
  expect(up(band.from, low)).toBeGreaterThan(0.02);
  expectWithin(up(band.from, low), up(high, band.to), 1e-4);
  const rows = report.pattern?.up ?? 0;
  expectWithin(rows, Math.round(rows), 1e-9);
});
