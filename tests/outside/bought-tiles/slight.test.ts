// Crops of the tiles that show less than is promised, 1.15 to 1.24 periods each way, and few things twice: their repeat is offered, never laid unasked.
import { expect, test } from 'vitest';
import { isSameLattice } from '../../../src/pattern/lattice/same-lattice.ts';
import { repeatTolerance, trueRepeat } from '../../../src/pattern/repeat/true-repeat.ts';
import { sureRepeat } from '../../../src/pattern/study/sure-repeat.ts';
import { randomFrom } from '../../geometry/drawn.ts';
import { boughtTiles, seen } from './tiles.ts';
import { tileNames } from './windows.ts';

const names = ['current', 'glamorous', 'signal', 'charlie-brown', 'happy-intersection'];
const more = ['random-shapes', 'houndstooth', 'aztec', 'circuit-board'];

test.each([...names, ...more])('of %s the tile itself is offered', (name) => {
  const [bought] = boughtTiles((one) => one === name);
  if (!bought) throw new Error(`${name} is not in the package`);
  const { width, height, layers } = bought.tile;
  const random = randomFrom(tileNames.indexOf(name) + 5);
  const periods = () => 1.15 + 0.09 * random();
  const size = { width: periods() * width, height: periods() * height };
  const shown = seen(
    bought.tile,
    { x: random() * width, y: random() * height },
    size.width,
    size.height,
    true,
  );
  const [found] = trueRepeat(
    layers.map((layer, i) => ({ ...layer, ...shown[i] })),
    size,
  );
  if (!found) throw new Error('no repeat was found');
  expect(isSameLattice(found, { a: { x: width, y: 0 }, b: { x: 0, y: height } }, repeatTolerance)).toBe(true);
  expect(found.confidence).toBeLessThan(sureRepeat / 2);
});
