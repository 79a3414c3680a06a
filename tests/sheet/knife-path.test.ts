// The knife's axis, held against the bicycle: the tip is integrated step by step, knowing nothing of how the axis was made.
import { describe, expect, test } from 'vitest';
import { type Contour, polygon, polyline } from '../../src/geometry/contour.ts';
import { NearestFinder } from '../../src/geometry/nearest.ts';
import type { Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { tipStrokes } from '../../src/prove/written/tip-path.ts';
import { startedWell } from '../../src/sheet/cut-start.ts';
import { firstHeading, type Knife, knifePath } from '../../src/sheet/knife-path.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { circle, randomFrom } from '../geometry/drawn.ts';

const knife: Knife = { offset: 0.25, runOn: 1, corner: 'swivel', pastCorner: 0, cornerFrom: Math.PI / 18 };

/** How far the tip may be off the line, mm: what is asked of the compensation. */
const limit = 0.02;

/**
 * The tip by the classical Runge-Kutta method on the heading: the axis at P moves by dP, the blade turns by
 * (heading x dP) / d, and the tip is always d behind. Nothing in common with the closed form in the code.
 */
function integrated(strokes: readonly Contour[], d: number, from: Point): Point[][] {
  let angle = Math.atan2(from.y, from.x);
  return strokes.map(({ segments }) => {
    const points: Point[] = [];
    for (const s of segments) {
      const length = Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y);
      const count = Math.max(30, Math.ceil(length / (d / 8)));
      const velocity = (t: number) => {
        const h = 1e-5;
        const [a, b] = [pointAt(s, Math.max(0, t - h)), pointAt(s, Math.min(1, t + h))];
        const by = Math.min(1, t + h) - Math.max(0, t - h);
        return { x: (b.x - a.x) / by, y: (b.y - a.y) / by };
      };
      const slope = (t: number, a: number) => {
        const v = velocity(t);
        return (Math.cos(a) * v.y - Math.sin(a) * v.x) / d;
      };
      const step = 1 / count;
      for (let i = 0; i < count; i++) {
        const t = i * step;
        const p = pointAt(s, t);
        points.push({ x: p.x - d * Math.cos(angle), y: p.y - d * Math.sin(angle) });
        const k1 = slope(t, angle);
        const k2 = slope(t + step / 2, angle + (step / 2) * k1);
        const k3 = slope(t + step / 2, angle + (step / 2) * k2);
        const k4 = slope(t + step, angle + step * k3);
        angle += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
      }
      const p = pointAt(s, 1);
      points.push({ x: p.x - d * Math.cos(angle), y: p.y - d * Math.sin(angle) });
    }
    return points;
  });
}

const away = (finder: NearestFinder, p: Point): number =>
  finder.find(p, 0.2)?.distance ?? finder.find(p, 20)?.distance ?? 99;

/** How far the tip is off the lines, and how far any place of the lines is from where the tip went. */
function missesOf(lines: readonly Contour[], tips: readonly (readonly Point[])[]) {
  const wanted = new NearestFinder(lines);
  const cut = new NearestFinder(tips.map((points) => polyline(points)));
  const places = lines.flatMap(({ segments }) =>
    segments.flatMap((s) => Array.from({ length: 12 }, (_, i) => pointAt(s, i / 12))),
  );
  return {
    // Every third place is enough: they are a thirtieth of a mm apart.
    off: Math.max(
      ...tips.flatMap((points) => points.filter((_, i) => i % 3 === 0)).map((p) => away(wanted, p)),
    ),
    left: Math.max(...places.map((p) => away(cut, p))),
  };
}

const star: Contour = polygon(
  Array.from({ length: 10 }, (_, i) => {
    const r = i % 2 === 0 ? 12 : 4;
    return { x: 30 + r * Math.sin((i * Math.PI) / 5), y: 30 - r * Math.cos((i * Math.PI) / 5) };
  }),
);
const leaf: Contour = {
  closed: true,
  segments: [
    { kind: 'cubic', from: { x: 0, y: 0 }, c1: { x: 4, y: -7 }, c2: { x: 14, y: -9 }, to: { x: 18, y: 0 } },
    { kind: 'cubic', from: { x: 18, y: 0 }, c1: { x: 13, y: 3 }, c2: { x: 5, y: 6 }, to: { x: 0, y: 0 } },
  ],
};
const hook: Contour = {
  closed: false,
  segments: [
    { kind: 'line', from: { x: 0, y: 20 }, to: { x: 10, y: 20 } },
    {
      kind: 'cubic',
      from: { x: 10, y: 20 },
      c1: { x: 12, y: 20 },
      c2: { x: 12, y: 22 },
      to: { x: 10, y: 22 },
    },
    { kind: 'line', from: { x: 10, y: 22 }, to: { x: 4, y: 22 } },
  ],
};
const dots = [
  circle({ x: 50, y: 10 }, 6, 4),
  circle({ x: 50, y: 30 }, 0.8, 4),
  circle({ x: 60, y: 30 }, 0.4, 4),
];
const lines = [star, leaf, hook, ...dots].map(startedWell);

describe('the tip that trails the axis', () => {
  test.each([0.15, 0.25, 0.5])(
    'keeps to the lines, and leaves none of them uncut: offset %d mm',
    (offset) => {
      const { strokes } = knifePath(lines, { ...knife, offset });
      const { off, left } = missesOf(lines, integrated(strokes, offset, firstHeading));
      expectAtMost(off, limit, 'the tip off the lines');
      expectAtMost(left, limit, 'the lines off the tip');
    },
  );

  test('goes where the closed form says, chord by chord', () => {
    const { strokes } = knifePath(lines, knife);
    const tips = tipStrokes(strokes, knife.offset, firstHeading);
    const stepped = integrated(strokes, knife.offset, firstHeading);
    const { off, left } = missesOf(
      stepped.map((points) => polyline(points)),
      tips.map(({ points }) => points),
    );
    expectAtMost(Math.max(off, left), 5e-3, 'the closed form off the integration');
  });

  test('is far off where the axis follows the lines themselves: the check tells', () => {
    const tips = tipStrokes(
      lines.map(({ segments }) => ({ closed: false, segments })),
      0.25,
      firstHeading,
    );
    expect(
      missesOf(
        lines,
        tips.map(({ points }) => points),
      ).off,
    ).toBeGreaterThan(0.1);
  });

  test('swings the blade at the first point from wherever it points', () => {
    for (const angle of [0, 1, 2, 3.1, -2]) {
      const heading = { x: Math.cos(angle), y: Math.sin(angle) };
      const { strokes } = knifePath([lines[0] ?? star], knife, heading);
      const { off } = missesOf(lines.slice(0, 1), integrated(strokes, knife.offset, heading));
      expectAtMost(off, limit);
    }
  });

  test('of random closed curves stays on them', () => {
    const random = randomFrom(21);
    for (let round = 0; round < 12; round++) {
      const at = () => ({ x: 40 * random(), y: 40 * random() });
      const nodes = Array.from({ length: 4 }, at);
      const curve = startedWell({
        closed: true,
        segments: nodes.map((from, i) => ({
          kind: 'cubic' as const,
          from,
          c1: at(),
          c2: at(),
          to: nodes[(i + 1) % nodes.length] ?? from,
        })),
      });
      const { strokes } = knifePath([curve], knife);
      expectAtMost(missesOf([curve], integrated(strokes, knife.offset, firstHeading)).off, limit);
    }
  });
});

describe('closed forms', () => {
  test('a circle is cut by the axis on one of the radius sqrt(r² + d²)', () => {
    // "compensated_radius = sqrt(radius^2 + knife_offset^2)", a thread on drag knives of January 2009 (seen); 5, 0.25 -> 5.006246.
    for (const [r, d] of [
      [5, 0.25],
      [10, 0.25],
      [25, 0.5],
    ] as const) {
      const { strokes } = knifePath([circle({ x: 0, y: 0 }, r, 16)], { ...knife, offset: d, runOn: 0 });
      const radii = strokes.flatMap(({ segments }) =>
        segments
          .slice(2)
          .flatMap((s) => [0.2, 0.5, 0.8].map((t) => Math.hypot(pointAt(s, t).x, pointAt(s, t).y))),
      );
      for (const radius of radii) expectWithin(radius, Math.hypot(r, d), 0.003);
    }
    expectWithin(Math.hypot(5, 0.25), 5.006246, 5e-7);
  });

  test('without it a circle of the axis is cut small, by sqrt(r² - d²); 5 and 3 give 4', () => {
    const axis = { closed: false, segments: circle({ x: 0, y: 0 }, 5, 32).segments };
    const rounds = Array.from({ length: 6 }, () => axis);
    const tips = tipStrokes(rounds, 3, { x: 0, y: 1 });
    for (const { x, y } of tips.at(-1)?.points.slice(-20) ?? []) expectWithin(Math.hypot(x, y), 4, 0.005);
  });

  test('pulled straight on after a right angle the blade comes round by tan(a / 2) e^(-s / d)', () => {
    // 40.395, 15.415, 5.700 degrees after one, two and three offsets: reckoned from that formula.
    [40.395, 15.415, 5.7].forEach((degrees, i) => {
      const pull = polyline([
        { x: 0, y: 0 },
        { x: 0.25 * (i + 1), y: 0 },
      ]);
      const [tip] = integrated([pull], 0.25, { x: 0, y: 1 });
      const end = tip?.at(-1) ?? { x: 0, y: 0 };
      const angle = (Math.atan2(0 - end.y, 0.25 * (i + 1) - end.x) * 180) / Math.PI;
      expectWithin(angle, degrees, 0.02);
    });
  });
});

describe('what the profile asks for', () => {
  test('a closed line is run on over its beginning by so much', () => {
    const lengths = [0, 2].map((runOn) => {
      const { strokes } = knifePath([lines[0] ?? star], { ...knife, runOn });
      const tip = tipStrokes(strokes, knife.offset, firstHeading)[0]?.points ?? [];
      return tip
        .slice(1)
        .reduce((sum, p, i) => sum + Math.hypot(p.x - (tip[i]?.x ?? 0), p.y - (tip[i]?.y ?? 0)), 0);
    });
    expectWithin((lengths[1] ?? 0) - (lengths[0] ?? 0), 2, 0.01);
  });

  test('corners cut by lifting are strokes of their own, run on past them by so much and no more', () => {
    const lifted: Knife = { ...knife, corner: 'lift', pastCorner: 0.4, runOn: 0 };
    const { strokes } = knifePath([star], lifted);
    expect(strokes).toHaveLength(10);
    const tips = integrated(strokes, knife.offset, firstHeading);
    const corners = star.segments.map(({ from }) => from);
    const wanted = new NearestFinder([star]);
    for (const p of tips.flat()) {
      const corner = Math.min(...corners.map((c) => Math.hypot(c.x - p.x, c.y - p.y)));
      if (corner > 0.4 + limit) expectAtMost(away(wanted, p), limit);
    }
    expectAtMost(missesOf([star], tips).left, limit);
  });

  test('small turns are gone over without a swing, and still cut in place', () => {
    const soft = polygon(
      Array.from({ length: 60 }, (_, i) => ({
        x: 20 * Math.cos((i * Math.PI) / 30),
        y: 20 * Math.sin((i * Math.PI) / 30),
      })),
    );
    const { strokes } = knifePath([soft], knife);
    expect(strokes[0]?.segments.every(({ kind }, i) => i < 2 || kind === 'line')).toBe(true);
    expectAtMost(missesOf([soft], integrated(strokes, knife.offset, firstHeading)).off, limit);
  });
});
