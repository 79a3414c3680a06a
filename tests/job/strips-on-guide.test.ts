// Where cover strips will lie is outlined on the guide. Outside: distances of corners from straight lines, worked out here from
// the numbers in the written file, on the slump cone of ASTM C143 (references 2.6, seen).
import { expect, test } from 'vitest';
import { expectWithin } from '../closeness.ts';
import { folderOf } from './a-folder.ts';

const cone = {
  use: 'other',
  stations: [
    { height: 0, across: 101.6 },
    { height: 304.8, across: 203.2 },
  ],
};

type At = readonly [x: number, y: number];

/** The ends of the segments of each path in a group of the guide whose lines mean something, in the file's mm. */
function pathsOf(guide: string, role: string): readonly (readonly At[])[] {
  const [group = ''] = guide.match(new RegExp(`<g data-role="${role}" fill="none"[^]*?</g>`)) ?? [];
  return [...group.matchAll(/ d="([^"]*)"/g)].map(([, data = '']) =>
    [...data.matchAll(/[MLC]([^MLCZ]*)/g)].flatMap(([, run = '']): At[] => {
      const numbers = (run.match(/-?[\d.]+/g) ?? []).map(Number);
      const points = numbers.flatMap((x, i): At[] => (i % 2 === 0 ? [[x, numbers[i + 1] ?? NaN]] : []));
      return run && points.length % 3 === 0 ? points.filter((_, i) => i % 3 === 2) : points;
    }),
  );
}

/** How far a point lies from the line through two others, mm. */
const fromLine = ([x, y]: At, [ax, ay]: At, [bx, by]: At): number =>
  Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay);

test('half of the strip over the seam lies on either end of the wrap, its edge parallel to the seam', async () => {
  const { texts } = await folderOf({ blank: cone, job: { seam: { style: 'strip', strip: 14 } } });
  const guide = texts['wrap.guide.svg'] ?? '';
  const halves = pathsOf(guide, 'note');
  expect(halves.length).toBe(2);
  const sides = pathsOf(guide, 'seam');
  for (const [i, side] of sides.entries()) {
    const [foot, lip] = side;
    if (!foot || !lip) throw new Error('a seam has two ends');
    const away = halves
      .map((half) => half.map((at) => fromLine(at, foot, lip)))
      .filter((all) => Math.min(...all) < 0.02);
    expect(away.length, `side ${i}`).toBe(1);
    const [own = []] = away;
    // Each corner lies on the seam or half the strip's width away from it.
    expectWithin(Math.max(...own), 7, 0.02);
    expect(own.filter((far) => Math.abs(far - 7) < 0.02).length).toBeGreaterThan(1);
  }
});

test('a job without strips has none on its guide', async () => {
  const { texts } = await folderOf({ blank: cone, job: { seam: { overlap: 6 } } });
  expect(pathsOf(texts['wrap.guide.svg'] ?? '', 'note')).toEqual([]);
});

test("of stacked pieces each shows the half of a joint's strip that lies on it", async () => {
  const stepped = {
    use: 'other',
    wall: 'stepped',
    stations: [
      { height: 0, across: 80 },
      { height: 60, across: 80 },
      { height: 120, across: 100 },
    ],
  };
  const { texts } = await folderOf({
    blank: stepped,
    job: { pieces: 'stacked', seam: { style: 'strip', strip: 10 }, film: { thickness: 0 } },
  });
  // The lower piece is a cylinder: its strip's half is a band 5 mm high along its whole upper edge.
  const [wide] = pathsOf(texts['wrap-1.guide.svg'] ?? '', 'note').filter((path) => {
    const x = path.map(([at]) => at);
    return Math.max(...x) - Math.min(...x) > 200;
  });
  const y = (wide ?? []).map(([, at]) => at);
  expectWithin(Math.max(...y) - Math.min(...y), 5, 0.02);
  expect(pathsOf(texts['wrap-2.guide.svg'] ?? '', 'note').length).toBe(3);
});
