// Several pieces on one vessel, against the same film in one piece.
import { describe, expect, test } from 'vitest';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { shapeArea, tightBox } from '../../src/geometry/measure.ts';
import { filledShapes } from '../../src/geometry/regions.ts';
import { rolledPicture, rolledSheets } from '../../src/picture/rolled/rolled.ts';
import { type RolledSheet, sheetOf } from '../../src/picture/rolled/rolled-sheet.ts';
import { expectWithin } from '../closeness.ts';
import { aBentVessel, aSmoothWall, film, patch, shown, type View } from './a-vessel.ts';

const barrel = aBentVessel(
  aSmoothWall([
    [0, 42],
    [30, 48.5],
    [60, 50.5],
    [90, 48.5],
    [120, 42],
  ]),
  { from: 4, to: 118 },
);
const views: readonly View[] = ['front', 'left', 'right', 'seam'];

const all = (vessel: typeof barrel, reach: readonly [number, number] = [-0.02, 1.02]): Drawing =>
  film([[patch(vessel, reach, [vessel.band.from - 2, vessel.band.to + 2])]]);

/** Film in a view: how much of the picture it covers, and from where to where. */
function seenIn(picture: string, view: View) {
  const pieces = shown(picture, view);
  const shapes = filledShapes(pieces.flat(), 'nonzero', 0.01);
  return { area: shapes.reduce((sum, shape) => sum + shapeArea(shape), 0), box: tightBox(pieces.flat()) };
}

function expectSame(one: string, other: string): void {
  for (const view of views) {
    const [a, b] = [seenIn(one, view), seenIn(other, view)];
    expectWithin(b.area / a.area, 1, 2e-4, view);
    for (const side of ['minX', 'maxX', 'minY', 'maxY'] as const)
      expectWithin(b.box[side], a.box[side], 0.05);
  }
}

describe('pieces that cover a vessel together', () => {
  const whole = rolledPicture(all(barrel), barrel);
  const sheet = sheetOf(all(barrel), barrel);

  test('stacked, show what one piece shows, each cut where the next begins', () => {
    const stacked: RolledSheet[] = [
      [4, 40],
      [40, 81.3],
      [81.3, 118],
    ].map(([from = 0, to = 0]) => ({ ...sheet, band: { from, to } }));
    const picture = rolledSheets(stacked, barrel);
    expectSame(whole, picture);
    expect(picture.match(/data-role="joint"/g)).toHaveLength(4);
  });

  test('side by side, show what one piece shows, art past their sides cut away', () => {
    const count = 7;
    const gores = Array.from({ length: count }, (_, i): RolledSheet => {
      const [from, to] = [i / count, (i + 1) / count];
      return { ...sheet, drawing: all(barrel, [from - 0.01, to + 0.01]), sidesAt: () => [from, to] };
    });
    expectSame(whole, rolledSheets(gores, barrel));
  });

  test('leave bare what none of them covers', () => {
    const half = rolledSheets([{ ...sheet, sidesAt: () => [0, 0.5] }], barrel);
    const [left, right] = [seenIn(half, 'left'), shown(half, 'right')];
    expectWithin(left.area / seenIn(whole, 'left').area, 1, 0.05);
    expect(right.length).toBeLessThanOrEqual(2);
  });

  test('have their layers in the order of the files, each once', () => {
    const two = (drawing: Drawing): Drawing => ({
      ...drawing,
      groups: [...drawing.groups, ...drawing.groups.map((group) => ({ ...group, layer: 'second' }))],
    });
    const sheets = [
      { ...sheet, drawing: two(sheet.drawing), band: { from: 4, to: 60 } },
      { ...sheet, drawing: two(sheet.drawing), band: { from: 60, to: 118 } },
    ];
    const layers = [...rolledSheets(sheets, barrel).matchAll(/data-layer="([^"]*)"/g)].map(
      ([, name]) => name,
    );
    expect(layers).toEqual(views.flatMap(() => ['film', 'second']));
  });
});
