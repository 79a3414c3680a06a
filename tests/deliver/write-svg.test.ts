// The files for cutters: sizes measured by a rasteriser, only what the contract allows, read back as written.
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { writeSvg } from '../../src/deliver/write-svg.ts';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { Refused } from '../../src/finding.ts';
import { polygon, polyline } from '../../src/geometry/contour.ts';
import { tightBox } from '../../src/geometry/measure.ts';
import { expectWithin } from '../closeness.ts';
import { type PictureEngine, pictureEngine } from '../pictures/compare.ts';

const square = (x: number, y: number, side: number) =>
  polygon([
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ]);

/** A square of 100 mm on a page of 120 x 110 mm. */
const page: Drawing = {
  width: 120,
  height: 110,
  groups: [
    { role: 'artwork', layer: '#17566b', colour: '#17566b', paths: [{ contours: [square(10, 5, 100)] }] },
    { role: 'outline', paths: [] },
    {
      role: 'seam',
      paths: [
        {
          id: 'seam-start',
          contours: [
            polyline([
              { x: 1, y: 9 },
              { x: 1, y: 2 },
            ]),
          ],
        },
      ],
    },
  ],
};

let engine: PictureEngine;
beforeAll(async () => {
  engine = await pictureEngine();
});

/** Middle of the inked pixels along a row or column, in px, within a range. */
function inkAt(png: PNG, along: 'x' | 'y', at: number, from: number, to: number): number {
  let [sum, weight] = [0, 0];
  for (let i = from; i < to; i++) {
    const [x, y] = along === 'x' ? [i, at] : [at, i];
    const ink = png.data[4 * (y * png.width + x) + 3] ?? 0;
    sum += ink * (i + 0.5);
    weight += ink;
  }
  return sum / weight;
}

describe('a written cut file', () => {
  test('is as large as it says: a rasteriser at 10 px per mm finds 100 mm between the lines of a 100 mm square', () => {
    const text = writeSvg(page, { title: 'square', filled: false });
    const png = PNG.sync.read(Buffer.from(engine.rasterise(text, 1200)));
    expect([png.width, png.height]).toEqual([1200, 1100]);
    for (const along of ['x', 'y'] as const) {
      const near = inkAt(png, along, 300, 20, 400);
      const far = inkAt(png, along, 300, 700, along === 'x' ? 1200 : 1100);
      expectWithin((far - near) / 10, 100, 0.01, `the side along ${along}, mm`);
    }
  });

  test('has its real size for a reader that takes 96 px for an inch (CSS Values and Units 4, 6.2)', () => {
    const text = engine.normalise(writeSvg(page, { title: 'square', filled: false }));
    const [, width, height] = /<svg width="([\d.]+)" height="([\d.]+)"/.exec(text) ?? [];
    expectWithin((Number(width) * 25.4) / 96, 120, 1e-4, 'width, mm');
    expectWithin((Number(height) * 25.4) / 96, 110, 1e-4, 'height, mm');
  });

  test('has the same numbers in its size and in its view box', () => {
    const text = writeSvg({ ...page, width: 120.00004, height: 109.99996 }, { title: 'x', filled: false });
    expect(text).toContain('width="120mm" height="110mm" viewBox="0 0 120 110"');
  });

  test('leaves out groups without paths, and fills nothing', () => {
    const text = writeSvg(page, { title: 'x', filled: false });
    expect(text).not.toContain('data-role="outline"');
    expect(text.match(/fill="none"/g)?.length).toBe(2);
    expect(text).not.toContain('fill-opacity');
  });

  test('keeps odd names out of its markup', () => {
    const nasty = '</title><script>alert("1")</script>\u0000\u0007\ud800 & \u{1f9ed}';
    const groups = page.groups.map((group) => ({ ...group, layer: nasty, colour: nasty }));
    const text = writeSvg({ ...page, groups }, { title: nasty, filled: true });
    for (const left of ['<script', '\u0000', '\u0007', '"1"']) expect(text).not.toContain(left);
    expect(text).toContain('\u{1f9ed}');
    expect(() => engine.normalise(text)).not.toThrow();
  });

  test('is read back as it was written', () => {
    const back = readSvg(writeSvg(page, { title: 'x', filled: false }), 'wrap.cut.svg');
    expect([back.width, back.height]).toEqual([120, 110]);
    expect(back.groups.map(({ role, layer, colour }) => [role, layer, colour])).toEqual([
      ['artwork', '#17566b', '#17566b'],
      ['seam', undefined, undefined],
    ]);
    expect(back.groups[0]?.paths[0]?.contours).toEqual(page.groups[0]?.paths[0]?.contours);
    expect(back.groups[1]?.paths[0]).toEqual(page.groups[2]?.paths[0]);
  });

  test('is written with at most four decimals, and no line is off by more than half of the last', () => {
    const third = {
      ...page,
      groups: [{ role: 'outline' as const, paths: [{ contours: [square(1 / 3, 1 / 7, 50)] }] }],
    };
    const text = writeSvg(third, { title: 'x', filled: false });
    expect(text).not.toMatch(/\d\.\d{5}/);
    const { minX, minY } = tightBox(readSvg(text, 'x').groups[0]?.paths[0]?.contours ?? []);
    expectWithin(minX, 1 / 3, 0.5e-4 + 1e-12);
    expectWithin(minY, 1 / 7, 0.5e-4 + 1e-12);
  });
});

describe('a file that was changed since it was written is refused', () => {
  const text = () => writeSvg(page, { title: 'x', filled: false });
  test.each([
    ['its size in inches', (svg: string) => svg.replace('width="120mm"', 'width="4.72in"')],
    ['its view box in px', (svg: string) => svg.replace('0 0 120 110', '0 0 453.5 415.7')],
    ['no size', (svg: string) => svg.replace(/ width="120mm" height="110mm"/, '')],
    ['a broken path', (svg: string) => svg.replace('d="M', 'd="Q')],
    ['cut short', (svg: string) => svg.slice(0, -40)],
  ])('%s', (_, change) => expect(() => readSvg(change(text()), 'wrap.cut.svg')).toThrow(Refused));
});

test('a line too light for paper is drawn darker, and read back in its own colour', () => {
  const line = polygon([
    { x: 1, y: 1 },
    { x: 5, y: 1 },
    { x: 5, y: 5 },
  ]);
  const drawn = new Set<string | undefined>();
  for (const [colour, isSeen] of [
    ['#ffffff', false],
    ['#f4efe2', false],
    ['#d8b26a', true],
  ] as const) {
    const groups = [{ role: 'artwork', layer: 'a', colour, paths: [{ contours: [line] }] }] as const;
    const text = writeSvg({ width: 9, height: 9, groups }, { title: 'x', filled: false });
    expect(text.includes(`stroke="${colour}"`)).toBe(isSeen);
    expect(readSvg(text, 'x').groups[0]?.colour).toBe(colour);
    drawn.add(/ stroke="(#......)"/.exec(text)?.[1]);
  }
  // Programs of cutters may tell layers by the colours of their lines.
  expect(drawn.size).toBe(3);
});
