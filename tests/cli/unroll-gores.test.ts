// `unroll --pieces gores`, measured on the files it writes.
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Wall, wallAt, wallOf } from '../../src/blank/wall.ts';
import { readSvg } from '../../src/deliver/read-svg.ts';
import type { Drawing, Role } from '../../src/drawing/drawing.ts';
import type { Contour } from '../../src/geometry/contour.ts';
import { shapeArea, tightBox } from '../../src/geometry/measure.ts';
import { clippedShapes, filledShapes } from '../../src/geometry/regions.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { lengthOf, levelLength, middleOf } from './gore-measures.ts';
import { projectFolder, type Ran, runMany, Workshop } from './run.ts';

const shop = new Workshop();
const blanks = ['barrel', 'wine-glass-bowl', 'stepped-cup', 'tapered-cup'] as const;
for (const name of blanks) {
  const file = `${name}.blank.json`;
  cpSync(join(projectFolder, 'profiles/blanks', file), shop.at(file));
}

const gores = (blank: (typeof blanks)[number], out: string, ...more: string[]) => [
  'unroll',
  `${blank}.blank.json`,
  '--pieces',
  'gores',
  '--json',
  '--out',
  out,
  ...more,
];

const darts = (blank: (typeof blanks)[number], out: string, ...more: string[]) =>
  gores(blank, out, ...more).map((word) => (word === 'gores' ? 'darts' : word));

const lines = {
  darts: darts('barrel', 'darts', '--stretch', '2%', '--joined', 'lip'),
  dartsOnSteps: darts('stepped-cup', 'refused'),
  noDarts: darts('barrel', 'refused', '--band', '40..70', '--stretch', '2%'),
  looseDarts: darts('barrel', 'refused', '--joined', 'loose', '--strip', '5'),
  barrel: gores('barrel', 'barrel'),
  few: gores('barrel', 'few', '--gores', '12', '--overlap', '6'),
  bowl: gores('wine-glass-bowl', 'bowl'),
  stepped: gores('stepped-cup', 'stepped', '--gores', '16'),
  foot: gores('barrel', 'foot', '--gores', '12', '--joined', 'foot', '--overlap', '6'),
  lip: gores('wine-glass-bowl', 'lip', '--gores', '10', '--joined', 'lip', '--strip', '3'),
  fan: gores('wine-glass-bowl', 'fan', '--gores', '10', '--joined', 'foot', '--overlap', '5'),
  stretchy: gores('barrel', 'stretchy', '--stretch', '2%'),
  stiff: gores('barrel', 'stiff', '--stretch', '0.001'),
  absurd: gores('barrel', 'refused', '--stretch', '2', '--gather', 'some'),
  straight: gores('tapered-cup', 'refused'),
  flat: gores('stepped-cup', 'refused', '--band', '10..50'),
  neck: gores('stepped-cup', 'refused', '--gores', '12', '--joined', 'foot'),
  wide: gores('barrel', 'refused', '--gores', '12', '--joined', 'foot', '--strip', '140'),
  tooFine: gores('wine-glass-bowl', 'refused', '--overlap', 'x'),
  badFlags: gores('barrel', 'refused', '--gores', '2.5', '--joined', 'rim', '--strip', '0.5'),
  loose: gores('barrel', 'refused', '--strip', '4'),
  unasked: ['unroll', 'barrel.blank.json', '--gores', '8', '--out', 'refused'],
  misspelt: ['unroll', 'barrel.blank.json', '--pieces', 'gore', '--out', 'refused'],
};
type Name = keyof typeof lines;

let ran: Readonly<Record<Name, Ran>>;
const reportOf = (name: Name) => JSON.parse(ran[name].out);
beforeAll(async () => {
  const names = Object.keys(lines) as Name[];
  const all = await runMany(
    names.map((name) => lines[name]),
    shop.folder,
  );
  ran = Object.fromEntries(names.map((name, index) => [name, all[index]])) as typeof ran;
}, 300_000);
afterAll(() => shop.clear());

const cutOf = (name: Name): Drawing => readSvg(shop.read(`${name}/template.cut.svg`), 'cut');
const guideOf = (name: Name): Drawing => readSvg(shop.read(`${name}/template.guide.svg`), 'guide');
const pathsOf = (drawing: Drawing, role: Role) =>
  drawing.groups.filter((group) => group.role === role).flatMap(({ paths }) => paths);
const outlinesOf = (name: Name): Contour[] =>
  pathsOf(cutOf(name), 'outline').flatMap(({ contours }) => contours);
const wallFor = (blank: (typeof blanks)[number]): Wall =>
  wallOf(readBlank(JSON.parse(shop.read(`${blank}.blank.json`)), blank)).wall;

/** The sheet at its mid-thickness, 0.04 mm outside the wall. */
const sheetRadius = (wall: Wall, along: number): number => {
  const { radius, lean } = wallAt(wall, along);
  return radius + 0.04 * Math.cos(lean);
};

/**
 * Length of the sheet from the foot corner up to a place, mm: parallel curves differ in length by their distance times
 * the angle turned by, and lines on either side of a corner meet on its bisector.
 */
function sheetLength(wall: Wall, along: number): number {
  const bends: number[] = [];
  if (wall.kind === 'curved' && wall.curved.profile.kind === 'stepped') {
    const leans = wall.curved.profile.corners.slice(0, -1);
    for (const [i, corner] of leans.entries())
      if (i > 0 && corner.along < along)
        bends.push(2 * Math.tan(((leans[i - 1]?.lean ?? 0) - corner.lean) / 2));
  } else bends.push(wallAt(wall, 0).lean - wallAt(wall, along).lean);
  return along + 0.04 * bends.reduce((sum, bend) => sum + bend, 0);
}

describe.each([
  ['barrel', 'barrel', 'arcs'],
  ['bowl', 'wine-glass-bowl', 'arcs'],
  ['stepped', 'stepped-cup', 'straight'],
] as const)('loose gores of %s', (name, blank, levels) => {
  test('close on the wall: at every height they have the girth of the sheet between them, to 0.01 mm', () => {
    const wall = wallFor(blank);
    const { template } = reportOf(name);
    const outlines = outlinesOf(name);
    expect(outlines).toHaveLength(template.gores.count);
    const { from, to } = template.band;
    let looked = 0;
    for (let along = from + 0.13; along < to; along += 3.7) {
      const { lean } = wallAt(wall, along);
      const radius = sheetRadius(wall, along);
      const slant = levels === 'arcs' ? radius / Math.sin(lean) : undefined;
      const up = sheetLength(wall, along) - sheetLength(wall, from);
      const girth = outlines.reduce((sum, gore) => {
        const { x, y } = middleOf(gore);
        return sum + levelLength(gore, x, y - (up + template.trim.foot), slant);
      }, 0);
      expectWithin(girth, 2 * Math.PI * radius, 0.01, `girth ${along} along`);
      looked++;
    }
    expect(looked).toBeGreaterThan(25);
  });

  test('lie apart on the sheet', () => {
    const outlines = outlinesOf(name);
    outlines.slice(1).forEach((gore, i) => {
      const before = outlines[i];
      if (!before) throw new Error('no gore');
      const common = clippedShapes([{ contours: [gore] }], [{ contours: [before] }], 'intersection', 0.003);
      expect(common).toEqual([]);
      expectAtMost(4.99, tightBox([gore]).minX - tightBox([before]).maxX);
    });
  });

  test('are numbered in the order of their turns, with the same keys each', () => {
    const { template } = reportOf(name);
    expect(template.shape).toBe('gores');
    const { count } = template.gores;
    expect(template.parts).toHaveLength(count);
    template.parts.forEach((part: { turns: { from: number; to: number } }, i: number) => {
      expect(part).toMatchObject({ shape: 'gores', sweepDeg: 0, band: template.band, trim: template.trim });
      expectWithin(part.turns.from, i / count, 1e-12);
      expectWithin(part.turns.to, (i + 1) / count, 1e-12);
      expect(part).toMatchObject({ width: expect.any(Number), height: expect.any(Number), overlap: 0 });
    });
    expect(pathsOf(cutOf(name), 'outline').map(({ id }) => id)).toEqual(
      Array.from({ length: count }, (_, i) => `gore-${i + 1}`),
    );
    const xs = outlinesOf(name).map((gore) => tightBox([gore]).minX);
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
  });
});

// The edge excess of a strip as wide as a gore, K w²/8 all the way up, K = -r''/r by differences of the wall's lean.
test.each([
  ['barrel', 'barrel'],
  ['bowl', 'wine-glass-bowl'],
] as const)(
  'an edge of a loose gore of %s is longer than its middle by the strain it reports',
  (name, blank) => {
    const wall = wallFor(blank);
    const { band, trim, gores: asked } = reportOf(name).template;
    let [excess, most] = [0, 0];
    const steps = 2000;
    for (let i = 0; i < steps; i++) {
      const along = band.from + ((band.to - band.from) * (i + 0.5)) / steps;
      const bend =
        (Math.sin(wallAt(wall, along - 0.02).lean) - Math.sin(wallAt(wall, along + 0.02).lean)) / 0.04;
      const radius = sheetRadius(wall, along);
      const strain = (bend / radius) * ((2 * Math.PI * radius) / asked.count) ** 2 * 0.125;
      excess += strain / steps;
      most = Math.max(most, strain);
    }
    expectWithin(asked.strain / most, 1, 1e-2);
    const [gore] = outlinesOf(name);
    if (!gore) throw new Error('no gore');
    const [, ...rest] = gore.segments;
    const up = rest.slice(0, Math.floor(rest.length / 2));
    const middle = sheetLength(wall, band.to) - sheetLength(wall, band.from) + trim.foot + trim.lip;
    const edge = lengthOf(up);
    // The trims bend less than the band, past the corners not at all.
    expectWithin(edge / middle - 1, excess, 0.12 * excess);
  },
);

test('film that stretches more takes fewer gores, and film that stretches less than a hand gives it no more', () => {
  const count = (name: Name) => reportOf(name).template.gores.count;
  expect(count('stretchy')).toBeLessThan(count('barrel'));
  expect(reportOf('stretchy').template.gores.strain).toBeLessThanOrEqual(0.02);
  expect(count('stiff')).toBe(count('barrel'));
  expect(ran.absurd.status).toBe(2);
  expect(ran.absurd.lines).toEqual([
    expect.stringContaining('--stretch: "2" will not do here'),
    expect.stringContaining('--gather: "some" will not do here'),
  ]);
});

test('the last gore alone has the overlap asked for, all the way up', () => {
  const outlines = outlinesOf('few');
  const widths = outlines.map((gore) => {
    const box = tightBox([gore]);
    return box.maxX - box.minX;
  });
  for (const width of widths.slice(1, -1)) expectWithin(width, widths[0] ?? 0, 1e-3);
  expectWithin((widths.at(-1) ?? 0) - (widths[0] ?? 0), 6, 1e-3);
  const { template } = reportOf('few');
  expect(template.overlap).toBe(6);
  expect(template.parts.map(({ overlap }: { overlap: number }) => overlap)).toEqual([
    ...Array.from({ length: 11 }, () => 0),
    6,
  ]);
});

describe.each(['foot', 'lip', 'fan'] as const)('gores joined in a comb: %s', (name) => {
  test('are one closed outline that nowhere lies over itself', () => {
    const [outline, ...more] = outlinesOf(name);
    if (!outline) throw new Error('no comb');
    expect(more).toEqual([]);
    const area = (fill: 'nonzero' | 'evenodd') => {
      const shapes = filledShapes([outline], fill, 0.003);
      expect(shapes).toHaveLength(1);
      return shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);
    };
    expectWithin(area('nonzero'), area('evenodd'), 0.5);
  });

  test('have the finished edges of every gore inside the comb, each its share of the girth long', () => {
    const { template } = reportOf(name);
    const wall = wallFor(name === 'foot' ? 'barrel' : 'wine-glass-bowl');
    const free = template.gores.joined === 'foot' ? 'lip' : 'foot';
    const trim = pathsOf(guideOf(name), 'trim').find(({ id }) => id === `trim-${free}`);
    const along = free === 'lip' ? template.band.to : template.band.from;
    const girth = (trim?.contours ?? []).reduce((sum, { segments }) => sum + lengthOf(segments), 0);
    expectWithin(girth, 2 * Math.PI * sheetRadius(wall, along) + template.overlap, 0.01);
    expect(trim?.contours).toHaveLength(template.gores.count);
    const [comb] = outlinesOf(name);
    const box = tightBox(comb ? [comb] : []);
    const inner = tightBox(trim?.contours ?? []);
    for (const [a, b] of [
      [box.minX, inner.minX],
      [inner.maxX, box.maxX],
      [box.minY, inner.minY],
      [inner.maxY, box.maxY],
    ] as const)
      expectAtMost(a, b + 1e-3);
  });

  test('have the area of their loose gores, but for the strip', () => {
    const { template } = reportOf(name);
    const wall = wallFor(name === 'foot' ? 'barrel' : 'wine-glass-bowl');
    const { from, to } = template.band;
    const [low, high] = [from - template.trim.foot, to + template.trim.lip];
    let wallArea = 0;
    for (let i = 0; i < 4000; i++) {
      const along = low + ((high - low) * (i + 0.5)) / 4000;
      wallArea += ((2 * Math.PI * sheetRadius(wall, along) + template.overlap) * (high - low)) / 4000;
    }
    const [comb] = outlinesOf(name);
    const area = comb ? shapeArea({ contours: [comb] }) : 0;
    // Gores are of the wall's area to the share of their strain.
    expectWithin(area / wallArea, 1, template.strain.stretch + template.strain.gathered);
  });
});

describe('the guide of gores', () => {
  test('shares its outlines with the cut file, which holds nothing else', () => {
    for (const name of ['few', 'fan'] as const) {
      expect(cutOf(name).groups.map(({ role }) => role)).toEqual(['outline']);
      expect(pathsOf(guideOf(name), 'outline')).toEqual(pathsOf(cutOf(name), 'outline'));
      // Under the pieces the guide goes on, with squares and words that the blade has no use for.
      const under = guideOf(name).groups.filter(({ apart }) => apart);
      expectAtMost(
        cutOf(name).height,
        tightBox(under.flatMap(({ paths }) => paths.flatMap((p) => p.contours))).minY,
      );
      expectAtMost(cutOf(name).height + 30, guideOf(name).height);
    }
  });

  test('has seam, finished edges, the middle line of each gore with a tick at both ends, four crosses and the two squares', () => {
    const guide = guideOf('few');
    expect(pathsOf(guide, 'seam').map(({ id }) => id)).toEqual(['seam-start', 'seam-finish']);
    expect(pathsOf(guide, 'trim').map(({ id }) => id)).toEqual(['trim-foot', 'trim-lip']);
    expect(pathsOf(guide, 'register')).toHaveLength(4 + 3 * 12 + 2);
    // A number, foot and lip to each gore.
    const beside = { ...guide, groups: guide.groups.filter(({ apart }) => !apart) };
    expect(pathsOf(beside, 'note')).toHaveLength(3 * 12);
  });

  test('holds everything it draws', () => {
    for (const name of ['barrel', 'few', 'bowl', 'stepped', 'foot', 'lip', 'fan'] as const) {
      const guide = guideOf(name);
      const box = tightBox(guide.groups.flatMap(({ paths }) => paths.flatMap(({ contours }) => contours)));
      expectAtMost(0, Math.min(box.minX, box.minY));
      expectAtMost(box.maxX, guide.width);
      expectAtMost(box.maxY, guide.height);
    }
  });

  test('draws the seam on the edges of the first gore and, net of the overlap, of the last', () => {
    const guide = guideOf('few');
    const [start, finish] = pathsOf(guide, 'seam').map(({ contours }) => tightBox(contours));
    const outlines = outlinesOf('few').map((contour) => tightBox([contour]));
    expectWithin(start?.minX ?? 0, outlines[0]?.minX ?? Number.NaN, 1e-3);
    expectWithin((outlines.at(-1)?.maxX ?? 0) - (finish?.maxX ?? 0), 6, 1e-2);
  });
});

describe('what gores ask', () => {
  test('as many as the film needs are only noted; fewer are for the maker to look at', () => {
    expect(ran.barrel.status).toBe(0);
    expect(ran.few.status).toBe(1);
    const { strain, count } = reportOf('barrel').template.gores;
    expectAtMost(strain, 0.002);
    expect(count % 2).toBe(0);
    expect(reportOf('barrel').checks).toContainEqual(
      expect.objectContaining({ rule: 'gore-strain', level: 'note' }),
    );
    expect(reportOf('few').checks).toContainEqual(
      expect.objectContaining({ rule: 'needs-stretch', level: 'look' }),
    );
  });

  test('many are told with how few film that stretches takes, unless they were asked for', () => {
    const saysOf = (name: 'barrel' | 'stretchy' | 'few') =>
      reportOf(name)
        .checks.map(({ says }: { says: string }) => says)
        .join(' ');
    expect(reportOf('barrel').template.gores.count).toBeGreaterThan(12);
    const { count } = reportOf('stretchy').template.gores;
    expect(saysOf('barrel')).toContain(`of film that gives 2 % (--stretch) ${count} are enough`);
    for (const name of ['stretchy', 'few'] as const) expect(saysOf(name)).not.toContain('are enough');
  });

  test('a strip that puckers is said', () => {
    const { stripStrain } = reportOf('foot').template.gores;
    expectAtMost(stripStrain, -0.002);
    expect(reportOf('foot').checks).toContainEqual(
      expect.objectContaining({ rule: 'strip-strain', level: 'look' }),
    );
  });

  test('corners of a stepped wall are said, and what follows them exactly', () => {
    expect(reportOf('stepped').checks).toContainEqual(
      expect.objectContaining({
        rule: 'gores-at-corners',
        says: expect.stringContaining('--pieces stacked'),
      }),
    );
  });
});

describe('darts', () => {
  test('are one outline, told by their tips, length and width', () => {
    const { template, checks } = reportOf('darts');
    expect(ran.darts.status).toBe(0);
    expect(template.gores).toMatchObject({ joined: 'lip', darts: { edge: 'foot' } });
    const { tip, length, wholeStretch } = template.gores.darts;
    expectWithin(tip - length, template.band.from, 0.1);
    expectAtMost(Math.max(wholeStretch, template.gores.strain), 0.02);
    expect(checks).toContainEqual(expect.objectContaining({ rule: 'darts', level: 'note' }));
    const outlines = cutOf('darts').groups.filter(({ role }) => role === 'outline');
    expect(outlines.flatMap(({ paths }) => paths)).toHaveLength(1);
  });
});

describe('gores are refused in words', () => {
  test.each([
    ['dartsOnSteps', ['darts-on-corners'], /--pieces stacked/],
    ['noDarts', ['lies-flat'], /leave --pieces out/],
    ['looseDarts', ['flags', 'flags'], /leave --strip out[\s\S]*give foot or lip/],
    ['straight', ['lies-flat'], /one piece lies flat on it/],
    ['flat', ['lies-flat'], /one piece lies on it/],
    ['neck', ['gores-overlap'], /lie over each other .* --joined lip/],
    ['wide', ['strip-too-wide'], /takes the whole band/],
    ['tooFine', ['not-a-length'], /"x"/],
    ['badFlags', ['flags', 'flags'], /whole number from 3 to 48[\s\S]*foot, lip or loose/],
    ['loose', ['flags'], /--joined foot/],
    ['unasked', ['flags'], /--pieces gores/],
    ['misspelt', ['flags'], /one, stacked, gores or darts/],
  ] as const)('%s', (name, rules, words) => {
    expect(ran[name].status).toBe(2);
    expect(ran[name].lines.join('\n')).toMatch(words);
    const checks = lines[name].includes('--json') ? reportOf(name).checks : undefined;
    if (checks) expect(checks.map(({ rule }: { rule: string }) => rule)).toEqual(rules);
    expect(shop.state().some((line) => line.startsWith('refused'))).toBe(false);
  });
});
