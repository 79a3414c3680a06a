// Sprays on the flat drawing: what they are mixed to, and where up the wall each colour comes to lie.
import { Color } from 'three';
import { expect, test } from 'vitest';
import { blendedAt } from '../../src/job/view/blended-colour.ts';
import { onGuide } from '../../src/job/view/flat-place.ts';
import { goreSprayInk, sprayInk } from '../../src/page/board/spray-ink.ts';
import { flatWall } from '../../src/unroll/flat-wall.ts';

test('colours are mixed as light is, as the vessel in 3D mixes them', () => {
  const pairs = [
    ['#000000', '#ffffff'],
    ['#16324a', '#d4532f'],
    ['#10cc10', '#030405'],
  ] as const;
  for (const [low, high] of pairs)
    for (const share of [0, 0.1, 0.5, 0.73, 1]) {
      // Three mixes in light too: another library's word for it.
      const mixed = new Color().lerpColors(new Color(low), new Color(high), share);
      expect(blendedAt([low, high], share), `${low} ${high} ${share}`).toBe(`#${mixed.getHexString()}`);
    }
  expect(blendedAt(['#ff0000', '#00ff00', '#0000ff'], 0.5)).toBe('#00ff00');
  expect(blendedAt(['#123456'], 0.5)).toBe('#123456');
});

/** A canvas that tells what gradient was asked of it. */
function asked() {
  const told = { shape: '', numbers: [] as number[], stops: [] as (readonly [number, string])[] };
  const gradient = { addColorStop: (at: number, colour: string) => void told.stops.push([at, colour]) };
  const of =
    (shape: string) =>
    (...numbers: number[]) => {
      Object.assign(told, { shape, numbers });
      return gradient as CanvasGradient;
    };
  return { told, ink: { createLinearGradient: of('linear'), createRadialGradient: of('radial') } };
}

const side = { offset: 0, slope: 0 } as never;
const toFile = { a: 1, b: 0, c: 0, d: 1, e: 30, f: 40 };
const placeOf = (sine: number) => ({
  wall: flatWall(40, sine, 50),
  toFile,
  band: { from: 20, to: 80 },
  piece: { from: 17, to: 83 },
  left: side,
  right: side,
});
const spray = { colours: ['#ff0000', '#0000ff'], over: { from: 20, to: 80 } };

test.each([0.1, -0.1])('on a cone of sine %d each colour keeps its level', (sine) => {
  const place = placeOf(sine);
  const { told, ink } = asked();
  sprayInk(ink, place, spray);
  const [x = 0, y = 0, inner = 0, , , outer = 0] = told.numbers;
  expect(told.shape).toBe('radial');
  for (const turn of [0, 0.3, 0.9])
    for (const [along, colour] of [
      [20, '#ff0000'],
      [50, blendedAt(spray.colours, 0.5)],
      [80, '#0000ff'],
    ] as const) {
      const on = onGuide(place, { turn, along });
      const at = (Math.hypot(on.x - x, on.y - y) - inner) / (outer - inner);
      const nearest = told.stops.toSorted((a, b) => Math.abs(a[0] - at) - Math.abs(b[0] - at))[0];
      expect(nearest?.[0]).toBeCloseTo(at, 9);
      expect(nearest?.[1]).toBe(colour);
    }
});

test('on a cylinder colours run straight from foot to lip; a piece of several has its share of them', () => {
  const { told, ink } = asked();
  sprayInk(ink, placeOf(0), { ...spray, over: { from: 20, to: 140 } });
  expect(told.shape).toBe('linear');
  expect(told.numbers).toEqual([30, 70, 30, 10]);
  expect(told.stops.at(-1)).toEqual([1, blendedAt(spray.colours, 0.5)]);
});

test('on gores colours run straight up their drawing', () => {
  const { told, ink } = asked();
  goreSprayInk(ink, { minY: 5, maxY: 65 }, spray);
  expect(told.shape).toBe('linear');
  expect(told.numbers).toEqual([0, 65, 0, 5]);
  expect(told.stops[0]).toEqual([0, '#ff0000']);
  expect(told.stops.at(-1)).toEqual([1, '#0000ff']);
});
