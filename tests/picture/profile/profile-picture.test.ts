import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { loadFont } from '../../../src/artwork/text/lettering.ts';
import { standardFlatGap } from '../../../src/blank/straightedge.ts';
import { flatBandsOfWall, type Wall, wallLength } from '../../../src/blank/wall.ts';
import { parsePathData } from '../../../src/drawing/path-data.ts';
import { boxesMeet } from '../../../src/geometry/box.ts';
import { tightBox } from '../../../src/geometry/measure.ts';
import { measuredLength, type Units } from '../../../src/lengths/length.ts';
import { profilePicture as pictureWith } from '../../../src/picture/profile/profile-picture.ts';
import type { ProfileSubject } from '../../../src/picture/profile/profile-subject.ts';
import { spread, stepOf, wordsWith } from '../../../src/picture/profile-ink.ts';
import { wallRings } from '../../../src/picture/rolled/rolled-rings.ts';
import { textWith } from '../../../src/picture/words-as-text.ts';
import { sheetOnWall } from '../../../src/unroll/sheet-wall.ts';
import { expectAtMost } from '../../closeness.ts';
import { drawn, pictureFault } from '../../pictures/compare.ts';
import { aSmoothWall, aSteppedWall } from '../a-vessel.ts';

const words = loadFont(
  readFileSync(
    createRequire(import.meta.url).resolve(
      '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf',
    ),
  ),
);

function subjectOf(name: string, wall: Wall, more: Partial<ProfileSubject> = {}): ProfileSubject {
  const rounds = { footRound: more.footRound ?? 0, lipRound: more.lipRound ?? 0 };
  return {
    name,
    rings: wallRings(wall, 0),
    ...rounds,
    stations: [],
    flatBands: flatBandsOfWall(wall, { ...rounds, flatGap: standardFlatGap }),
    lipZone: { from: wallLength(wall) - 20, says: 'top 20 mm' },
    hasHandle: false,
    keepOuts: [],
    notes: [],
    ...more,
  };
}

const stepped = subjectOf(
  'stepped cup',
  aSteppedWall([
    [0, 33],
    [70, 34.5],
    [78, 43],
    [180, 46],
  ]),
  {
    footRound: 3,
    lipRound: 1,
    stations: [
      { along: 0, says: '0 mm high: across 66 mm' },
      { along: 70.016, says: '70 mm high: across 69 mm' },
    ],
    hasHandle: true,
    keepOuts: [{ letter: 'a', along: { from: 20, to: 32 } }],
    notes: ['a: embossed mark, turn 0.4 to 0.6, 20 mm to 32 mm along'],
  },
);

const barrelWall = aSmoothWall([
  [0, 40],
  [30, 45],
  [60, 47],
  [90, 45],
  [120, 40],
]);
const band = { from: 25, to: 97 };
const barrel = subjectOf('barrel', barrelWall, {
  stations: [{ along: 60, says: 'across 94 mm' }],
  strain: {
    places: sheetOnWall(barrelWall, { coats: 0, film: 0, gather: 0.001 }, band).strain,
    stretch: 0.03,
    gather: 0.001,
  },
});
const tower = subjectOf(
  'tower',
  aSteppedWall([
    [0, 30],
    [100, 30],
  ]),
);

const profilePicture = (subject: ProfileSubject, units: Units, caption: typeof words): string =>
  pictureWith(subject, units, wordsWith(caption));

/** The text of a part of the picture. */
const part = (picture: string, role: string): string =>
  picture.split(`<g data-role="${role}">`)[1]?.split('</g>')[0] ?? '';

const pathsIn = (text: string) => [...text.matchAll(/ d="([^"]+)"/g)].map(([, d]) => parsePathData(d ?? ''));

describe('the scale along the wall', () => {
  it('has a figure at every mark, in an inner corner too, and none over another', () => {
    const picture = profilePicture(stepped, 'mm', words);
    const text = part(picture, 'along-scale');
    const plates = [...text.matchAll(/<path fill="#eeedea" d="([^"]+)"/g)].map(([, d]) =>
      tightBox(parsePathData(d ?? '')),
    );
    const length = stepped.rings.at(-1)?.along ?? 0;
    expect(plates.length).toBe(Math.floor(length / 10) + 1);
    plates.forEach((plate, i) => {
      for (const other of plates.slice(0, i)) expect(boxesMeet(plate, other)).toBe(false);
    });
  });
});

describe('the band of a job', () => {
  it('is a line inside the wall from its one end to its other, with its figures', () => {
    const said: string[] = [];
    const tell: typeof words = (text, em) => {
      said.push(text);
      return words(text, em);
    };
    const picture = profilePicture({ ...tower, band: { from: 12, to: 70, says: '12 to 70' } }, 'mm', tell);
    const lines = pathsIn(part(picture, 'band')).map((line) => tightBox(line));
    expect([lines[0]?.minY, lines[0]?.maxY]).toEqual([-70, -12]);
    expectAtMost(lines[0]?.maxX ?? 99, 29);
    expect(lines.slice(1, 3).map(({ maxX, minY }) => [maxX, minY])).toEqual([
      [30, -12],
      [30, -70],
    ]);
    expect(said).toContain('12 to 70');
    expect(part(profilePicture(tower, 'mm', words), 'band')).toBe('');
  });
});

describe('the scale', () => {
  it('is one unit a mm: a wall 100 mm high and 60 mm across is drawn so', () => {
    const picture = profilePicture(tower, 'mm', words);
    const [body] = pathsIn(part(picture, 'wall'));
    const box = tightBox(body ?? []);
    expect([box.minX, box.maxX, box.minY, box.maxY]).toEqual([-30, 30, -100, 0]);
    const [, width, height, view] =
      /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([^"]+)"/.exec(picture) ?? [];
    expect(view).toBe(`${width} ${height}`);
  });

  it('comes out of the rasteriser at true size', async () => {
    const picture = profilePicture(tower, 'mm', words);
    const width = Number(/width="([\d.]+)mm"/.exec(picture)?.[1]);
    const png = await drawn(picture, 1400);
    const rows = new Set<number>();
    for (let y = 0; y < png.height; y++)
      for (let x = 0; x < png.width; x++) {
        const i = 4 * (y * png.width + x);
        // The body's own grey, which nothing else has.
        if (png.data[i] === 0xdc && png.data[i + 1] === 0xdf && png.data[i + 2] === 0xdf) rows.add(y);
      }
    const tall = (Math.max(...rows) - Math.min(...rows) + 1) * (width / png.width);
    // The pen of the foot, 0.2 letters of 2.08 mm, covers half its width of the body, and the thin line across the lip, 0.06
    // letters, half its own; a pixel either way.
    expect(Math.abs(tall - 100)).toBeLessThan(0.21 + 0.07 + (2 * width) / png.width);
  });

  it('marks heights every so many mm, the last where the wall ends', () => {
    const marks = pathsIn(part(profilePicture(tower, 'mm', words), 'height-scale')).flat();
    const box = tightBox(marks.slice(0, 1));
    expect([box.minY, box.maxY]).toEqual([-100, 0]);
  });

  it('goes by inches where that is wanted', () => {
    expect(stepOf('in', 5)).toBeCloseTo(6.35, 9);
    expect(stepOf('mm', 5)).toBe(5);
    expect(measuredLength(25.4, 'in')).toBe('1 in');
    expect(profilePicture(tower, 'in', words)).not.toBe(profilePicture(tower, 'mm', words));
  });
});

describe('what is shown', () => {
  it('draws a flat band as long as it is, along the wall', () => {
    const [bar] = pathsIn(part(profilePicture(tower, 'mm', words), 'flat-band'));
    const box = tightBox(bar ?? []);
    // Less a hair at either end, by which bars that meet are told apart.
    expect(box.maxY - box.minY).toBeGreaterThan(99.5);
    expect(box.maxY - box.minY).toBeLessThanOrEqual(100);
    expect(box.minX).toBeGreaterThan(30);
  });

  it('hatches the lip and rim zone 20 mm down the wall, on both sides', () => {
    const shapes = pathsIn(part(profilePicture(tower, 'mm', words), 'lip-zone'));
    const beside = shapes.map((shape) => tightBox(shape)).filter(({ minX, maxX }) => minX > 20 || maxX < -20);
    expect(beside.some(({ minX }) => minX > 0) && beside.some(({ maxX }) => maxX < 0)).toBe(true);
    expect(Math.max(...beside.map(({ maxY }) => maxY))).toBeCloseTo(-80, 2);
    expect(Math.min(...beside.map(({ minY }) => minY))).toBeCloseTo(-100, 2);
  });

  it('hatches nothing on a blank that has no lip zone', () => {
    const { lipZone: _, ...none } = tower;
    expect(profilePicture(none, 'mm', words)).not.toContain('data-role="lip-zone"');
  });

  it('writes what it is asked to, as outlines', () => {
    const asked: string[] = [];
    const picture = profilePicture(stepped, 'mm', (text, height) => {
      asked.push(text);
      return words(text, height);
    });
    for (const text of [
      'stepped cup',
      'common lip-and-rim zone:',
      'top 20 mm',
      '70 mm high: across 69 mm',
      'a',
      ...stepped.notes,
    ])
      expect(asked).toContain(text);
    for (const { from, to } of stepped.flatBands)
      expect(asked).toContain(`flat ${measuredLength(from, 'mm')} to ${measuredLength(to, 'mm')}`);
    expect(picture).not.toMatch(/<text|NaN|undefined|Infinity|href/);
    expect(profilePicture(stepped, 'mm', words)).toBe(picture);
  });

  it('plots strain only where there is some, and where it is most', () => {
    const asked: string[] = [];
    const saying = (text: string, height: number) => {
      asked.push(text);
      return words(text, height);
    };
    profilePicture(stepped, 'mm', saying);
    expect(asked).not.toContain('what the band asks of the film');
    profilePicture(barrel, 'mm', saying);
    const places = barrel.strain?.places ?? [];
    const peak = places.reduce((a, b) => (b.strain > a.strain ? b : a));
    expect(asked).toContain(`${(100 * peak.strain).toFixed(2)} % at ${measuredLength(peak.along, 'mm')}`);
  });
});

describe('labels that would lie on each other', () => {
  it('are moved apart, as little as can be', () => {
    expect(spread([0, 10, 20], 5)).toEqual([0, 10, 20]);
    expect(spread([10, 10], 4)).toEqual([8, 12]);
    expect(spread([0, 1, 2], 3)).toEqual([-2, 1, 4]);
  });
});

describe('the picture', () => {
  it.each([
    { name: 'profile-stepped', subject: stepped },
    { name: 'profile-barrel', subject: barrel },
  ])('looks like its reference, $name', async ({ name, subject }) => {
    const picture = profilePicture(subject, 'mm', words);
    expect(await pictureFault(picture, { name, widthPx: 1200, tolerance: 0.0002 })).toBeUndefined();
  });
});

describe('words as text', () => {
  it('say what the outlines say, where they say it, as wide as those; a name can bring no markup in', () => {
    const named = { ...tower, name: 'a <script>"tower"&' };
    const shown = pictureWith(named, 'mm', textWith(words));
    const asked: { readonly text: string; readonly minX: number }[] = [];
    const outlined = wordsWith(words);
    pictureWith(named, 'mm', (text, at, style) => {
      const placed = outlined(text, at, style);
      asked.push({ text, minX: placed.box.minX });
      return placed;
    });
    expect(shown).not.toContain('<script');
    expect(shown).toContain('a &#60;script&#62;&#34;tower&#34;&#38;');
    expect([...shown.matchAll(/<text /g)]).toHaveLength(asked.length);
    // An advance reaches past a letter's ink by its side bearings: less than a fifth of the letters' size.
    const [text, at] = ['150 mm high', { x: 0, y: 0 }];
    for (const anchor of ['left', 'middle', 'right'] as const) {
      const style = { size: 4, fill: '#000000', anchor };
      const [drawn, said] = [outlined(text, at, style).box, textWith(words)(text, at, style).box];
      for (const edge of ['minX', 'maxX', 'minY', 'maxY'] as const)
        expectAtMost(Math.abs(drawn[edge] - said[edge]), 0.8, edge);
    }
  });
});
