import { describe, expect, it } from 'vitest';
import { line } from '../../../src/geometry/contour.ts';
import { profileOfBlankAlone, shownProfile } from '../../../src/job/pictures/profile-picture.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';

/** What is written on the picture of a blank. */
function written(blank: object, units: 'mm' | 'in'): readonly string[] {
  const asked: string[] = [];
  profileOfBlankAlone(readBlank(blank, 'a.blank.json'), units, (text) => {
    asked.push(text);
    return [];
  });
  return asked;
}

const stations = [
  { height: 0, across: 60 },
  { height: 100, girth: 251.2 },
];

it('names every reading as it was taken, and what each keep-out is', () => {
  const asked = written(
    {
      name: 'a cup',
      stations,
      footRound: 4,
      handle: { spans: 50, keepOff: 5 },
      keepOut: [{ what: 'dent', turn: { from: 0.4, to: 0.5 }, along: { from: 20, to: 30 } }],
    },
    'mm',
  );
  for (const text of [
    'a cup',
    '0 mm high: across 60 mm',
    '100 mm high: girth 251.2 mm',
    'common lip-and-rim zone:',
    'top 20 mm',
    'foot rounded 4 mm; thin lines show the sharp corners that all is measured from',
    'handle: takes 50 mm of girth, 5 mm kept off on either side',
    'a: dent, turn 0.4 to 0.5, 20 mm to 30 mm along',
  ])
    expect(asked).toContain(text);
});

it('goes by inches, and says the zone in both', () => {
  const asked = written(
    {
      name: 'a cup',
      units: 'in',
      stations: [
        { height: 0, across: 3 },
        { height: 4, across: 3.5 },
      ],
    },
    'in',
  );
  for (const text of ['4 in high: across 3.5 in', 'height, in', 'top 20 mm (0.7874 in)'])
    expect(asked).toContain(text);
});

it('has no lip zone on what is no drinking vessel', () => {
  expect(written({ name: 'a pot', stations, use: 'other' }, 'mm')).not.toContain('common lip-and-rim zone:');
});

describe('in a narrow window', () => {
  const blank = readBlank({ name: 'a cup', stations, footRound: 4 }, 'a.blank.json');
  /** Letters as wide as they are high: wider than those of any font. */
  const words = (text: string, size: number) =>
    [...text].map((_, i) => {
      const [x, y] = [i * 0.6 * size, -0.7 * size];
      const corners = [
        { x, y: 0 },
        { x: x + 0.6 * size, y: 0 },
        { x: x + 0.6 * size, y },
        { x, y },
      ];
      const segments = corners.map((from, k) => line(from, corners[(k + 1) % 4] ?? from));
      return { closed: true, segments };
    });
  /** The smallest letters of a picture in a window, px. */
  const smallest = (svg: string, { width, height }: { readonly width: number; readonly height: number }) => {
    const [, across, up] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
    const sizes = [...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size));
    return Math.min(...sizes) * Math.min(width / Number(across), height / Number(up));
  };

  it.each([
    { width: 330, height: 200 },
    { width: 360, height: 260 },
  ])('its letters are at least 11 px in $width by $height, and the wall is still there', (window) => {
    const narrow = shownProfile(blank, 'mm', words, window);
    expect(smallest(narrow.svg, window)).toBeGreaterThan(11);
    expect(smallest(shownProfile(blank, 'mm', words).svg, window)).toBeLessThan(8);
    const [, across] = /viewBox="0 0 ([\d.]+)/.exec(narrow.svg) ?? [];
    // 80 mm wide at its lip: a quarter of the picture and more.
    expect(80 / Number(across)).toBeGreaterThan(0.25);
    for (const told of ['100 mm high', 'girth 251.2 mm', 'lip zone:']) expect(narrow.svg).toContain(told);
    expect(narrow.notes[0]).toMatch(/^flat along the green bar: [\d.]+ mm to [\d.]+ mm$/);
  });
});
