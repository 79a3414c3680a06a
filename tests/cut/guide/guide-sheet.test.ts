// The sheet that a cut drawing and its guide share: same places on both, words and the meaning of lines under the guide.
import { describe, expect, test } from 'vitest';
import { guideSheet } from '../../../src/cut/guide/guide-sheet.ts';
import type { LineMeaning } from '../../../src/cut/guide/note-strip.ts';
import { writeSvg } from '../../../src/deliver/write-svg.ts';
import type { DrawnGroup } from '../../../src/drawing/drawing.ts';
import { polygon, polyline } from '../../../src/geometry/contour.ts';
import { tightBox } from '../../../src/geometry/measure.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';

/** Words as plain bars, half an em to the letter. */
const words = (text: string, em: number) =>
  text === ''
    ? []
    : [
        polygon([
          { x: 0, y: 0 },
          { x: (text.length * em) / 2, y: 0 },
          { x: (text.length * em) / 2, y: -em },
        ]),
      ];
const line = (y: number) =>
  polyline([
    { x: -50, y },
    { x: 50, y },
  ]);
const meanings: readonly LineMeaning[] = [
  { role: 'outline', says: 'cut' },
  { role: 'seam', says: 'seam' },
  { role: 'trim', says: 'finished edge' },
  { role: 'flat-limit', says: 'flat up to here' },
  { role: 'note', says: 'a place' },
];
const group = (role: DrawnGroup['role'], y: number, more: Partial<DrawnGroup> = {}): DrawnGroup => ({
  role,
  paths: [{ contours: [line(y)] }],
  ...more,
});

const sheetOf = (guide: readonly DrawnGroup[], notes: readonly string[] = ['a note'], wide = 60) =>
  guideSheet({
    blade: [group('outline', 0)],
    guide,
    room: { minX: -wide, minY: -20, maxX: wide, maxY: 20 },
    margin: 10,
    notes,
    meanings,
    words,
  });

const boxOf = (groups: readonly DrawnGroup[]) =>
  tightBox(groups.flatMap(({ paths }) => paths.flatMap(({ contours }) => contours)));

describe('the guide sheet', () => {
  test('cuts on a page no larger than its room, and has the same places on both', () => {
    const { cut, guide, origin } = sheetOf([group('seam', 5)]);
    expect([cut.width, cut.height]).toEqual([120, 40]);
    expect(origin).toEqual({ x: 60, y: 20 });
    expectWithin(boxOf(cut.groups).minX, 10, 1e-12);
    expect(guide.groups[0]).toEqual(cut.groups[0]);
    const apart = guide.groups.filter((one) => one.apart);
    expectAtMost(cut.height, boxOf(apart).minY);
    expectAtMost(boxOf(apart).maxY, guide.height);
    expectAtMost(boxOf(apart).maxX, guide.width);
  });

  test('tells the meaning of the lines there are, and of no others', () => {
    const samples = (guide: readonly DrawnGroup[]) =>
      sheetOf(guide).guide.groups.flatMap(({ like }) => (like === undefined ? [] : [like]));
    expect(samples([])).toEqual(['outline']);
    expect(samples([group('seam', 5), group('trim', 6), group('note', 7)])).toEqual([
      'outline',
      'seam',
      'trim',
    ]);
    expect(samples([group('note', 7, { lines: true })])).toEqual(['outline', 'note']);
  });

  test('keeps its words narrow enough for the narrowest paper, however wide the piece', () => {
    const { guide } = sheetOf([], ['many words '.repeat(60).trim()], 400);
    const apart = guide.groups.filter((one) => one.apart);
    // Letter and A4 across, less 10 mm of border on either side.
    expectAtMost(boxOf(apart).maxX - boxOf(apart).minX, 190);
    expectAtMost(boxOf(apart).maxY, guide.height);
  });

  test('draws each kind of line in a way of its own, colour aside, and its sample alike', () => {
    const kinds = ['seam', 'trim', 'flat-limit'] as const;
    const text = writeSvg(
      sheetOf([...kinds.map((role, i) => group(role, i)), group('note', 9, { lines: true })]).guide,
      { title: 't', filled: true },
    );
    const tags = [...text.matchAll(/<g data-role="([a-z-]+)"(?: data-like="([a-z-]+)")?[^>]*>/g)];
    const dashOf = (tag: string) => /stroke-dasharray="([^"]*)"/.exec(tag)?.[1] ?? 'solid';
    const own = new Map<string, string>();
    for (const [tag, role = '', like] of tags)
      if (like === undefined && tag.includes('stroke=')) own.set(role, dashOf(tag));
    const looks = ['outline', ...kinds, 'note'].map((role) => own.get(role));
    expect(looks).not.toContain(undefined);
    expect(new Set(looks).size).toBe(5);
    for (const [tag, , like] of tags) if (like !== undefined) expect(dashOf(tag)).toBe(own.get(like));
  });
});

test('what the blade follows is never dashed', () => {
  const { cut } = sheetOf([group('seam', 5)]);
  expect(writeSvg(cut, { title: 't', filled: false })).not.toContain('dash');
});
