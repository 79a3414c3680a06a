// A winding line against its own definition: where it lies, how it bends, and that both ends are one line.
import { describe, expect, test } from 'vitest';
import { polyline } from '../../src/geometry/contour.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { tightestRadius } from '../../src/geometry/tightest.ts';
import { flatWall, girthAt, toFlat, toWall } from '../../src/unroll/flat-wall.ts';
import { grownTemplate, outline, sideTurns, templateOf, woundTemplate } from '../../src/unroll/template.ts';
import { type Winding, windingLine, windingSides, windingTurn } from '../../src/unroll/winding.ts';
import { expectPointWithin, expectWithin } from '../closeness.ts';
import { circle } from '../geometry/drawn.ts';

const band = { from: 10, to: 70 };
const turns = Array.from({ length: 89 }, (_, k) => 0.02 * Math.sin(k / 7) * (k > 30 ? 1 : 0));

test('the least radius of a circle is its own, of straight lines none', () => {
  expectWithin(tightestRadius(circle({ x: 1, y: 2 }, 5, 16)), 5, 1e-3);
  expect(
    tightestRadius(
      polyline([
        { x: 0, y: 0 },
        { x: 3, y: 1 },
      ]),
    ),
  ).toBe(Infinity);
});

describe.each([0, 0.15, -0.1])('on a wall with sine %d', (sine) => {
  const wall = flatWall(40, sine, 40);
  const template = templateOf(wall, { band, trim: { lip: 3, foot: 3 }, overlap: 6 });
  const { piece } = template;
  const winding: Winding = {
    from: piece.from,
    step: (piece.to - piece.from) / 88,
    turns,
    lap: 6 / girthAt(wall, sine < 0 ? band.to : band.from),
  };
  const wound = woundTemplate(template, winding);

  test('the line on the sheet is that of the turns, height by height', () => {
    for (const segment of windingLine(wall, winding, piece.from, piece.to).segments)
      for (const t of [0, 0.3, 0.7, 1]) {
        const p = pointAt(segment, t);
        const { along } = toWall(wall, p);
        expectPointWithin(p, toFlat(wall, { turn: windingTurn(winding, along), along }), 0.005);
      }
  });

  test('never bends by more than its second differences, nor strays from its turns by more than a sixth of them', () => {
    const seconds = turns.slice(2).map((turn, k) => turn - 2 * (turns[k + 1] ?? 0) + (turns[k] ?? 0));
    const most = Math.max(...seconds.map(Math.abs));
    const h = winding.step / 50;
    for (let along = piece.from + h; along < piece.to - h; along += winding.step / 3) {
      const [a, b, c] = [along - h, along, along + h].map((at) => windingTurn(winding, at)) as [
        number,
        number,
        number,
      ];
      expect(Math.abs(a - 2 * b + c) / h ** 2).toBeLessThanOrEqual((most / winding.step ** 2) * 1.001 + 1e-9);
    }
    turns.forEach((turn, k) => {
      expectWithin(windingTurn(winding, piece.from + k * winding.step), turn, most / 6 + 1e-12);
    });
  });

  test('the outline is closed, its sides one line a turn and the overlap apart, within the straight sides around it', () => {
    const { segments } = outline(wound);
    segments.forEach((s, i) => {
      expectPointWithin(s.to, segments[(i + 1) % segments.length]?.from ?? { x: 0, y: 0 }, 1e-6);
    });
    const { left, right } = windingSides(wall, winding, piece);
    left.segments.forEach((s, i) => {
      const other = right.segments[i];
      if (!other) throw new Error('sides differ');
      for (const t of [0, 0.5]) {
        const [p, q] = [toWall(wall, pointAt(s, t)), toWall(wall, pointAt(other, t))];
        expectWithin(q.turn - p.turn, 1 + winding.lap, 1e-9);
        expectWithin(q.along, p.along, 1e-9);
      }
    });
    const inside = sideTurns({ ...template, left: wound.left, right: wound.right }, 40);
    const [first, last] = sideTurns(wound, 40);
    expect(inside[0]).toBeLessThanOrEqual(first);
    expect(inside[1]).toBeGreaterThanOrEqual(last);
  });

  test('grown, it lies outside everywhere by as much', () => {
    const grown = grownTemplate(wound, 1);
    const own = windingSides(wall, winding, piece).left.segments.flatMap((s) =>
      [0, 0.25, 0.5, 0.75].map((t) => pointAt(s, t)),
    );
    if (!grown.winding) throw new Error('nothing winds');
    const outer = windingSides(wall, grown.winding, grown.piece).left.segments.flatMap((s) =>
      Array.from({ length: 30 }, (_, i) => pointAt(s, i / 30)),
    );
    for (const p of own)
      expect(Math.min(...outer.map((q) => Math.hypot(q.x - p.x, q.y - p.y)))).toBeGreaterThan(0.98);
  });
});
