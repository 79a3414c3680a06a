// Source: geodesics of a cone, see source.md.
import { expect, test } from 'vitest';
import { distance, type Point } from '../../../src/geometry/point.ts';
import { flatWall, radiusAt, sweep, toFlat, toWall } from '../../../src/unroll/flat-wall.ts';
import { expectWithin } from '../../closeness.ts';
import values from './values.json' with { type: 'json' };

const { baseRadius, slant } = values;
// Standing on its base: the wall narrows to the apex at the lip.
const wall = flatWall(baseRadius, -baseRadius / slant, 0);
const onWall = ({ turn, rho }: { readonly turn: number; readonly rho: number }) => ({
  turn,
  along: slant - rho,
});
const [from, to] = [toFlat(wall, onWall(values.from)), toFlat(wall, onWall(values.to))];

/** The length of a path drawn on the sheet, measured in space on the standing cone. */
function lengthInSpace(path: readonly Point[]): number {
  const upright = Math.sqrt(1 - wall.sine ** 2);
  const places = path.map((p) => {
    const { turn, along } = toWall(wall, p);
    const r = radiusAt(wall, along);
    return [r * Math.cos(2 * Math.PI * turn), r * Math.sin(2 * Math.PI * turn), along * upright] as const;
  });
  return places.slice(1).reduce((sum, [x, y, z], i) => {
    const [a, b, c] = places[i] ?? [x, y, z];
    return sum + Math.hypot(x - a, y - b, z - c);
  }, 0);
}

const path = (bulge: number): Point[] =>
  Array.from({ length: 2001 }, (_, i) => {
    const t = i / 2000;
    const aside = bulge * Math.sin(Math.PI * t);
    return { x: from.x + t * (to.x - from.x) + aside, y: from.y + t * (to.y - from.y) + aside };
  });

test('the cone of base radius 2 and slant 4 lies flat as half a disc', () => {
  expectWithin((Math.abs(sweep(wall)) * 180) / Math.PI, values.sectorDeg, 1e-12);
});

test('the chord of the published example is as long on the sheet', () => {
  expectWithin(distance(from, to), values.chord, 5e-7);
});

test('the straight line on the sheet is as long on the standing cone, and every path beside it is longer', () => {
  const straight = lengthInSpace(path(0));
  expectWithin(straight, values.chord, 2e-6);
  for (const bulge of [-0.1, -0.01, 0.01, 0.1]) expect(lengthInSpace(path(bulge))).toBeGreaterThan(straight);
});

test('a straight strip rides up from a level line: its middle lies nearer the apex than its ends', () => {
  const [one, other] = [toFlat(wall, { turn: 0.3, along: 1 }), toFlat(wall, { turn: 0.7, along: 1 })];
  const middle = toWall(wall, { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 });
  // Half the sector between them is 0.2 · 180 degrees: the chord's middle is at rho cos 36° from the apex.
  expectWithin(slant - middle.along, 3 * Math.cos((36 * Math.PI) / 180), 1e-9);
});
