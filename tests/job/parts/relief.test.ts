// Relief cuts of a job: across large waste, never touching what stays; held against Clipper 6.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../../src/deliver/read-svg.ts';
import { writeSvg } from '../../../src/deliver/write-svg.ts';
import { movedGroups } from '../../../src/drawing/drawing.ts';
import { translation } from '../../../src/geometry/affine.ts';
import { directed } from '../../../src/geometry/measure.ts';
import { distance, type Point } from '../../../src/geometry/point.ts';
import { expectAtMost } from '../../closeness.ts';
import { chordPoints } from '../../geometry/drawn.ts';
import { clipperArea } from '../../geometry/libraries.ts';
import { folderOf } from '../a-folder.ts';

const can = {
  use: 'other',
  stations: [
    { height: 0, across: 60 },
    { height: 90, across: 70 },
  ],
};
/** A ring and a dot: what lies between them, and the hole, are waste of a decal. */
const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="36mm" viewBox="0 0 40 36"><g fill="#1d4e63">
  <path fill-rule="evenodd" d="M6 6H30V30H6ZM9 9V27H27V9Z"/><circle cx="35" cy="20" r="3"/></g></svg>`;
const made = (rest: object, art = tile) =>
  folderOf({ blank: can, job: { band: { from: 8, to: 80 }, ...rest }, artwork: { around: 5 }, tile: art });
/** Of a mask the art is waste: without the hole there is enough of it. */
const whole = tile.replace('M9 9V27H27V9Z', '');

const partsOf = (text: string) => {
  const { groups } = readSvg(text, 'wrap.cut.svg');
  const paths = (role: string) =>
    groups.filter((group) => group.role === role).flatMap((group) => group.paths);
  const rings = paths('artwork').flatMap((path) => directed(path).map((one) => chordPoints(one, 0.001)));
  const cuts = paths('relief').flatMap(({ contours }) => contours.flatMap(({ segments }) => segments));
  return { rings, cuts };
};

/** All within a distance of a cut, as a rectangle, its ends as far past. */
function ribbon(from: Point, to: Point, by: number): Point[] {
  const length = distance(from, to);
  const [ux, uy] = [((to.x - from.x) / length) * by, ((to.y - from.y) / length) * by];
  return [
    { x: from.x - ux - uy, y: from.y - uy + ux },
    { x: to.x + ux - uy, y: to.y + uy + ux },
    { x: to.x + ux + uy, y: to.y + uy - ux },
    { x: from.x - ux + uy, y: from.y - uy - ux },
  ];
}

describe.each(['decal', 'mask'])('relief cuts of a %s', (use) => {
  const job = made({ relief: { every: 20, clear: 0.6 }, film: { use } }, use === 'mask' ? whole : tile);

  test('keep clear of what stays', async () => {
    const { texts, failed, report } = await job;
    const { rings, cuts } = partsOf(texts['wrap.cut.svg'] ?? '');
    expect(failed()).toEqual([]);
    expect(report.proof?.checks.some(({ rule }) => rule === 'relief-clear')).toBe(true);
    expect(cuts.length).toBeGreaterThan(use === 'decal' ? 10 : 2);
    expect(report.checks.find(({ rule }) => rule === 'relief')?.says).toContain(`${cuts.length} relief cuts`);
    for (const { from, to } of cuts) {
      expectAtMost(5, distance(from, to), 'length of a cut');
      // A square's corner reaches past its distance, so it is made so much narrower.
      const around = ribbon(from, to, 0.6 / Math.SQRT2);
      const operation = use === 'decal' ? 'intersection' : 'difference';
      expectAtMost(
        clipperArea(operation, [around], rings, 'nonzero'),
        1e-4,
        'art, or ground of a mask, that a cut meets',
      );
    }
  });

  test('moved into what stays are named by the proof', async () => {
    const { texts, failed } = await job;
    const shifted = Object.fromEntries(
      ['wrap.cut.svg', 'wrap.guide.svg'].map((file) => {
        const drawing = readSvg(texts[file] ?? '', file);
        const groups = drawing.groups.flatMap((group) =>
          group.role === 'relief' ? movedGroups([group], translation(4, 7)) : [group],
        );
        return [file, writeSvg({ ...drawing, groups }, { title: 'x', filled: file.includes('guide') })];
      }),
    );
    expect(failed(shifted)).toContain('relief-clear');
  });
});

test('relief cuts are on sheets too, are counted, and none are made unasked', async () => {
  const sheet = { across: 400, up: 300, margin: 6 };
  const [plain, cut] = await Promise.all([made({ sheet }), made({ sheet, relief: { every: 20 } })]);
  expect(cut.failed()).toEqual([]);
  const count = partsOf(cut.texts['wrap.cut.svg'] ?? '').cuts.length;
  expect(partsOf(cut.texts['sheet-1.cut.svg'] ?? '').cuts).toHaveLength(count);
  expect(partsOf(plain.texts['wrap.cut.svg'] ?? '').cuts).toEqual([]);
  expect((cut.report.weeding?.lifts ?? 0) - (plain.report.weeding?.lifts ?? 0)).toBe(count);
});

test('a motif that is cut apart has them in its own waste, and they are proved', async () => {
  const frame = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="50mm" viewBox="0 0 60 50"><g fill="#1d4e63"><path fill-rule="evenodd" d="M2 2H58V48H2ZM6 6V44H54V6Z"/><circle cx="30" cy="25" r="5"/></g></svg>`;
  const { texts, report, failed } = await folderOf({
    blank: can,
    job: {
      relief: { every: 12, clear: 0.6 },
      items: [{ file: 'frame.svg', across: 60, at: { turn: 0.5, along: 45 } }],
    },
    files: { 'frame.svg': frame },
  });
  const text = texts['item-1.cut.svg'] ?? '';
  const { rings, cuts } = partsOf(text);
  expect(failed()).toEqual([]);
  // 72 mm of film in strips of 12: cuts within the frame, those through the dot in two.
  expect(cuts.length).toBeGreaterThan(3);
  expect(report.checks.find(({ rule }) => rule === 'relief')?.says).toContain(
    `item-1: ${cuts.length} relief cuts`,
  );
  for (const { from, to } of cuts)
    expectAtMost(clipperArea('intersection', [ribbon(from, to, 0.6 / Math.SQRT2)], rings, 'nonzero'), 1e-4);
  const drawing = readSvg(text, 'item-1.cut.svg');
  const groups = drawing.groups.flatMap((group) =>
    group.role === 'relief' ? movedGroups([group], translation(0, 3)) : [group],
  );
  const moved = writeSvg({ ...drawing, groups }, { title: 'x', filled: false });
  expect(failed({ 'item-1.cut.svg': moved })).toContain('relief-clear');
});

// The gap lies in the middle of the tile, a tenth of a turn from turn 0: cuts were once laid out from turn 0 on, past the film's end.
test('of a wrap whose ends wind far from turn 0 they lie in its film, from one end to the other', async () => {
  const [start, drawn, end] = [tile.indexOf('<path'), tile.indexOf('</g>'), tile.length];
  const motif = tile.slice(start, drawn);
  const halves = [-20, 20].map((by) => `<g transform="translate(${by} 0)">${motif}</g>`).join('');
  const gapInTheMiddle = tile.slice(0, start) + halves + tile.slice(drawn, end);
  const { texts, failed } = await made(
    { relief: { every: 20, clear: 0.6 }, seam: { style: 'winding' } },
    gapInTheMiddle,
  );
  expect(failed()).toEqual([]);
  const text = texts['wrap.cut.svg'] ?? '';
  const ends = readSvg(text, 'wrap.cut.svg')
    .groups.filter(({ role }) => role === 'outline')
    .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours.flatMap(({ segments }) => segments)))
    .map(({ from }) => from.x);
  const places = partsOf(text).cuts.map(({ from }) => from.x);
  // The wall tapers: the film's ends and the cuts lean by up to 8 mm.
  expectAtMost(Math.min(...places) - Math.min(...ends), 30, 'the first cut, from the start');
  expectAtMost(Math.max(...ends) - Math.max(...places), 30, 'the last cut, from the finish');
});
