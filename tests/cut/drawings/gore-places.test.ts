// Places of the wall on gores, rolled up again by the proof's own formulas.
import { describe, expect, test } from 'vitest';
import { patchOnGore, patchOnGores } from '../../../src/cut/drawings/gore-places.ts';
import { translation } from '../../../src/geometry/affine.ts';
import { type GoreSurface, halfShare, rollGore } from '../../../src/prove/written/rolled-gore.ts';
import { type GoreOptions, goreOutline } from '../../../src/unroll/gores.ts';
import { expectWithin } from '../../closeness.ts';
import { barrel } from '../../unroll/gore-walls.ts';

const wall = barrel(50, 120, 60, 1);
const count = 8;
const options: GoreOptions = { count, band: { from: 5, to: 115 }, spacing: 4, levels: 'arcs' };
const surface: GoreSurface = {
  places: Array.from({ length: 2401 }, (_, i) => ({ on: i * 0.05, ...wall.at(i * 0.05) })),
  levels: 'arcs',
  count,
};

/** Where points of an outline in a gore's own drawing lie, in shares of its half width and mm on. */
const rolled = (points: readonly { x: number; y: number }[]) =>
  points.map(({ x, y }) => {
    const { aside, on } = rollGore(surface, options.band.from, { x, y: -y });
    return { share: aside / halfShare(surface, on), on };
  });

describe('a place on a gore', () => {
  test('has its edges at its turns and its heights on the wall', () => {
    const { segments } = patchOnGore(wall, options, { from: -0.4, to: 0.9 }, { from: 40, to: 60 });
    const places = rolled(segments.map(({ from }) => from));
    for (const { share, on } of places) {
      const off = Math.min(
        Math.abs(share + 0.4),
        Math.abs(share - 0.9),
        Math.abs(on - 40) / 20,
        Math.abs(on - 60) / 20,
      );
      expectWithin(off, 0, 1e-4);
    }
    expectWithin(Math.min(...places.map(({ share }) => share)), -0.4, 1e-4);
    expectWithin(Math.max(...places.map(({ on }) => on)), 60, 1e-3);
  });

  const laid = Array.from({ length: count }, (_, i) => ({
    number: i + 1,
    own: goreOutline(wall, options),
    options,
    place: translation(60 * i, 0),
  }));
  const goresOf = (patch: Parameters<typeof patchOnGores>[2]) =>
    patchOnGores(wall, laid, patch).shapes.map(({ contours }) =>
      Math.round((contours[0]?.segments[0]?.from.x ?? 0) / 60 + 1),
    );

  test('is drawn on every gore that it reaches, and on both ends of the seam', () => {
    expect(goresOf({ says: 'dent', turn: { from: 0.3, to: 0.42 }, along: { from: 40, to: 60 } })).toEqual([
      3, 4,
    ]);
    expect(
      goresOf({ says: 'weld line', turn: { from: 0.98, to: 1.02 }, along: { from: 0, to: 120 } }),
    ).toEqual([1, 8]);
    expect(goresOf({ says: 'lip zone', along: { from: 100, to: 120 } })).toHaveLength(count);
  });

  test('is drawn nowhere where the gores do not reach', () => {
    expect(goresOf({ says: 'lid', along: { from: 116, to: 120 } })).toEqual([]);
  });
});
