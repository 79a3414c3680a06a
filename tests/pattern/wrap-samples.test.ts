import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readTile, type Tile } from '../../src/artwork/tile.ts';
import { loadTools } from '../../src/cli/tools.ts';
import { NearestFinder } from '../../src/geometry/nearest.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { fitTolerance } from '../../src/geometry/tolerance.ts';
import { toSheet } from '../../src/pattern/lay/lay.ts';
import { girthAt, toWall } from '../../src/unroll/flat-wall.ts';
import { expectAtMost } from '../closeness.ts';
import { type MadeWrap, makeWrap } from './a-wrap.ts';

const sineOf = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);

const samples = [
  {
    name: 'tapered-cup/scales',
    sine: sineOf(4.5),
    radius: 36.5,
    repeat: {},
    lay: 'even' as const,
    around: 5,
  },
  { name: 'pot/terns', sine: -sineOf(6.2), radius: 54, repeat: { drop: 30 }, lay: 'conformal' as const },
  { name: 'canister/ropes', sine: sineOf(3), radius: 43, repeat: {}, lay: 'even' as const },
];

describe('the sample tiles on a taper', () => {
  const tiles = new Map<string, Tile>();
  beforeAll(async () => {
    const { normalise } = await loadTools();
    for (const { name } of samples)
      tiles.set(name, readTile(readFileSync(`samples/${name}.svg`, 'utf8'), `${name}.svg`, normalise).tile);
  });

  it.each(samples)(
    '$name: no more than 1.5 times the curves, and the error reported is the error made',
    (sample) => {
      const tile = tiles.get(sample.name);
      expect(tile?.layers.length).toBeGreaterThan(0);
      if (!tile) throw new Error('no tile');
      const made = makeWrap({
        shapes: tile.layers.flatMap(({ shapes }) => shapes),
        width: tile.width,
        height: tile.height,
        radius: sample.radius,
        sine: sample.sine,
        lay: sample.lay,
        ...sample.repeat,
        ...('around' in sample ? { around: sample.around } : {}),
        band: { from: 12, to: 132 },
      });
      // The same art on a cylinder of the same girth is merged alike, with its own curves.
      const straight = makeWrap({
        shapes: tile.layers.flatMap(({ shapes }) => shapes),
        width: tile.width,
        height: tile.height,
        radius: sample.radius,
        ...sample.repeat,
        ...('around' in sample ? { around: sample.around } : {}),
        band: { from: 12, to: 132 },
      });
      const count = ({ contours }: MadeWrap) =>
        contours.reduce((sum, { segments }) => sum + segments.length, 0);
      expectAtMost(count(made), 1.5 * count(straight), 'segments');
      expectAtMost(made.wrap.fitError, fitTolerance, 'reported error');
      const measured = fitErrorOf(made, straight);
      expectAtMost(measured, fitTolerance, 'error');
      expectAtMost(measured, 2 * made.wrap.fitError, 'error over what is reported');
    },
  );
});

/** Largest distance of the exact image, taken from the wrap on a cylinder, from the curves on the taper. */
function fitErrorOf(made: MadeWrap, straight: MadeWrap): number {
  const finder = new NearestFinder(made.contours);
  const { band, wall } = made.template;
  let worst = 0;
  straight.contours.slice(0, 25).forEach(({ segments }) => {
    for (const s of segments)
      for (let i = 0; i <= 200; i++) {
        const { turn, along } = toWall(straight.lay.wall, pointAt(s, i / 200));
        const laid = { x: turn * girthAt(wall, wall.reference), y: straight.lay.fromAlong(along) };
        const y = made.lay.toAlong(laid.y);
        if (turn < 0.02 || turn > 0.98 || y < band.from + 1 || y > band.to - 1 || along > band.to - 1)
          continue;
        const exact = toSheet(made.lay, laid);
        const near = finder.find(exact, 0.05) ?? finder.find(exact, 5);
        worst = Math.max(worst, near?.distance ?? 5);
      }
  });
  return worst;
}
