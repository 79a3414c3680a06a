import { describe, expect, test } from 'vitest';
import { signedArea } from '../../src/geometry/measure.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { flatWall, girthAt, radiusAt, sweep, toFlat } from '../../src/unroll/flat-wall.ts';
import {
  edgePoint,
  finishedEdge,
  isRectangle,
  levelLine,
  outline,
  slantRadii,
  templateBox,
  templateOf,
  turnOfEdge,
} from '../../src/unroll/template.ts';
import { expectAtMost, expectPointWithin, expectWithin, expectWithinPart } from '../closeness.ts';
import { sampled } from '../geometry/drawn.ts';
import { realCones, walls } from './walls.ts';

const trim = { lip: 3, foot: 2 };
const noTrim = { lip: 0, foot: 0 };
const whole = (length: number) => ({ from: 10, to: length - 10 });

/** Area between the line at distance 0 and the line at distance w, inside a circle about the apex: half of a lens. */
const underCircle = (radius: number, w: number): number =>
  0.5 * (w * Math.sqrt(radius * radius - w * w) + radius * radius * Math.asin(w / radius));

describe.each(walls)('template: $name', ({ wall, length }) => {
  const options = { band: whole(length), trim, overlap: 6 };
  const template = templateOf(wall, options);
  const contour = outline(template);
  const { from, to } = template.piece;

  test('is outlined by one closed contour that joins itself exactly', () => {
    expect(contour.closed).toBe(true);
    contour.segments.forEach((s, i) => {
      const next = contour.segments[(i + 1) % contour.segments.length];
      expectPointWithin(s.to, next?.from ?? s.to, 1e-9);
    });
  });

  // Lateral area of a frustum: the sum of the two circumferences, divided by 2, times the slant height
  // (Longfield, Sheet Metal Drafting, 1921, p. 91). The overlap is the strip between the seam line and a line parallel
  // to it, cut by two circles about the apex: closed form. Arcs here are cubics of 15 degrees, right to 1e-7 of the radius.
  test('has the lateral area of its piece and the area of its overlap strip', () => {
    const lateral = ((girthAt(wall, from) + girthAt(wall, to)) / 2) * (to - from);
    const plain = outline(templateOf(wall, { ...options, overlap: 0 }));
    expectWithinPart(Math.abs(signedArea(plain)), lateral, 1e-7, 'lateral area');
    if (Math.abs(wall.sine) < 1e-3) {
      expectWithinPart(Math.abs(signedArea(contour)), lateral + 6 * (to - from), 1e-7, 'whole area');
      return;
    }
    const [a, b] = [from, to].map((along) => radiusAt(wall, along) / Math.abs(wall.sine)) as [number, number];
    const strip = Math.abs(underCircle(a, 6) - underCircle(b, 6));
    expectWithinPart(Math.abs(signedArea(contour)), lateral + strip, 1e-7, 'whole area');
  });

  test('goes around counter-clockwise as seen, so clockwise by the sign of its area with y down', () => {
    // The outline begins along the foot to the right, then up: counter-clockwise on the sheet, negative with y down.
    expect(signedArea(contour)).toBeLessThan(0);
  });

  test('fits its bounding box, no more and no less', () => {
    const points = sampled(contour, 400);
    const box = templateBox(template);
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    const sides = [
      [box.minX, Math.min(...xs)],
      [-box.maxX, Math.min(...xs.map((x) => -x))],
      [box.minY, Math.min(...ys)],
      [-box.maxY, Math.min(...ys.map((y) => -y))],
    ] as const;
    for (const [side, brute] of sides) {
      expectAtMost(side, brute + 1e-9, 'side of the box');
      expectAtMost(brute - side, 2e-3, 'room in the box');
    }
  });

  test('has an overlap of one width: its edge is parallel to the seam, 6 mm away', () => {
    const { finish } = template.seam;
    const [p, q] = [edgePoint(wall, finish, from), edgePoint(wall, finish, to)];
    const [dx, dy] = [(q.x - p.x) / distance(p, q), (q.y - p.y) / distance(p, q)];
    for (const along of [from, (from + to) / 2, to]) {
      const edge = edgePoint(wall, template.right, along);
      expectWithin((edge.x - p.x) * -dy + (edge.y - p.y) * dx, 6, 1e-9, 'width');
    }
  });

  test('has side edges at turn 0 and turn 1 where nothing overlaps', () => {
    const plain = templateOf(wall, { ...options, overlap: 0 });
    for (const along of [from, to]) {
      expect(turnOfEdge(wall, plain.left, along)).toBe(0);
      expect(turnOfEdge(wall, plain.right, along)).toBe(1);
    }
  });

  test('draws level lines within 1e-6 mm of the true curve', () => {
    for (const along of [from, (from + to) / 2, to]) {
      const arc = levelLine(wall, along, 0, 1.01);
      const points = sampled(arc, 40);
      expectPointWithin(arc.segments[0]?.from ?? { x: 0, y: 0 }, toFlat(wall, { turn: 0, along }), 1e-9);
      expectPointWithin(arc.segments.at(-1)?.to ?? { x: 0, y: 0 }, toFlat(wall, { turn: 1.01, along }), 1e-9);
      if (Math.abs(wall.sine) < 1e-3) {
        // A parabola is within 1e-9 mm of so flat an arc.
        const sag = (x: number) => wall.reference - along + (wall.curvature * x * x) / 2;
        for (const { x, y } of points) expectWithin(y, sag(x), 1e-6);
        continue;
      }
      const apex = { x: 0, y: 1 / wall.curvature };
      const rho = radiusAt(wall, along) / Math.abs(wall.sine);
      expectAtMost(
        Math.max(...points.map((p) => Math.abs(distance(p, apex) - rho))),
        1e-6,
        'stray of the arc',
      );
    }
  });

  test('draws a finished edge from side to side of the piece', () => {
    const edge = finishedEdge(template, template.band.to);
    const ends: [Point | undefined, Point | undefined] = [edge.segments[0]?.from, edge.segments.at(-1)?.to];
    expectPointWithin(ends[0] ?? { x: 0, y: 0 }, edgePoint(wall, template.left, template.band.to), 1e-9);
    expectPointWithin(ends[1] ?? { x: 0, y: 0 }, edgePoint(wall, template.right, template.band.to), 1e-9);
  });
});

describe.each(realCones)('sector: $name', ({ wall, length }) => {
  const template = templateOf(wall, { band: whole(length), trim: noTrim, overlap: 0 });

  test('is called one, with radii whose difference is the band and whose arcs are the girths', () => {
    expect(template.shape).toBe('sector');
    const { inner, outer } = slantRadii(template);
    expectWithin(outer - inner, length - 20, 1e-9);
    const girths = [girthAt(wall, 10), girthAt(wall, length - 10)].sort((a, b) => a - b);
    expectWithin(inner * Math.abs(sweep(wall)), girths[0] ?? 0, 1e-9);
    expectWithin(outer * Math.abs(sweep(wall)), girths[1] ?? 0, 1e-9);
  });
});

describe('a template', () => {
  test('is a rectangle while the level line sags less than a micrometre in a thousand', () => {
    // Sag of the level line over half a turn: pi² radius sine / 2.
    const limit = (2 * 1e-6) / (Math.PI ** 2 * 40);
    expect(isRectangle(flatWall(40, 0.99 * limit, 0))).toBe(true);
    expect(isRectangle(flatWall(40, 1.01 * limit, 0))).toBe(false);
    expect(isRectangle(flatWall(40, -1.01 * limit, 0))).toBe(false);
    const wall = flatWall(40, 0.99 * limit, 0);
    const sag = toFlat(wall, { turn: 1, along: 0 }).y - toFlat(wall, { turn: 0.5, along: 0 }).y;
    expectWithin(sag, 0.99e-6, 1e-12);
  });

  test('of more than half a turn reaches back past its own apex height', () => {
    const cone = realCones.find(({ name }) => name.startsWith('a sweep of 350 degrees, wider at the lip'));
    if (!cone) throw new Error('no such wall');
    const template = templateOf(cone.wall, { band: { from: 0, to: 80 }, trim: noTrim, overlap: 0 });
    const box = templateBox(template);
    const { inner, outer } = slantRadii(template);
    // A sector over 180 degrees is as wide as its whole circle, and 175 degrees either way reaches below the apex.
    expectWithin(box.maxX - box.minX, 2 * outer, 1e-5);
    const apex = 1 / cone.wall.curvature;
    expectWithin(box.minY, apex - outer, 1e-5);
    expectWithin(box.maxY, apex + outer * Math.cos((5 * Math.PI) / 180), 1e-5);
    expect(inner).toBeGreaterThan(0);
    const area = Math.abs(signedArea(outline(template)));
    expectWithinPart(area, (350 / 360) * Math.PI * (outer ** 2 - inner ** 2), 1e-7);
  });

  test('keeps the same girth clear on both sides of a handle, and overlaps nothing there', () => {
    for (const { wall, length } of realCones.slice(0, 4)) {
      const clear = 35;
      const template = templateOf(wall, { band: whole(length), trim, overlap: 6, clear });
      expect(template.overlap).toBe(0);
      // At the reference height, the middle, the edges stand exactly `clear` of girth from turn 0.
      const girth = girthAt(wall, wall.reference);
      expectWithin(turnOfEdge(wall, template.left, wall.reference) * girth, clear, 1e-9);
      expectWithin((1 - turnOfEdge(wall, template.right, wall.reference)) * girth, clear, 1e-9);
    }
  });

  test('beside a handle is told by the middle of its band, whatever level the wall is written about', () => {
    for (const { wall, length } of realCones.slice(0, 4)) {
      const clear = 35;
      const band = { from: 0.3 * length, to: 0.9 * length };
      const middle = (band.from + band.to) / 2;
      const { left, right } = templateOf(wall, { band, trim, overlap: 6, clear });
      const girth = girthAt(wall, middle);
      expectWithin(turnOfEdge(wall, left, middle) * girth, clear, 1e-9);
      expectWithin((1 - turnOfEdge(wall, right, middle)) * girth, clear, 1e-9);
    }
  });

  test('keeps a straight edge straight: its points at all heights are on one line', () => {
    for (const { wall, length } of realCones) {
      const edge = { turn: 1, offset: 6 };
      const [p, q] = [edgePoint(wall, edge, 0), edgePoint(wall, edge, length)];
      for (const along of [0.2 * length, 0.5 * length, 0.8 * length]) {
        const r = edgePoint(wall, edge, along);
        const off = ((r.x - p.x) * (q.y - p.y) - (r.y - p.y) * (q.x - p.x)) / distance(p, q);
        expectWithin(off, 0, 1e-9);
      }
    }
  });

  test('has level lines of one cubic for each 15 degrees, and plain lines on a cylinder', () => {
    const cylinder = flatWall(40, 0, 0);
    expect(levelLine(cylinder, 10, 0, 1).segments.map(({ kind }) => kind)).toEqual(['line']);
    const cone = flatWall(40, 40.5 / 360, 0);
    const { segments } = levelLine(cone, 0, 0, 1);
    expect(segments).toHaveLength(3);
    const middle = segments[1];
    if (!middle) throw new Error('no middle piece');
    expectPointWithin(pointAt(middle, 0.5), toFlat(cone, { turn: 0.5, along: 0 }), 1e-6);
  });
});
