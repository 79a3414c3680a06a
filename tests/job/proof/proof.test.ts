// Files put to the proof as they were written, and as they should never be: each way of spoiling them is named.
import { beforeAll, describe, expect, test } from 'vitest';
import type { Blank } from '../../../src/blank/blank.ts';
import { pointAt } from '../../../src/geometry/segment.ts';
import { stemOf } from '../../../src/job/deliverables.ts';
import { askedOf, layersAsMade } from '../../../src/job/proof/proof.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { equalParts } from '../../../src/pattern/lattice/closing.ts';
import { type Proof, proofOf } from '../../../src/prove/proof.ts';
import type { PieceText } from '../../../src/prove/written/delivered-file.ts';
import { readPath } from '../../../src/prove/written/path-reader.ts';
import { randomFrom } from '../../geometry/drawn.ts';
import { madeOf, type Typed } from '../a-job.ts';

/** Two colours that cross the tile's borders, so that there are layers to shift and art at the seam. */
const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M-6 15Q0 6 6 15Q0 24 -6 15Z" fill="#17566b"/><path d="M34 15Q40 6 46 15Q40 24 34 15Z" fill="#17566b"/>
  <path d="M14 6C20 2 26 8 22 14C18 12 12 12 14 6Z" fill="#d4532f"/></svg>`;

const flat = { use: 'other', footRound: 3, lipRound: 2 };
const cup = {
  ...flat,
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270.2 },
  ],
};
const handledMug = {
  ...flat,
  stations: [
    { height: 0, across: 78 },
    { height: 95, across: 84 },
  ],
  handle: { spans: 50, keepOff: 5 },
};
const barrel = {
  use: 'other',
  wall: 'smooth',
  stations: [
    { height: 0, across: 80 },
    { height: 30, across: 90 },
    { height: 60, across: 94 },
    { height: 90, across: 90 },
    { height: 120, across: 80 },
  ],
};
const cases: Readonly<Record<string, Typed>> = {
  'a tapered cup': {
    blank: cup,
    job: { coats: [{ name: 'base', thickness: 0.4 }] },
    tile,
  },
  'a straight mug': {
    blank: {
      ...flat,
      stations: [
        { height: 0, across: 80 },
        { height: 90, across: 80 },
      ],
    },
    tile,
  },
  'a pot wider at the foot, conformal, half drop': {
    blank: {
      ...flat,
      stations: [
        { height: 0, across: 120 },
        { height: 110, across: 96 },
      ],
    },
    artwork: { lay: 'conformal', repeat: { across: 40, up: 30, drop: 15 } },
    tile,
  },
  'a wide bowl, whole rows': {
    blank: {
      ...flat,
      stations: [
        { height: 0, across: 60 },
        { height: 45, across: 150 },
      ],
    },
    job: { edges: 'whole-rows' },
    tile,
  },
  'a butt seam': {
    blank: {
      ...flat,
      stations: [
        { height: 0, across: 70 },
        { height: 90, across: 82 },
      ],
    },
    job: { seam: { style: 'butt' }, trim: { foot: 0, lip: 0 } },
    tile,
  },
  'a pot whose edges fade': {
    blank: {
      ...flat,
      stations: [
        { height: 0, across: 120 },
        { height: 110, across: 96 },
      ],
    },
    job: { edges: 'fade' },
    artwork: { lay: 'conformal', repeat: { across: 40, up: 30, drop: 15 } },
    tile,
  },
  'a seam cut through': {
    blank: {
      ...flat,
      stations: [
        { height: 0, across: 62 },
        { height: 110, across: 80 },
      ],
    },
    job: { seam: { style: 'cut-through', overlap: 9 }, coats: [{ name: 'base', thickness: 0.4 }] },
    tile,
  },
  'a seam under a cover strip': {
    blank: {
      ...flat,
      stations: [
        { height: 0, across: 90 },
        { height: 110, across: 70 },
      ],
    },
    job: { seam: { style: 'strip', strip: 12 } },
    tile,
  },
  'a mug with a handle': {
    blank: handledMug,
    tile,
  },
  'a barrel in stacked pieces': {
    blank: barrel,
    job: { band: { from: 15, to: 90 }, pieces: 'stacked', film: { stretch: 0.005 } },
    tile,
  },
  'a tapered cup in panels': {
    blank: cup,
    job: { sheet: { across: 130, up: 170, margin: 5 } },
    tile,
  },
  'a seam cut through, in panels': {
    blank: cup,
    job: { seam: { style: 'cut-through' }, sheet: { across: 130, up: 170, margin: 5 } },
    tile,
  },
  'a mug with a handle in panels edge to edge': {
    blank: handledMug,
    job: { panels: { overlap: 0, joints: [0.3, 0.62] } },
    tile,
  },
  'a barrel in stacked pieces under cover strips': {
    blank: barrel,
    job: {
      band: { from: 15, to: 90 },
      pieces: 'stacked',
      film: { stretch: 0.005 },
      seam: { style: 'strip', strip: 8 },
    },
    tile,
  },
  'a barrel in stacked pieces of two panels': {
    blank: barrel,
    job: {
      band: { from: 15, to: 90 },
      pieces: 'stacked',
      film: { stretch: 0.005 },
      sheet: { across: 180, up: 120, margin: 5 },
    },
    tile,
  },
  'a plain piece': {
    blank: {
      ...flat,
      stations: [
        { height: 0, across: 62 },
        { height: 150, across: 86 },
      ],
    },
  },
};

interface Made {
  readonly files: readonly PieceText[];
  readonly strips: readonly PieceText[];
  readonly proof: Proof;
  /** Put files to the proof as `prove` does, with the blank of the job or another. */
  readonly prove: (files: readonly PieceText[], blank?: Blank, strips?: readonly PieceText[]) => Proof;
}

async function madeCase(typed: Typed): Promise<Made> {
  const { drafts, draft, parts: strips, blank, proof } = await madeOf(typed);
  const files = drafts.map(({ cut, guide, mark }) => ({
    stem: stemOf('wrap', mark),
    cut,
    guide,
  }));
  const closing = draft.pattern?.plan.closing;
  const pattern = closing && { equalParts: equalParts(closing), layers: layersAsMade(drafts) };
  const asked = (other: Blank) => askedOf({ job: draft.job, blank: other, ...(pattern ? { pattern } : {}) });
  const own = asked(blank);
  const prove = (texts: readonly PieceText[], other = blank, cover: readonly PieceText[] = strips) =>
    proofOf(other === blank ? own : asked(other), { wraps: texts, strips: cover });
  return { files, strips, proof, prove };
}

const made: Record<string, Made> = {};
beforeAll(async () => {
  for (const [name, typed] of Object.entries(cases)) made[name] = await madeCase(typed);
}, 120_000);

const of = (name: string): Made => {
  const found = made[name];
  if (!found) throw new Error(`no case "${name}"`);
  return found;
};

const failed = ({ checks }: Proof): string[] => checks.filter(({ pass }) => !pass).map(({ rule }) => rule);
const names = Object.keys(cases);
const withArt = names.filter((name) => cases[name]?.tile !== undefined);

type Change = (text: string) => string;

/** Numbers of path data changed, point by point. */
const changed = (data: string, change: (x: number, y: number) => readonly [number, number]): string => {
  const numbers = (data.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
  let i = 0;
  const points = numbers.flatMap((x, at) => (at % 2 === 0 ? change(x, numbers[at + 1] ?? 0) : []));
  return data.replace(/-?\d+(?:\.\d+)?/g, () => ` ${points[i++]}`);
};

const everyPath =
  (change: (data: string, index: number) => string): Change =>
  (text) => {
    let index = 0;
    return text.replace(/ d="([^"]*)"/g, (_, data) => ` d="${change(data, index++)}"`);
  };

/** Within the groups of a role, from the first or the last. */
const inGroup =
  (role: string, which: 'first' | 'last', change: Change): Change =>
  (text) => {
    const groups = [...text.matchAll(new RegExp(`<g data-role="${role}"[\\s\\S]*?</g>`, 'g'))];
    const group = which === 'first' ? groups[0] : groups.at(-1);
    if (!group) throw new Error(`no group "${role}"`);
    const at = group.index;
    return text.slice(0, at) + change(group[0]) + text.slice(at + group[0].length);
  };

const spoiled = (files: readonly PieceText[], cut: Change, guide: Change = (text) => text): PieceText[] =>
  files.map((file, i) =>
    i > 0
      ? file
      : {
          ...file,
          ...(file.cut === undefined ? {} : { cut: cut(file.cut) }),
          ...(file.guide === undefined ? {} : { guide: guide(file.guide) }),
        },
  );

const scaled = (by: number): Change => everyPath((data) => changed(data, (x, y) => [x * by, y * by]));
const sizeScaled =
  (by: number): Change =>
  (text) =>
    text.replace(/(width|height)="([\d.]+)mm"/g, (_, name, mm) => `${name}="${Number(mm) * by}mm"`);

describe.each(names)('%s', (name) => {
  test('holds in every row, as made', () => {
    expect(failed(of(name).proof)).toEqual([]);
    expect(of(name).proof.pass).toBe(true);
    expect(of(name).proof.checks.length).toBeGreaterThan(10);
  });

  test('leaves the rows far from their limits: nothing passes by a hair', () => {
    for (const { rule, value, limit, unit, bound } of of(name).proof.checks)
      if (bound === 'most' && unit === 'mm' && rule !== 'flat') expect(value, rule).toBeLessThan(0.3 * limit);
  });

  test.each([0.99, 1.01, 1.0005])('fails when the cut file is %d of its size', (by) => {
    const proof = of(name).prove(spoiled(of(name).files, scaled(by)));
    expect(failed(proof)).toContain('scale');
    expect(failed(proof)).toContain('as-guide');
  });

  test('fails when both files are 1 % larger', () => {
    const proof = of(name).prove(spoiled(of(name).files, scaled(1.01), scaled(1.01)));
    expect(failed(proof)).toContain('scale');
  });

  test('fails when only its stated size is 1 % off', () => {
    const proof = of(name).prove(spoiled(of(name).files, sizeScaled(1.01)));
    expect(failed(proof)).toEqual(['scale']);
  });

  test('fails when a node of the outline is moved by 0.2 mm, in the cut file or in both', () => {
    const nudge = inGroup(
      'outline',
      'first',
      everyPath((data) =>
        data.replace(/^M([\d.]+) ([\d.]+)/, (_, x, y) => `M${Number(x) + 0.2} ${Number(y) + 0.2}`),
      ),
    );
    expect(failed(of(name).prove(spoiled(of(name).files, nudge)))).toContain('as-guide');
    expect(failed(of(name).prove(spoiled(of(name).files, nudge, nudge)))).toContain('outline');
  });

  test('does not care where on the page the piece lies', () => {
    const away = everyPath((data) => changed(data, (x, y) => [x + 3, y + 2]));
    const grown: Change = (text) =>
      away(text).replace(
        /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 [\d.]+ [\d.]+"/,
        (_, w, h) =>
          `width="${Number(w) + 3}mm" height="${Number(h) + 2}mm" viewBox="0 0 ${Number(w) + 3} ${Number(h) + 2}"`,
      );
    expect(failed(of(name).prove(spoiled(of(name).files, grown, grown)))).toEqual([]);
  });

  test('fails when a file is missing or cut short', () => {
    const [first, ...rest] = of(name).files;
    if (!first) throw new Error('no files');
    expect(failed(of(name).prove([{ stem: first.stem, guide: first.guide ?? '' }, ...rest]))).toContain(
      'files',
    );
    const cut = (first.cut ?? '').slice(0, -30);
    expect(failed(of(name).prove([{ ...first, cut }, ...rest]))).toContain('plain-file');
    expect(failed(of(name).prove([]))).toEqual(['files']);
  });

  test('fails when it is told of a transform that moves nothing', () => {
    const moved: Change = (text) =>
      text.replace('<g data-role="outline"', '<g transform="scale(1)" data-role="outline"');
    expect(failed(of(name).prove(spoiled(of(name).files, moved)))).toEqual(['plain-file']);
  });
});

describe.each([
  { by: 96 / 25.4, says: '25.4/96' },
  { by: 72 / 25.4, says: '25.4/72' },
  { by: 25.4 / 96, says: '25.4/96' },
  { by: 25.4 / 72, says: '25.4/72' },
  { by: 96 / 72, says: '1/96 in were read as 1/72' },
])('a file that came out $by times its size', ({ by, says }) => {
  test.each(['a tapered cup', 'a straight mug'])('is told for what it is: %s', (name) => {
    for (const files of [
      spoiled(of(name).files, scaled(by)),
      spoiled(of(name).files, scaled(by), scaled(by)),
      spoiled(of(name).files, sizeScaled(by)),
    ]) {
      const row = of(name)
        .prove(files)
        .checks.find(({ rule }) => rule === 'scale');
      expect(row?.pass).toBe(false);
      expect(row?.says).toContain(says);
    }
  });

  test('is told where the size has no unit, which is px', () => {
    const bare: Change = (text) => text.replace(/(width|height)="([\d.]+)mm"/g, '$1="$2"');
    const row = of('a straight mug')
      .prove(spoiled(of('a straight mug').files, bare))
      .checks.find(({ rule }) => rule === 'scale');
    expect(row?.says).toContain('25.4/96');
  });
});

describe.each(withArt)('the art of %s', (name) => {
  const shift = (x: number, y: number): Change =>
    everyPath((data) => changed(data, (px, py) => [px + x, py + y]));

  test.each([
    [0.1, 0],
    [0, 0.1],
    [-0.07, 0.07],
  ])('fails when a layer is shifted by (%d, %d) mm in the cut file, or in both', (x, y) => {
    const moved = inGroup('artwork', 'last', shift(x, y));
    expect(failed(of(name).prove(spoiled(of(name).files, moved)))).toContain('as-guide');
    expect(failed(of(name).prove(spoiled(of(name).files, moved, moved)))).toContain('register');
  });

  test('fails when a shape is taken out of the cut file, or of both', () => {
    const without = inGroup('artwork', 'first', (text) => text.replace(/<path[^>]*>\n/, ''));
    const one = failed(of(name).prove(spoiled(of(name).files, without)));
    expect(one).toContain('all-there');
    expect(failed(of(name).prove(spoiled(of(name).files, without, without)))).toContain('art-whole');
  });

  test('fails when a line is there twice: a shape, a shape a hair beside itself, part of a line', () => {
    const twice = (change: Change) =>
      inGroup('artwork', 'first', (text) => text.replace(/<path[^>]*>\n/, (path) => path + change(path)));
    const parts: Change = everyPath((data) => {
      const [, from, first] = /^M([^CLZ]+)([CL][^CLZ]+)/.exec(data) ?? [];
      return `M${from}${first}L${from}Z`;
    });
    for (const change of [(path: string) => path, shift(0.004, 0)]) {
      const files = spoiled(of(name).files, twice(change), twice(change));
      expect(failed(of(name).prove(files))).toContain('lines-once');
    }
    expect(failed(of(name).prove(spoiled(of(name).files, twice(parts), twice(parts))))).toContain(
      'lines-once',
    );
  });
});

interface Node {
  readonly at: number;
  readonly whole: string;
  readonly numbers: readonly number[];
}

/** A node of the art, picked from 0 to 1: the end of a curve in a file's own numbers. */
function nodeOf(text: string, pick: number): Node {
  const art = /<g data-role="artwork"[\s\S]*?<\/g>/.exec(text);
  if (!art) throw new Error('no art');
  const curves = [...art[0].matchAll(/C(-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+) (-?[\d.]+)/g)];
  const curve = curves[Math.floor(pick * curves.length)];
  if (!curve) throw new Error('no curve');
  return { at: art.index + curve.index, whole: curve[0], numbers: curve.slice(1).map(Number) };
}

/** That node moved by 0.2 mm. */
function nodeMoved(text: string, pick: number): string {
  const { at, whole, numbers } = nodeOf(text, pick);
  const to = [(numbers[4] ?? 0) + 0.16, (numbers[5] ?? 0) + 0.12];
  return `${text.slice(0, at)}C${[...numbers.slice(0, 4), ...to].join(' ')}${text.slice(at + whole.length)}`;
}

/** Whether the node lies in the waste, past the outline of the same file. */
function isWaste(text: string, pick: number): boolean {
  const { numbers } = nodeOf(text, pick);
  const [x = 0, y = 0] = numbers.slice(4);
  const outline = /<g data-role="outline"[\s\S]*? d="([^"]*)"/.exec(text)?.[1] ?? '';
  const points = readPath(outline, { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }).flatMap(({ segments }) =>
    segments.flatMap((s) => Array.from({ length: 200 }, (_, i) => pointAt(s, i / 200))),
  );
  // A ray to the right crosses the outline an even number of times from outside.
  const crossings = points.filter((p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    return p.y > y !== q.y > y && x < p.x + ((q.x - p.x) * (y - p.y)) / (q.y - p.y);
  });
  return crossings.length % 2 === 0;
}

describe('one node of the art moved by 0.2 mm', () => {
  test.each(withArt)('is seen in the cut file, whichever node it is: %s', (name) => {
    const random = randomFrom(31);
    for (let i = 0; i < 12; i++) {
      const pick = random();
      expect(failed(of(name).prove(spoiled(of(name).files, (text) => nodeMoved(text, pick))))).toContain(
        'as-guide',
      );
    }
  });

  test.each(withArt.filter((name) => cases[name]?.blank && !name.includes('handle')))(
    'is seen in both files too, for no repeat has its like: %s',
    (name) => {
      const random = randomFrom(32);
      for (let i = 0; i < 12; i++) {
        const pick = random();
        const move: Change = (text) => nodeMoved(text, pick);
        const rules = failed(of(name).prove(spoiled(of(name).files, move, move)));
        // A node past the outline, in the waste, is cut but never laid.
        if (!isWaste(of(name).files[0]?.cut ?? '', pick)) expect(rules).toContain('repeats');
      }
    },
  );
});

test.each(withArt)(
  'how often the pattern goes around is seen without being told, spoiled or not: %s',
  async (name) => {
    const { draft, drafts, blank } = await madeOf(cases[name] ?? { blank: {} });
    const files = drafts.map(({ cut, guide }, i) => ({ stem: `wrap-${i + 1}`, cut, guide }));
    const says = (texts: readonly PieceText[]) =>
      proofOf(askedOf({ job: draft.job, blank }), { wraps: texts }).checks.find(
        ({ rule }) => rule === 'repeats',
      );
    const parts = draft.pattern && equalParts(draft.pattern.plan.closing);
    expect(says(files)?.says).toContain(`${parts} equal parts`);
    const move: Change = (text) => nodeMoved(text, 0.4);
    expect(says(spoiled(files, move, move))?.says).toContain(`${parts} equal parts`);
  },
);

describe('the wrong blank', () => {
  const other = (stations: readonly object[], more: object = {}): Blank =>
    readBlank({ ...flat, ...more, stations }, 'other.blank.json');

  test.each([
    [
      '1 mm more girth',
      [
        { height: 0, across: 62.318 },
        { height: 150, girth: 271.2 },
      ],
    ],
    [
      '1 mm less girth at the lip',
      [
        { height: 0, across: 62 },
        { height: 150, girth: 269.2 },
      ],
    ],
    [
      '0.1 mm more girth',
      [
        { height: 0, across: 62.032 },
        { height: 150, girth: 270.3 },
      ],
    ],
    [
      'a straight wall',
      [
        { height: 0, across: 74 },
        { height: 150, across: 74 },
      ],
    ],
    [
      'a cup upside down',
      [
        { height: 0, girth: 270.2 },
        { height: 150, across: 62 },
      ],
    ],
  ])('is seen: %s', (_, stations) => {
    const rules = failed(of('a tapered cup').prove(of('a tapered cup').files, other(stations)));
    expect(rules).toContain('seam-lines');
  });

  test('is seen where the wall bends', () => {
    const [, low, ...rest] = barrel.stations;
    const wider = readBlank(
      { ...barrel, stations: [{ height: 0, across: 80 }, { ...low, across: 90.2 }, ...rest] },
      'other.blank.json',
    );
    const { files, prove } = of('a barrel in stacked pieces');
    expect(failed(prove(files, wider))).toContain('fits-wall');
  });

  test('is seen where only the rounds differ: the band is then no longer flat', () => {
    const stations = [
      { height: 0, across: 62 },
      { height: 150, girth: 270.2 },
    ];
    const { files, prove } = of('a tapered cup');
    // The job's own band is the measure of what was accepted, and it reaches onto the larger round as the files do.
    const row = prove(files, other(stations, { footRound: 9 })).checks.find(({ rule }) => rule === 'flat');
    expect(row?.value).toBeGreaterThan(4);
    expect(row?.says).toContain('as far as the job asked for');
  });
});

describe('the overlap', () => {
  test('is seen when it is stretched, narrowed or missing', () => {
    const { files, prove } = of('a straight mug');
    const width = Number(/width="([\d.]+)mm"/.exec(files[0]?.cut ?? '')?.[1]);
    // Everything past the middle of the overlap moved: the outline alone, then the art with it.
    const pulled = (by: number): Change =>
      everyPath((data) => changed(data, (x, y) => [x > width - 10 - 1 - 4 ? x + by : x, y]));
    for (const by of [0.3, -0.3]) {
      const outline = inGroup('outline', 'first', pulled(by));
      const rules = failed(prove(spoiled(files, outline, outline)));
      expect(rules).toContain('outline');
      if (by < 0) expect(rules).toContain('overlap');
    }
    const all = pulled(0.3);
    const guide: Change = (text) =>
      inGroup(
        'artwork',
        'last',
        all,
      )(inGroup('artwork', 'first', all)(inGroup('outline', 'first', all)(text)));
    expect(failed(prove(spoiled(files, all, guide)))).toContain('repeats');
    const none = pulled(-6);
    const outline = inGroup('outline', 'first', none);
    expect(failed(prove(spoiled(files, outline, outline)))).toContain('overlap');
  });
});

test('a piece of a stack that is left out leaves the wall bare', () => {
  const { files, prove } = of('a barrel in stacked pieces');
  expect(files.length).toBeGreaterThan(1);
  expect(failed(prove(files.slice(0, -1)))).toContain('coverage');
});

test('a piece of a stack whose art is all a little on around no longer meets the one above it', () => {
  const { files, prove } = of('a barrel in stacked pieces');
  const turned = (by: number): Change => {
    const on = everyPath((data) => changed(data, (x, y) => [x + by, y]));
    // Two colours: all of the art, the outline as it was.
    return (text) => inGroup('artwork', 'first', on)(inGroup('artwork', 'last', on)(text));
  };
  const missBy = (by: number) =>
    prove(spoiled(files, turned(by), turned(by))).checks.find(({ rule }) => rule === 'level-joint-position');
  expect(missBy(0)).toMatchObject({ pass: true, unit: 'mm' });
  // The lines that come to the joint lean by up to 45 degrees from upright, and the piece lies turned on its sheet.
  for (const by of [0.05, -0.2]) {
    const miss = missBy(by);
    expect(miss?.pass).toBe(false);
    expect(miss?.value).toBeGreaterThan(0.7 * Math.abs(by) - 0.003);
    expect(miss?.value).toBeLessThan(Math.abs(by) + 0.003);
  }
});

test('a finished edge that climbs is not level', () => {
  const { files, prove } = of('a tapered cup');
  const climb = inGroup(
    'trim',
    'first',
    everyPath((data, i) => (i > 0 ? data : changed(data, (x, y) => [x, y + x / 5000]))),
  );
  // Its far end, 50 um low, is also past the flat wall.
  expect(failed(prove(spoiled(files, (text) => text, climb)))).toEqual(['finished-edges', 'flat']);
});

test('a piece larger than its sheet is said', async () => {
  const typed = cases['a straight mug'];
  if (!typed) throw new Error('no case');
  const sheet = { across: 200, up: 150, margin: 6 };
  const { proof } = await madeCase({ ...typed, job: { sheet, panels: { joints: [] } } });
  expect(failed(proof)).toEqual(['sheet']);
  const large = await madeCase({ ...typed, job: { sheet: { across: 120, up: 400 } } });
  expect(failed(large.proof)).toEqual([]);
});

describe.each([
  { name: 'a seam under a cover strip', count: 1 },
  { name: 'a barrel in stacked pieces under cover strips', count: 4 },
])('the strips of $name', ({ name, count }) => {
  const made = () => of(name);
  const strip = (change: Change, which: number): PieceText[] =>
    made().strips.map((file, i) =>
      i === which ? { ...file, cut: change(file.cut ?? ''), guide: change(file.guide ?? '') } : file,
    );

  test('are as many as there are seams and joints', () => {
    expect(made().strips.map(({ stem }) => stem)).toEqual(
      ['strip', 'strip-1', 'strip-2', 'strip-3'].slice(0, count),
    );
  });

  test.each([0, count - 1])(
    'are told when one is missing, wider, bent or cut otherwise than its guide',
    (which) => {
      const { files, prove, strips } = made();
      const rules = (cover: readonly PieceText[]) => failed(prove(files, undefined, cover));
      expect(rules(strips.filter((_, i) => i !== which))).toContain('strip-files');
      const outline = (change: Change) => inGroup('outline', 'first', change);
      const wider = outline(everyPath((data) => changed(data, (x, y) => [x * 1.01, y * 1.01])));
      expect(rules(strip(wider, which))).toEqual(['strip-outline']);
      const bent = outline(everyPath((data) => changed(data, (x, y) => [x + y / 400, y])));
      expect(rules(strip(bent, which))).toEqual(['strip-outline']);
      const alone = strips.map((file, i) => (i === which ? { ...file, cut: bent(file.cut ?? '') } : file));
      expect(rules(alone)).toEqual(['strip-files', 'strip-outline']);
    },
  );
});
