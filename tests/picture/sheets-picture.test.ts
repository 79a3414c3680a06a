// Names of pieces on the picture of sheets: each within its own piece, whichever way that lies. Truth: their own boxes.
import { expect, test } from 'vitest';
import { loadFont } from '../../src/artwork/text/lettering.ts';
import { polyline } from '../../src/geometry/contour.ts';
import { tightBox } from '../../src/geometry/measure.ts';
import { namePlace } from '../../src/picture/name-place.ts';
import { sheetsPicture } from '../../src/picture/sheets-picture.ts';
import { plainFont } from '../job/a-font.ts';

const rectangle = (x: number, y: number, across: number, up: number) => ({
  ...polyline([
    { x, y },
    { x: x + across, y },
    { x: x + across, y: y + up },
    { x, y: y + up },
    { x, y },
  ]),
  closed: true,
});

test.each([
  ['upright', 20, 150, true],
  ['lying', 150, 20, false],
  ['short', 24, 60, true],
])('a long name stays in a piece that is %s', (_, across, up, isTurned) => {
  const sheet = { says: 'a sheet', across: 300, up: 200, margin: 5, colour: '#17566b' };
  const piece = { name: 'ternelle-skerry-s-mug.lettering-2 1', outlines: [rectangle(40, 30, across, up)] };
  const text = sheetsPicture([{ ...sheet, pieces: [piece] }], 'sheets', loadFont(plainFont));
  const film =
    /fill-opacity=".3"[^>]*>\n(?:<g transform="rotate\(-90 ([\d.]+) ([\d.]+)\)">)?<path[^>]* d="([^"]*)"/.exec(
      text,
    );
  const [, x = '', y = '', data = ''] = film ?? [];
  expect(x !== '').toBe(isTurned);
  const numbers = data.match(/-?[\d.]+/g)?.map(Number) ?? [];
  expect(numbers.length).toBeGreaterThan(200);
  const points = numbers.flatMap((value, i) => (i % 2 === 0 ? [{ x: value, y: numbers[i + 1] ?? 0 }] : []));
  for (const p of points) {
    // Turned by -90 degrees about (x, y), y down.
    const at = isTurned ? { x: Number(x) + (p.y - Number(y)), y: Number(y) - (p.x - Number(x)) } : p;
    expect(at.x >= 40 && at.x <= 40 + across && at.y >= 30 && at.y <= 30 + up).toBe(true);
  }
});

test('what stands under a sheet ends before the next one begins', () => {
  const sheet = { across: 210, up: 297, margin: 5, colour: '#17566b', pieces: [] };
  const says = ['sheet-4: #ffffff, cut 12 times', 'sheet-5: #1c1c1c, cut 12 times'];
  const sheets = Array.from({ length: 12 }, (_, i) => ({ ...sheet, says: says[i % 2] ?? '' }));
  const asked: { readonly text: string; readonly width: number }[] = [];
  const font = loadFont(plainFont);
  sheetsPicture(sheets, 'sheets', (text, em) => {
    const drawn = font(text, em);
    if (text.startsWith('sheet-')) asked.push({ text, width: tightBox(drawn).maxX });
    return drawn;
  });
  expect(asked.length).toBeGreaterThanOrEqual(12);
  // The last one asked of each is what is drawn. Six stand side by side, a 55th of their width is an em, and two of it part them.
  for (const says of new Set(asked.map(({ text }) => text)))
    expect(asked.findLast(({ text }) => text === says)?.width).toBeLessThan(210 + (2 * 6 * 210) / 55);
});

// Truth: a ring in closed form.
test.each([0, 35, 90, 140, 180, 250])('a name stands on an arc of a ring turned by %s degrees', (turned) => {
  const [inner, outer, half] = [60, 85, 1.1];
  const on = (radius: number, angle: number) => ({
    x: 200 + radius * Math.cos(angle),
    y: 150 + radius * Math.sin(angle),
  });
  const middle = (turned * Math.PI) / 180;
  const angles = Array.from({ length: 201 }, (_, i) => middle + half * (i / 100 - 1));
  const ring = [...angles.map((a) => on(outer, a)), ...angles.toReversed().map((a) => on(inner, a))];
  const outline = { ...polyline([...ring, on(outer, middle - half)]), closed: true };
  const width = 4;
  const { at, isTall, size } = namePlace([outline], width, 5);
  expect(size).toBeGreaterThan(2);
  const [across, up] = isTall ? [size, width * size] : [width * size, size];
  for (const sx of [-0.5, 0.5])
    for (const sy of [-0.5, 0.5]) {
      const [x, y] = [at.x + sx * across - 200, at.y + sy * up - 150];
      const radius = Math.hypot(x, y);
      expect(radius).toBeGreaterThan(inner);
      expect(radius).toBeLessThan(outer);
      expect(Math.cos(Math.atan2(y, x) - middle)).toBeGreaterThan(Math.cos(half));
    }
});

test('a long title stays in the picture', () => {
  const sheet = { says: 'a sheet', across: 300, up: 200, margin: 5, colour: '#17566b', pieces: [] };
  const text = sheetsPicture([sheet], 'a name that goes on and on '.repeat(12), loadFont(plainFont));
  const width = Number(/viewBox="0 0 ([\d.]+) /.exec(text)?.[1]);
  const title = /<path fill="[^"]*" d="([^"]*)"/.exec(text)?.[1] ?? '';
  const across =
    title
      .match(/-?[\d.]+/g)
      ?.filter((_, i) => i % 2 === 0)
      .map(Number) ?? [];
  expect(across.length).toBeGreaterThan(1000);
  expect(Math.max(...across)).toBeLessThan(width);
});
