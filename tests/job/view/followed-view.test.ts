// A drawing that follows its readings, held against the job laid afresh and against a closed form.
import { describe, expect, test } from 'vitest';
import { parsePathData } from '../../../src/drawing/path-data.ts';
import { cubic, line, type Segment } from '../../../src/geometry/contour.ts';
import { distance, type Point } from '../../../src/geometry/point.ts';
import { pointAt } from '../../../src/geometry/segment.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { coversPlace, onWall } from '../../../src/job/view/flat-place.ts';
import { followedView, followerOf } from '../../../src/job/view/followed-view.ts';
import { inkCodes, pointsOf } from '../../../src/job/view/ink.ts';
import { type LaidView, laidView } from '../../../src/job/view/laid-view.ts';
import { Room } from '../../../src/job/view/room.ts';
import { pictureEngine } from '../../pictures/compare.ts';
import { setText } from '../a-font.ts';
import { filesOf, leafTile } from '../a-job.ts';

const within = 0.1;

const cup = (girth: number) => ({
  units: 'mm',
  stations: [
    { height: 0, across: 62 },
    { height: 100, girth },
  ],
});
const mug = (girth: number) => ({
  units: 'mm',
  stations: [
    { height: 0, girth },
    { height: 100, girth },
  ],
});

const { normalise } = await pictureEngine();
const words = () => [];

function inputOf(blank: object, job: object = {}, band: object = { band: { from: 10, to: 60 } }) {
  const artwork = { file: 'tile.svg', around: 8 };
  const content = { name: 'test job', blank: 'b.blank.json', artwork, ...band, ...job };
  return {
    job: readJob(content, 't.job.json'),
    jobFile: 't.job.json',
    blank: readBlank(blank, 'b.blank.json'),
    blankFile: 'b.blank.json',
    files: filesOf({ 'tile.svg': leafTile(30, 22) }),
  };
}

const laid = (input: ReturnType<typeof inputOf>): LaidView =>
  laidView({ ...input, tools: { normalise, words, setText }, unchecked: true, linesOnly: true });

function followed(before: object, after: object, job: object = {}, byAtMost = within, jobAfter = job) {
  const { view, laid: art } = laid(inputOf(before, job));
  if (!art) return undefined;
  return followedView(followerOf({ view, laid: art }), inputOf(after, jobAfter), words, byAtMost, new Room());
}

const quarters = 4;

/** Points along a curve, its end left out. */
const pointsAlong = (segment: Segment, count: number): readonly Point[] =>
  Array.from({ length: count }, (_, i) => pointAt(segment, i / count));

/** Points along every curve of the art that was laid. */
const laidPoints = ({ view }: LaidView, count = quarters): readonly Point[] =>
  (view.pieces[0]?.groups ?? [])
    .filter(({ role }) => role === 'artwork')
    .flatMap(({ d }) => parsePathData(d))
    .flatMap(({ segments }) => segments.flatMap((segment) => pointsAlong(segment, count)));

/** And along those that followed, in the same order. */
function followedPoints(view: ReturnType<typeof followed>): readonly Point[] {
  const along = (segment: Segment) => pointsAlong(segment, quarters);
  const points: Point[] = [];
  for (const { ink } of view?.art[0] ?? []) {
    const at = (i: number): Point => ({ x: ink.points[2 * i] ?? 0, y: ink.points[2 * i + 1] ?? 0 });
    let next = 0;
    let start = at(0);
    for (const code of ink.codes) {
      const [from, a, b, c] = [at(next - 1), at(next), at(next + 1), at(next + 2)];
      if (code === inkCodes.move) start = a;
      if (code === inkCodes.line) points.push(...along(line(from, a)));
      if (code === inkCodes.cubic) points.push(...along(cubic(from, a, b, c)));
      if (code === inkCodes.close && distance(from, start) > 0) points.push(...along(line(from, start)));
      next += pointsOf[code] ?? 0;
    }
  }
  return points;
}

/** The farthest that a point of one is from all of the other, mm: points stand closer than the curves are long. */
function farthest(from: readonly Point[], to: readonly Point[]): number {
  const cells = new Map<string, Point[]>();
  const key = (x: number, y: number) => `${Math.floor(x / 2)} ${Math.floor(y / 2)}`;
  for (const p of to) cells.set(key(p.x, p.y), [...(cells.get(key(p.x, p.y)) ?? []), p]);
  const nearest = ({ x, y }: Point) => {
    const around = [-2, 0, 2].flatMap((dx) =>
      [-2, 0, 2].flatMap((dy) => cells.get(key(x + dx, y + dy)) ?? []),
    );
    return Math.min(...around.map((p) => Math.hypot(p.x - x, p.y - y)));
  };
  return Math.max(...from.map(nearest));
}

describe('a drawing that follows its readings', () => {
  // Whole rows: no motif is cut, so nothing too small to hold is taken out at the edges, where a following drawing keeps what was.
  const rows = { edges: 'whole-rows' };
  const [before, after] = [laid(inputOf(cup(270), rows)), laid(inputOf(cup(271.3), rows))];
  const view = followed(cup(270), cup(271.3), rows);

  test('lies where the job laid afresh does, within half a dot of a screen', () => {
    const place = after.view.pieces[0]?.place;
    const [exact, drawn] = [laidPoints(after, 64), followedPoints(view)];
    const inside = drawn.filter((p) => place && coversPlace(place, onWall(place, p)));
    expect(inside.length).toBeGreaterThan(400);
    expect(farthest(inside, exact)).toBeLessThan(within);
    // Left where it was, it would be seen to be off.
    expect(farthest(laidPoints(before), exact)).toBeGreaterThan(3 * within);
  });

  test('follows coats and the film as it does readings', () => {
    const coats = [{ name: 'resin', thickness: 0.15 }];
    const more = { ...rows, coats, film: { thickness: 0.12 } };
    const job = laid(inputOf(cup(270), more));
    const carried = followed(cup(270), cup(270), rows, within, more);
    const place = job.view.pieces[0]?.place;
    const exact = laidPoints(job, 64);
    const inside = followedPoints(carried).filter((p) => place && coversPlace(place, onWall(place, p)));
    expect(inside.length).toBeGreaterThan(400);
    expect(farthest(inside, exact)).toBeLessThan(within);
    expect(farthest(laidPoints(before), exact)).toBeGreaterThan(3 * within);
    expect(carried?.template).toEqual(job.report.template);
  });

  test('ends in the waste where it should, though the pattern has grown', () => {
    const ends = (points: readonly Point[]) => points.map(({ y }) => y).sort((a, b) => a - b);
    const exact = ends(laidPoints(laid(inputOf(mug(241.2)))));
    const drawn = ends(followedPoints(followed(mug(240), mug(241.2))));
    for (const k of [0, -1]) expect(drawn.at(k)).toBeCloseTo(exact.at(k) ?? Number.NaN, 3);
  });

  test('has the template of the new readings, and its lines', () => {
    expect(view?.template).toEqual(after.report.template);
    const lines = after.view.pieces[0]?.groups.filter(({ role }) => role !== 'artwork');
    expect(view?.view.pieces[0]?.groups).toEqual(lines);
    expect(view?.view.pieces[0]?.place).toEqual(after.view.pieces[0]?.place);
  });

  test('widens with the girth of a cylinder, and no higher where only its size around changes', () => {
    // On a cylinder the sheet is the wall unrolled, so every x is a share of the girth: x' = x girth' / girth. Closed form.
    const job = { artwork: { file: 'tile.svg', around: 8, scale: 'across' }, film: { thickness: 0 } };
    const [was, is] = [laid(inputOf(mug(240), job)), followed(mug(240), mug(241.2), job)];
    const [from, to] = [laidPoints(was), followedPoints(is)];
    const boxes = [was.view.pieces[0]?.box, is?.view.pieces[0]?.box];
    // Both drawings begin at the seam, which lies one margin within the sheet.
    const origin = boxes[0]?.minX ?? Number.NaN;
    expect(boxes[1]?.minX).toBeCloseTo(origin, 6);
    from.forEach((p, i) => {
      expect(to[i]?.x).toBeCloseTo(origin + ((p.x - origin) * 241.2) / 240, 3);
      expect(to[i]?.y).toBeCloseTo(p.y, 3);
    });
  });
});

describe('a drawing does not follow', () => {
  test('where it could not be as true as asked', () => {
    expect(followed(cup(270), cup(271.3), {}, 1e-5)).toBeUndefined();
    expect(followed(cup(270), cup(330))).toBeUndefined();
  });

  test('where the pattern would go around another number of times', () => {
    const free = { artwork: { file: 'tile.svg' } };
    expect(followed(mug(223), mug(223.4), free)).toBeDefined();
    expect(followed(mug(224), mug(225), free, 10)).toBeUndefined();
  });

  test('where the band reaches over wall that had no art on it', () => {
    const higher = {
      ...mug(240),
      stations: [
        { height: 0, girth: 240 },
        { height: 104, girth: 240 },
      ],
    };
    const { view, laid: art } = laid(inputOf(mug(240), {}, {}));
    expect(art).toBeDefined();
    if (art)
      expect(
        followedView(followerOf({ view, laid: art }), inputOf(higher, {}, {}), words, within, new Room()),
      ).toBeUndefined();
  });

  test('where more than a pattern is drawn', () => {
    const item = { file: 'tile.svg', across: 20, at: { turn: 0.5, along: 30 } };
    expect(laid(inputOf(mug(240), { items: [item] })).laid).toBeUndefined();
    expect(
      laid(inputOf(mug(240), { artwork: { file: 'tile.svg', around: 8, lay: 'rigid' } })).laid,
    ).toBeUndefined();
  });
});
