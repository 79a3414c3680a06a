// What `repeat` says that `make` takes is what `make` takes; where that is not the first of the list, the list says why.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { inverse, movePoint } from '../../src/geometry/affine.ts';
import { describeRepeat } from '../../src/job/repeat/repeat.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { toWall } from '../../src/unroll/flat-wall.ts';
import { chordPoints } from '../geometry/drawn.ts';
import { pictureEngine } from '../pictures/compare.ts';
import { leafTile, madeOf } from './a-job.ts';

/** A fish and a dot, four times on a tile of 60 by 40 mm: they repeat by 30 and 20 mm. */
const fish = (more = '') => {
  const copies = [0, 30].flatMap((x) =>
    [0, 20].map(
      (y) =>
        `<path d="M${x + 4} ${y + 10}q8 -8 16 -1l6 -4v10l-6 -4q-8 7 -16 -1z"/><circle cx="${x + 28}" cy="${y + 19}" r="1.5"/><circle cx="${x + 28}" cy="${y - 1}" r="1.5"/>`,
    ),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">${copies.join('')}${more}</svg>`;
};

const mug = (girth: number) => ({ stations: [0, 90].map((height) => ({ height, girth })) });

async function told(tile: string, blank: object, artwork: object = {}, job: object = {}) {
  const { normalise } = await pictureEngine();
  const content = {
    name: 'test job',
    blank: 'b.blank.json',
    ...job,
    artwork: { file: 'tile.svg', ...artwork },
  };
  const read = readJob(content, 't.job.json');
  if (!read.artwork) throw new Error('the job has artwork');
  const { report, lines } = describeRepeat({
    job: { ...read, artwork: read.artwork },
    jobFile: 't.job.json',
    blank: readBlank(blank, 'b.blank.json'),
    blankFile: 'b.blank.json',
    art: { content: new TextEncoder().encode(tile), file: 'tile.svg' },
    units: 'mm',
    normalise,
  });
  return { ...report, last: lines.at(-1) ?? '' };
}

const girths = [203, 211, 229, 252, 274, 301];

describe.each([
  ['a tile that holds a finer repeat', fish()],
  ['one of whose motifs differs', fish('<circle cx="10" cy="20" r="1.2"/>')],
  ['a tile of one motif', leafTile(47, 31)],
])('%s', (_, tile) => {
  test.each(
    girths.flatMap((girth) => [
      [girth, {}, {}] as const,
      [girth, {}, { edges: 'whole-rows' }] as const,
      [girth, { around: 5 }, {}] as const,
      [girth, { repeat: { across: 60, up: 40 } }, {}] as const,
    ]),
  )('%d mm around %j %j', async (girth, artwork, job) => {
    const { ways, taken, last } = await told(tile, mug(girth), artwork, job);
    const { report } = await madeOf({ blank: mug(girth), tile, artwork, job });
    const { pattern } = report;
    const said = ways.find(({ key }) => key === taken);
    if (said) {
      expect(pattern).toMatchObject({ around: said.around, closes: said.closes });
      expect(pattern?.scaleAcross).toBeCloseTo(said.scaleAcross, 9);
      expect(pattern?.scaleUp).toBeCloseTo(said.scaleUp, 9);
    } else expect(artwork).toMatchObject({ around: pattern?.around });
    // Or the list says why not.
    if (Object.keys(artwork).length === 0 && taken !== ways[0]?.key)
      expect(last).toContain('is not taken unasked');
  });
});

describe('of a tile that holds a finer repeat', () => {
  test('whole tiles are laid, and what would come nearer is listed and can be named', async () => {
    // 211 mm over 30 is 7.03, over 60 it is 3.5.
    const { report } = await madeOf({ blank: mug(211), tile: fish() });
    expect(report.pattern).toMatchObject({ around: 4, joins: true });
    const named = await madeOf({ blank: mug(211), tile: fish(), artwork: { way: 'period-7' } });
    expect(named.report.pattern).toMatchObject({ around: 7, joins: true, way: 'period-7' });
    expect(named.report.proof?.pass).toBe(true);
    const { last } = await told(fish(), mug(211));
    expect(last).toMatch(/make takes around-4 .*period-7, which comes nearer.*is laid whole/);
  });

  test('whole tiles are laid where one motif of all differs, and the list says so', async () => {
    const { report } = await madeOf({ blank: mug(211), tile: fish('<circle cx="10" cy="20" r="1.2"/>') });
    expect(report.pattern).toMatchObject({ around: 4, joins: true });
    // 90 mm are one and a half tiles: three of the finer steps come so much nearer that they are listed first all the same.
    const { last, ways, taken } = await told(fish('<circle cx="10" cy="20" r="1.2"/>'), mug(90));
    expect([ways[0]?.key, taken]).toEqual(['period-3', 'around-2']);
    expect(last).toMatch(
      /make takes around-2 .*period-3, which comes nearer.*some of the art does not recur/,
    );
  });
});

describe('at which ends of the band a way cuts film', () => {
  /** A dot of radius 3 that stands so high on a tile of 40 by 30 mm, and in all its copies. */
  const dotAt = (y: number) => {
    const dots = [y - 30, y, y + 30].map((cy) => `<circle cx="20" cy="${cy}" r="3"/>`);
    return `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">${dots.join('')}</svg>`;
  };
  const pot = {
    use: 'other',
    stations: [
      { height: 0, girth: 200 },
      { height: 120, girth: 400 },
    ],
  };

  // By hand: on a can of 240 mm around 6 tiles, so that all is laid at its drawn size: heights above the foot are those in the drawing.
  test.each([
    ['between rows', dotAt(15), 60, {}, []],
    ['the drawing cut at its lower border', dotAt(29), 80, {}, ['foot']],
    ['the same, its rows in whole', dotAt(29), 90, {}, ['foot', 'lip']],
    ['a third row begun', dotAt(15), 74, {}, ['lip']],
    ['passed by less than is seen', dotAt(15), 72.05, {}, []],
    ['every other column half a row up', dotAt(15), 60, { repeat: { drop: 15 } }, ['foot', 'lip']],
    ['the same, between the two', dotAt(15), 65, { repeat: { drop: 15 } }, ['foot']],
    ['a row higher once around, level', dotAt(15), 65, { repeat: { drop: 5 }, around: 6 }, ['foot', 'lip']],
    ['rows that climb all around, turned level', dotAt(15), 74, { repeat: { drop: 1 }, around: 6 }, ['lip']],
    ['a pot, by an even lay 101.7 mm as drawn', dotAt(15), 102.8, { lay: 'even' }, []],
    ['by a conformal lay 104.8 mm', dotAt(15), 102.8, { lay: 'conformal' }, ['lip']],
  ] as const)('%s', async (_, tile, top, artwork, ends) => {
    const band = { from: 0, to: top };
    const blank = 'lay' in artwork ? pot : { stations: [0, 100].map((height) => ({ height, girth: 240 })) };
    const job = { edges: 'straight', band, trim: { foot: 5, lip: 5 }, coats: [] };
    const { ways } = await told(tile, blank, artwork, job);
    expect(ways[0]?.cutAt).toEqual(ends);
    // The same on the file that is written: film on both sides of a finished edge.
    const { draft } = await madeOf({ blank, tile, artwork, job });
    const { wall, band: laid } = draft.plan.template;
    const toWallPlace = inverse(draft.toFile);
    const shapes = readSvg(draft.cut, 'wrap')
      .groups.filter(({ role }) => role === 'artwork')
      .flatMap(({ paths }) => paths.map(({ contours }) => contours.flatMap((one) => chordPoints(one, 1e-3))))
      .map((points) => points.map((point) => toWall(wall, movePoint(toWallPlace, point)).along));
    const isCut = (edge: number) =>
      shapes.some((alongs) => Math.min(...alongs) < edge - 0.1 && Math.max(...alongs) > edge + 0.1);
    const cut = { foot: isCut(laid.from), lip: isCut(laid.to) };
    expect((['foot', 'lip'] as const).filter((end) => cut[end])).toEqual(ends);
  });
});

test('a lay that make refuses a pattern by is told, and no way is promised', async () => {
  const net =
    '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><path d="M0 12H40V16H0Z"/><circle cx="20" cy="24" r="3"/></svg>';
  const lay = { lay: 'rigid' };
  await expect(madeOf({ blank: mug(240), tile: net, artwork: lay })).rejects.toThrow(
    /hangs together all around/,
  );
  const { ways, taken, last, checks } = await told(net, mug(240), lay);
  expect(taken).toBeNull();
  expect(last).toMatch(/^make refuses around-6/);
  expect(ways.every(({ says }) => says.endsWith('make refuses it by this lay'))).toBe(true);
  expect(checks.map(({ rule, level }) => [rule, level])).toContainEqual(['no-motifs', 'look']);
});
