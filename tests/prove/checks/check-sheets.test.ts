// Sheets that vessels of a list share, where a layer of one name is of another film for each: the vessel's own film is where it is looked for.
import { expect, test } from 'vitest';
import { sheetChecks } from '../../../src/prove/checks/check-sheets.ts';
import { readDelivered } from '../../../src/prove/written/delivered-file.ts';

const ring = (x: number, y: number, side: number): string =>
  `M${x} ${y}L${x + side} ${y}L${x + side} ${y + side}L${x} ${y + side}Z`;

const art = (layer: string, ...paths: readonly string[]): string =>
  `<g data-role="artwork" data-layer="${layer}">${paths.map((d) => `<path d="${d}"/>`).join('')}</g>`;

const outline = (id: string, d: string): string => `<g data-role="outline"><path id="${id}" d="${d}"/></g>`;

const file = (name: string, ...groups: readonly string[]) =>
  readDelivered(
    `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100">${groups.join('')}</svg>`,
    name,
  );

const parts = new Map([
  [
    'tern.wrap',
    file(
      'tern.wrap.cut.svg',
      art('blue', ring(10, 5, 4)),
      art('name', ring(20, 22, 6)),
      outline('wrap', ring(0, 0, 40)),
    ),
  ],
  [
    'kelp.wrap',
    file(
      'kelp.wrap.cut.svg',
      art('blue', ring(10, 5, 4)),
      art('name', ring(8, 25, 3)),
      outline('wrap', ring(0, 0, 40)),
    ),
  ],
]);
const asked = { across: 200, up: 100, margin: 0, mirror: false, batch: 1 };

/** The blue sheet, which has the name of the one vessel, and the gold one, which has the other's. */
const blue = (...more: readonly string[]) =>
  file(
    'sheet-1.cut.svg',
    art('blue', ring(20, 15, 4), ring(80, 15, 4)),
    art('name', ring(30, 32, 6), ...more),
    outline('tern.wrap.1', ring(10, 10, 40)),
    outline('kelp.wrap.1', ring(70, 10, 40)),
  );
const gold = (...names: readonly string[]) =>
  file('sheet-2.cut.svg', art('name', ...names), outline('kelp.wrap.1', ring(5, 5, 40)));

const failed = (...files: readonly ReturnType<typeof file>[]): readonly string[] =>
  sheetChecks(
    files.map((one) => ({ file: one, times: 1 })),
    parts,
    asked,
  )
    .filter(({ pass }) => !pass)
    .map(({ rule }) => rule);

test('a name that is of another film than those of other vessels lies on the sheet of that film', () => {
  expect(failed(blue(), gold(ring(13, 30, 3)))).toEqual([]);
});

test('one that is on neither sheet, on both, or beside its place is named', () => {
  expect(failed(blue())).toContain('sheet-lines');
  expect(failed(blue(ring(78, 35, 3)), gold(ring(13, 30, 3)))).toContain('sheet-pieces');
  expect(failed(blue(), gold(ring(13.2, 30, 3)))).toContain('sheet-lines');
});
