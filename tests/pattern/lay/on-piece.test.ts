// Held against paper's own curve booleans: a shape reaches onto a piece where the two have area in common.
import { expect, test } from 'vitest';
import { polygon } from '../../../src/geometry/contour.ts';
import { reachesOnto } from '../../../src/pattern/lay/on-piece.ts';
import { flatWall, toFlat } from '../../../src/unroll/flat-wall.ts';
import { outline, templateOf } from '../../../src/unroll/template.ts';
import { paperArea } from '../../geometry/libraries.ts';

const walls = [
  { says: 'a cylinder', wall: flatWall(40, 0, 60) },
  { says: 'wider at the lip', wall: flatWall(40, 0.2, 60) },
  { says: 'wider at the foot', wall: flatWall(60, -0.25, 60) },
];
const options = { band: { from: 10, to: 100 }, trim: { lip: 3, foot: 3 }, overlap: 6 };

test.each(walls)('nothing that lies on the piece is left out, and bits past it are: $says', ({ wall }) => {
  const template = templateOf(wall, options);
  const reaches = reachesOnto(template);
  const border = outline(template);
  let dropped = 0;
  for (const turn of [-0.006, -0.004, -0.001, 0, 0.25, 0.5, 1, 1.018, 1.024, 1.03])
    for (const along of [5, 5.9, 6.4, 7.2, 40, 102.5, 102.9, 103.6, 104.4])
      for (const [width, height] of [
        [0.6, 0.6],
        [12, 0.8],
      ] as const) {
        const { x, y } = toFlat(wall, { turn, along });
        const bar = polygon([
          { x: x - width / 2, y: y - height / 2 },
          { x: x + width / 2, y: y - height / 2 },
          { x: x + width / 2, y: y + height / 2 },
          { x: x - width / 2, y: y + height / 2 },
        ]);
        const shared = paperArea('intersection', [bar], [border]);
        if (shared > 1e-6) expect(reaches({ contours: [bar] })).toBe(true);
        if (!reaches({ contours: [bar] })) dropped++;
        // A small one past an edge is seen to be, unless it is past a corner.
        const isBesideAnEdge = turn > 0 && turn < 1 && width < 1;
        if (isBesideAnEdge && shared === 0) expect(reaches({ contours: [bar] })).toBe(false);
      }
  expect(dropped).toBeGreaterThan(30);
});
