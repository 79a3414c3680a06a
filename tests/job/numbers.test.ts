// Degenerate geometry, one row each, from the typed job to the proof of the files it makes.
//
// Held elsewhere: the maps of the wall near the cylinder and at sweeps up to 350 degrees (tests/unroll/flat-wall and
// template), a cone a billionth off a cylinder (make), closing for every count from 1 to 500 (tests/pattern/closing), art
// on borders between cells and art drawn another way (tests/pattern/robust), shapes that touch their copies or lie on one
// another (tests/pattern/one-clean-cut), panels laid together (panels), and random walls (tests/unroll/whole-and-parts).
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Refused } from '../../src/finding.ts';
import { signedArea } from '../../src/geometry/measure.ts';
import { runOff } from '../../src/job/plan/plan.ts';
import { grownTemplate, outline, type Template } from '../../src/unroll/template.ts';
import { expectAtMost, expectWithin, expectWithinPart } from '../closeness.ts';
import { chordPoints, randomFrom } from '../geometry/drawn.ts';
import { clipperArea } from '../geometry/libraries.ts';
import { dotTile, madeOf, type Typed } from './a-job.ts';

const wallOf = (foot: number, lip: number, height: number) => ({
  use: 'other',
  footRound: 0,
  lipRound: 0,
  stations: [
    { height: 0, across: foot },
    { height, across: lip },
  ],
});

const can = wallOf(80, 80, 60);
/** Girth of the standard film around the can, its middle 0.04 mm above the wall. */
const girth = Math.PI * 80.08;
const cup = wallOf(62, 80, 60);
const butt = { seam: { style: 'butt' }, trim: { lip: 0, foot: 0 } };
const dots = dotTile(20, 20);

const tileOf = (width: number, height: number, body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${body}</svg>`;
/** A tile of 25 mm by 20 mm, ten around the can. */
const small = (body: string): string => tileOf(25, 20, body);
const bar = (from: number, to: number): string => `<path d="M${from} 5H${to}V15H${from}Z"/>`;

/** What film covers where it covers all: the piece and what is cut past it. By the outline, whose area is checked on its own. */
const whole = (template: Template): number => Math.abs(signedArea(outline(grownTemplate(template, runOff))));

/** The part of a disc below a level line `high` above its lowest point. Source: circular segment, Wikipedia, from memory. */
const segmentArea = (radius: number, high: number): number =>
  radius ** 2 * Math.acos(1 - high / radius) - (radius - high) * Math.sqrt(2 * radius * high - high ** 2);

interface Row extends Typed {
  readonly name: string;
  readonly around: number;
  /** Area of film, by closed form, mm², and how far it may be off. */
  readonly film?: (template: Template) => { readonly area: number; readonly within: number };
  /** A tile that shows the same. */
  readonly like?: string;
}

const rows: readonly Row[] = [
  { name: 'a taper down to 8 mm', blank: wallOf(60, 8, 80), tile: dots, around: 5 },
  { name: 'a cylinder but for a thousandth', blank: wallOf(80, 80.001, 60), tile: dots, around: 13 },
  { name: 'a sweep of 349 degrees', blank: wallOf(40, 200, 20.24), job: butt, tile: dots, around: 19 },
  { name: 'a corner on the seam', blank: can, tile: small('<path d="M0 10L6 5V15Z"/>'), around: 10 },
  {
    name: 'corners that meet on the seam',
    blank: can,
    tile: small('<path d="M0 10L6 5V15Z"/><path d="M25 10L19 5V15Z"/>'),
    around: 10,
  },
  {
    name: 'a round that touches the seam',
    blank: can,
    tile: small('<circle cx="5" cy="10" r="5"/>'),
    around: 10,
  },
  {
    name: 'a round that touches the seam of a taper',
    blank: cup,
    tile: tileOf(20, 20, '<circle cx="5" cy="10" r="5"/>'),
    around: 11,
  },
  {
    name: 'rounds that touch on the seam',
    blank: can,
    tile: small('<circle cx="5" cy="10" r="5"/><circle cx="20" cy="10" r="5"/>'),
    around: 10,
  },
  {
    name: 'edges along the seam from both sides',
    blank: can,
    tile: small(bar(0, 6) + bar(19, 25)),
    like: small(`${bar(-6, 6)}${bar(19, 31)}`),
    around: 10,
  },
  {
    name: 'edges that coincide',
    blank: can,
    tile: small(bar(4, 10) + bar(10, 16) + bar(4, 10)),
    like: small(bar(4, 16)),
    around: 10,
  },
  {
    name: 'film of half a micrometre beside a bar',
    blank: can,
    tile: small(bar(4, 10) + bar(15, 15.0005)),
    like: small(bar(4, 10)),
    around: 10,
  },
  {
    name: 'bars that overlap by half a micrometre',
    blank: can,
    tile: small(bar(4, 10) + bar(9.9995, 16)),
    like: small(bar(4, 16)),
    around: 10,
  },
  {
    name: 'a disc larger than the wall',
    blank: can,
    tile: tileOf(251, 200, '<circle cx="125" cy="100" r="90"/>'),
    around: 1,
    film: () => {
      const scale = girth / 251;
      // Cut a trim of 3 mm and the run-off past the lip, 60 mm up.
      return { area: segmentArea(90 * scale, 60 + 3 + runOff - 10 * scale), within: 4 };
    },
  },
  {
    name: 'a disc larger than its tile and the wall',
    blank: cup,
    tile: small('<circle cx="12.5" cy="10" r="60"/>'),
    around: 9,
    film: (template) => ({ area: whole(template), within: 0.5 }),
  },
  {
    name: 'one repeat around',
    blank: can,
    tile: dotTile(240, 20),
    artwork: { around: 1 },
    around: 1,
    film: () => ({ area: 3 * Math.PI * (4 * (girth / 240)) ** 2, within: 0.2 }),
  },
  {
    name: '500 repeats around',
    blank: can,
    tile: tileOf(0.5, 20, '<path d="M0.1 0H0.35V20H0.1Z"/>'),
    artwork: { around: 500 },
    around: 500,
    // Half of the piece and the run-off at its ends, to a bar; beside its sides, bars wholly in the waste are left out.
    film: () => ({ area: ((girth + 6) * (60 + 2 * (3 + runOff))) / 2, within: 0.25 * 68 }),
  },
  {
    name: 'one repeat around a cylinder but for a thousandth, a round that touches the seam',
    blank: wallOf(80, 80.001, 60),
    tile: tileOf(251, 30, '<circle cx="12" cy="15" r="12"/>'),
    artwork: { around: 1 },
    around: 1,
    // Two rows within the piece, the third and the one below cut by its ends: no less than two rounds, no more than four.
    film: () => ({ area: 3 * Math.PI * (12 * (girth / 251)) ** 2, within: Math.PI * 12.1 ** 2 }),
  },
  {
    name: 'a sweep of 349 degrees, rounds that touch on the seam, and film of half a micrometre',
    blank: wallOf(40, 200, 20.24),
    job: butt,
    tile: small(`<circle cx="5" cy="10" r="5"/><circle cx="20" cy="10" r="5"/>${bar(12, 12.0005)}`),
    like: small('<circle cx="5" cy="10" r="5"/><circle cx="20" cy="10" r="5"/>'),
    around: 15,
  },
  {
    name: 'edges that coincide on the seam of a cylinder but for a thousandth, 500 around',
    blank: wallOf(80, 80.001, 60),
    tile: tileOf(
      0.5,
      20,
      '<path d="M-0.1 0H0.1V20H-0.1Z"/><path d="M0.4 0H0.6V20H0.4Z"/><path d="M0.1 0H0.15V20H0.1Z"/>',
    ),
    like: tileOf(0.5, 20, '<path d="M-0.1 0H0.15V20H-0.1Z"/><path d="M0.4 0H0.65V20H0.4Z"/>'),
    artwork: { around: 500 },
    around: 500,
  },
  {
    name: 'features larger than the wall on a taper down to 8 mm, one repeat around',
    blank: wallOf(60, 8, 80),
    tile: tileOf(107, 300, '<circle cx="53" cy="150" r="250"/>'),
    artwork: { around: 1 },
    around: 1,
  },
];

const filmOf = ({ report }: Awaited<ReturnType<typeof madeOf>>): number =>
  (report.pattern?.layers ?? []).reduce((sum, { area }) => sum + area, 0);

describe.each(rows)('$name', ({ around, film, like, ...typed }) => {
  test('closes, holds its proof and covers what it should', async () => {
    const made = await madeOf(typed);
    const { proof, report, draft } = made;
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    expect(report.pattern?.around).toBe(around);
    expectAtMost(report.pattern?.seamGap?.position ?? Number.NaN, 0.01, 'gap at the seam, mm');
    expect(draft.cut + draft.guide).not.toMatch(/NaN|Infinity|undefined/);
    expectAtMost(-filmOf(made), -1, 'film, mm², below 0');
    if (film) {
      const { area, within } = film(draft.plan.template);
      expectWithin(filmOf(made), area, within, 'area of film, mm²');
    }
    if (like) expectWithinPart(filmOf(made), filmOf(await madeOf({ ...typed, tile: like })), 1e-4, 'film');
  });
});

describe('what can not be made is refused by name', () => {
  const plate = { use: 'other', stations: [40, 200].map((across) => ({ height: 0, across })) };
  test.each<readonly [string, Typed, RegExp]>([
    ['a taper to nothing', { blank: wallOf(60, 0, 80) }, /0 is no size/],
    [
      'a foot of a nanometre',
      { blank: wallOf(1e-6, 60, 80) },
      /0.000001 is under 0.1 mm, which cannot be meant; check the unit$/,
    ],
    [
      'a taper to 2 mm, and a trim past the point',
      { blank: wallOf(60, 2, 80) },
      /give less, or a band further/,
    ],
    ['a taper to 0.2 mm without a trim', { blank: wallOf(60, 0.2, 80), job: butt }, /even without a trim/],
    ['an overlap wider than the lip', { blank: wallOf(60, 0.2, 80) }, /least girth, 0.628 mm/],
    ['a sweep past 350 degrees', { blank: wallOf(40, 200, 19.2) }, /350.1 degrees of a ring/],
    ['a ring that its overlap closes', { blank: wallOf(40, 200, 20.24) }, /flat ring meets itself/],
    ['a plate', { blank: wallOf(40, 200, 0.5) }, /as a plate does/],
    ['a plate of no height', { blank: plate }, /all at 0 mm/],
    ['nothing but half a micrometre', { blank: can, tile: small(bar(15, 15.0005)) }, /shows no area/],
    ['a side along the seam without its other half', { blank: can, tile: small(bar(0, 6)) }, /may not meet/],
  ])('%s', async (_, typed, says) => {
    const asked = madeOf(typed);
    await expect(asked).rejects.toThrow(Refused);
    await expect(asked).rejects.toThrow(says);
  });
});

test('bars half a micrometre apart are told as too near to cut apart, and do not pass as sound', async () => {
  const { report, proof } = await madeOf({ blank: can, tile: small(bar(4, 10) + bar(10.0005, 16)) });
  expect(report.checks.map(({ rule }) => rule)).toContain('thin-gap');
  const doubled = report.checks.find(({ rule }) => rule === 'doubled-line');
  expect(doubled?.says).toContain('where a hair of a gap is left between them, both its sides are cut');
  expect(proof.checks.filter(({ pass }) => !pass).map(({ rule }) => rule)).toEqual(['lines-once']);
});

test('colours that fill a tile between them fill the piece between them', async () => {
  const share = fc.double({ min: 0.2, max: 0.8, noNaN: true });
  await fc.assert(
    fc.asyncProperty(share, share, fc.constantFrom(can, cup), async (across, up, blank) => {
      const [x, y] = [25 * across, 20 * up];
      const { draft, report } = await madeOf({
        blank,
        tile: small(
          `<path fill="#c22" d="M2 2H${x}V${y}H2Z"/><path fill="#2c2" d="M${x} 2H23V${y}H${x}Z"/><path fill="#22c" fill-rule="evenodd" d="M0 0H25V20H0ZM2 2H23V${y}H2Z"/>`,
        ),
      });
      const areas = (report.pattern?.layers ?? []).map(({ area }) => area);
      expect(areas).toHaveLength(3);
      // Borders shared by two colours are rounded in each: up to a hair of 6e-5 mm over some metres.
      expectWithin(
        areas.reduce((sum, area) => sum + area, 0),
        whole(draft.plan.template),
        1,
        'area of all layers, mm²',
      );
    }),
    { seed: 20268, numRuns: 3 },
  );
});

// Held against Clipper 6. Of the 1 mm that art goes on past the piece, what lies there alone is left out: so only on the piece.
test('colours that meet along bends leave nothing of the piece bare, and lie nowhere on one another, whatever the wall', async () => {
  const random = randomFrom(5);
  const from = (least: number, most: number): number => least + (most - least) * random();
  for (const lay of ['even', 'conformal', 'even']) {
    const [x, cx, cy, r] = [from(12, 19), from(5, 6), from(5, 15), from(0.3, 2)];
    const [a, b] = [`${x + from(-3, 3)} 7`, `${x + from(-3, 3)} 13`];
    const disc = `M${cx - r} ${cy}A${r} ${r} 0 0 1 ${cx + r} ${cy}A${r} ${r} 0 0 1 ${cx - r} ${cy}Z`;
    const tile = small(
      `<g fill-rule="evenodd"><path fill="#22c" d="M0 0H25V20H0ZM2 2H23V18H2Z"/><path fill="#c22" d="M2 2H${x}C${a} ${b} ${x} 18H2Z${disc}"/></g><path fill="#2c2" d="M${x} 2H23V18H${x}C${b} ${a} ${x} 2Z"/><path fill="#cc2" d="${disc}"/>`,
    );
    const blank = wallOf(from(30, 50), from(30, 60), from(25, 45));
    const { draft } = await madeOf({
      blank,
      tile,
      artwork: { lay },
      job: { film: { minPiece: 0.001, minWidth: 0.001 } },
    });
    const piece = chordPoints(outline(grownTemplate(draft.plan.template, 0)), 1e-4);
    const layers = (draft.pattern?.wrap.layers ?? []).map(({ shapes }) =>
      shapes.flatMap(({ contours }) => contours.map((contour) => chordPoints(contour, 1e-3))),
    );
    expect(layers).toHaveLength(4);
    const on = layers.map((points) => clipperArea('intersection', points, [piece], 'evenodd'));
    const area = clipperArea('union', [piece], [], 'evenodd');
    expectWithin(
      on.reduce((sum, one) => sum + one, 0),
      area,
      1,
      'area of all layers, mm²',
    );
    expectWithin(
      clipperArea('intersection', layers.flat(), [piece], 'nonzero'),
      area,
      1,
      'area that is covered, mm²',
    );
  }
});
