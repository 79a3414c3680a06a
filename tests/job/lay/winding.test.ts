// Seams that wind: through the gaps of a pattern, alike at both ends, measured by formulas and counts of the tests' own.
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { Refused } from '../../../src/finding.ts';
import { NearestFinder } from '../../../src/geometry/nearest.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { pointAt } from '../../../src/geometry/segment.ts';
import { proofOfDrafts } from '../../../src/job/proof/proof.ts';
import { flatViewOf } from '../../../src/job/view/flat-view.ts';
import { toWall } from '../../../src/unroll/flat-wall.ts';
import { windingLine } from '../../../src/unroll/winding.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { madeOf, type Typed } from '../a-job.ts';

const cup = {
  stations: [
    { height: 0, across: 62 },
    { height: 100, across: 80 },
  ],
};
const straightWall = {
  stations: [
    { height: 0, across: 73 },
    { height: 60, across: 73 },
  ],
};
const film = { minWidth: 1, minGap: 0.4, minPiece: 1 };

/** Discs in rows that stand between one another: no line up the wall misses all of them. Drawn mm. */
const brick = (radius: number): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20">${[-1, 0, 1]
    .flatMap((i) => [-1, 0, 1].map((j) => ({ x: 20 * i, y: 20 * j })))
    .flatMap(({ x, y }) => [
      `<circle cx="${x + 5}" cy="${y + 5}" r="${radius}"/>`,
      `<circle cx="${x + 15}" cy="${y + 15}" r="${radius}"/>`,
    ])
    .join('')}</svg>`;

/** Rings in a chain all around, and bars between them: nothing gets through without a cut. */
const chain =
  '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><path d="M0 8H20V11H0Z"/><circle cx="7" cy="16" r="3"/></svg>';

const winding = (more: Partial<Typed> = {}, seam: object = {}) =>
  madeOf({
    blank: cup,
    tile: brick(5.2),
    ...more,
    job: { film, seam: { style: 'winding', overlap: 6, ...seam }, ...more.job },
  });

type Made = Awaited<ReturnType<typeof winding>>;

/** Places on the winding edge of the start, and the art around it. */
function edgeOf({ draft }: Made): { points: Point[]; finder: NearestFinder } {
  const { wall, band, winding: line } = draft.plan.template;
  if (!line) throw new Error('nothing winds');
  const points = windingLine(wall, line, band.from, band.to).segments.flatMap((s) =>
    Array.from({ length: 40 }, (_, i) => pointAt(s, i / 40)),
  );
  const contours = draft.layers.flatMap(({ shapes }) => shapes.flatMap((shape) => shape.contours));
  return { points, finder: new NearestFinder(contours) };
}

describe('a seam through discs that stand between one another', () => {
  let made: Made;
  beforeAll(async () => {
    made = await winding();
  });

  test('cuts none of them, where the best straight one cuts some', () => {
    const { winding: told } = made.report.seam ?? {};
    expect(told).toMatchObject({ crossings: 0, length: 0 });
    expect(told?.straight.crossings).toBeGreaterThan(3);
    expect(told?.straight.length).toBeGreaterThan(3);
    expect(made.report.pattern?.seamGap?.crossings).toBe(0);
  });

  test('is shown where the ends meet by the line that winds', () => {
    expect(flatViewOf(made.drafts).pieces[0]?.ends).toEqual({ starts: true, finishes: true, winds: true });
  });

  test('stays where the pattern has it beside a motif in front, and goes on by whole repeats from one that stands there', async () => {
    const turnsBy = async (turn: number) => {
      const items = [{ file: 'disc.svg', across: 20, at: { turn, along: 50 } }];
      const disc =
        '<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm"><circle cx="10mm" cy="10mm" r="10mm"/></svg>';
      const { report } = await winding({ files: { 'disc.svg': disc }, job: { items } });
      return report.seam?.winding?.turns.from ?? Number.NaN;
    };
    const alone = made.report.seam?.winding?.turns.from ?? Number.NaN;
    expect(await turnsBy(0.5)).toBe(alone);
    // 11 tiles go around; the disc and its room are 22 mm wide, a tile some 20.
    const repeats = ((await turnsBy(0)) - alone) * (made.report.pattern?.around ?? 0);
    expectWithin(Math.abs(repeats), Math.round(Math.abs(repeats)), 1e-9);
    expect(Math.abs(repeats)).toBeGreaterThan(0.5);
    expect(Math.abs(repeats)).toBeLessThan(2.5);
  });

  test('comes no nearer to a disc than the least feature, and turns on 3 mm or more', () => {
    const { points, finder } = edgeOf(made);
    const nearest = Math.min(...points.map((p) => finder.find(p, 5)?.distance ?? 5));
    // A cell of the grid is 0.19 mm.
    expect(nearest).toBeGreaterThan(film.minWidth - 0.2);
    expect(made.report.seam?.winding?.radius).toBeGreaterThan(2.9);
  });

  test('has both ends alike, and laps by the overlap where the wall is narrowest and by more above', () => {
    const { template } = made.draft.plan;
    const { wall, winding: line } = template;
    const { band } = template;
    const girth = (along: number) => 2 * Math.PI * (wall.radius + (along - wall.reference) * wall.sine);
    expectWithin((line?.lap ?? 0) * girth(band.from), 6, 1e-9, 'overlap at the foot');
    for (const rule of ['outline', 'overlap', 'coverage', 'repeats', 'art-whole'])
      expect(made.proof.checks.find((check) => check.rule === rule)).toMatchObject({ pass: true });
    expect(made.proof.pass).toBe(true);
    const overlap = made.proof.checks.find(({ rule }) => rule === 'overlap');
    expectWithin(overlap?.value ?? 0, 6, 0.01, 'overlap as proved');
  });

  test('is said with what it spares and how it is laid', () => {
    const said = made.report.checks.find(({ rule }) => rule === 'winding-seam');
    expect(said?.level).toBe('note');
    expect(said?.says).toMatch(
      /cuts no film; the best straight one would cut film at \d+ places.*at the tightest/,
    );
    expect(made.report.seam?.steps.join(' ')).toMatch(
      /leave its first 12 mm.*under it.*winding edge of the start/,
    );
    expect(made.draft.guide).toContain('id="seam-start"');
    expect(made.draft.guide).toContain('id="start-on-finish"');
  });

  test('fails its proof where one end was moved', () => {
    const cut = made.draft.cut.replace(
      /(data-role="outline"[^>]*>\s*<path[^>]* d="M[^C]*C[^C]*C[^C]*C[^C]*C[^C]*C)([\d.]+)/,
      (_, before: string, x: string) => `${before}${Number(x) + 0.5}`,
    );
    expect(cut).not.toBe(made.draft.cut);
    const proof = proofOfDrafts(made.drafts, made.blank, [{ stem: 'wrap', cut, guide: made.draft.guide }]);
    expect(proof.pass).toBe(false);
  });
});

test('edge to edge, the finish ends where the start begins, all the way up', async () => {
  const made = await winding({}, { overlap: 0 });
  expect(made.proof.checks.filter(({ pass }) => !pass)).toEqual([]);
  expect(made.draft.plan.template.winding?.lap).toBe(0);
  expect(made.draft.guide).not.toContain('start-on-finish');
});

test('two films, one spread under the other, end alike on one line that cuts neither, and in register', async () => {
  const discs = [-1, 0, 1].flatMap((i) =>
    [-1, 0, 1].flatMap((j) =>
      [5, 15].map((at) => {
        const [x, y] = [20 * i + at, 20 * j + at];
        return `<circle cx="${x}" cy="${y}" r="4.9" fill="#17566b"/><circle cx="${x + 1.5}" cy="${y - 1}" r="3" fill="#d8b26a"/>`;
      }),
    ),
  );
  const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20">${discs.join('')}</svg>`;
  const layers = { order: ['#17566b', '#d8b26a'], style: 'knocked-out', spread: 0.2 };
  const made = await winding({ tile, job: { layers } });
  expect(made.report.seam?.winding).toMatchObject({ crossings: 0, length: 0 });
  for (const rule of ['outline', 'overlap', 'register', 'art-whole'])
    expect(made.proof.checks.find((check) => check.rule === rule)).toMatchObject({ pass: true });
  expect(made.proof.pass).toBe(true);
});

test('where film goes all around, it is cut once, and across: by no more than its width asks', async () => {
  const made = await winding({ tile: chain });
  const { winding: told } = made.report.seam ?? {};
  const rings = told?.crossings ?? 0;
  expect(made.proof.checks.filter(({ pass }) => !pass)).toEqual([]);
  expect(rings).toBe(told?.straight.crossings);
  // The bars are 3 mm wide as drawn, and rows grow by the scale of the pattern; the edge of the band may cut one.
  const width = 3 * (made.report.pattern?.scaleUp ?? 0);
  expectAtMost((told?.length ?? 0) / rings, width * 1.02, 'film cut at a bar');
  expectAtMost(made.report.pattern?.seamGap?.position ?? 1, 0.01, 'gap');
  expect(made.report.pattern?.seamGap?.crossings).toBeGreaterThan(0);
});

test('where a straight seam cuts as little as any, it is taken: what winds cuts no more', async () => {
  // Three strands around: by which cells of a grid they were in, one place across a strand was told dearer than another.
  const strands = [0, 1, 2].map((strand) => {
    const places = Array.from({ length: 121 }, (_, i) => {
      const x = i - 30;
      return `${x} ${(20 + 8 * Math.sin(2 * Math.PI * (x / 30 + strand / 3))).toFixed(3)}`;
    });
    return `<path d="M${places.join('L')}" fill="none" stroke="#${strand}${strand}${strand}" stroke-width="3.2"/>`;
  });
  const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="40mm" viewBox="0 0 30 40">${strands.join('')}</svg>`;
  const { report } = await winding({ tile, blank: { ...straightWall, footRound: 4 } }, { overlap: 0 });
  const { length = 9, straight } = report.seam?.winding ?? {};
  expectAtMost(length, straight?.length ?? 0, 'film cut, against the best straight seam');
  expect(report.checks.find(({ rule }) => rule === 'winding-seam')?.says).toMatch(
    /^the seam goes straight up/,
  );
});

test('through a net that a straight edge leaves slivers of, every hole stays a hole', async () => {
  // What was cut off the edge once turned the holes it did not touch into film at the next step.
  const scales = readFileSync(new URL('../../../samples/tapered-cup/scales.svg', import.meta.url), 'utf8');
  const made = await winding({
    tile: scales,
    artwork: { repeat: { across: 45, up: 30 }, around: 5 },
    blank: {
      stations: [
        { height: 0, across: 62 },
        { height: 150, girth: 270 },
      ],
      footRound: 6,
    },
    job: {
      band: { from: 6, to: 130 },
      film: { ...film, minPiece: 2 },
    },
  });
  expect(made.report.checks.map(({ rule }) => rule)).toContain('sliver');
  expect(made.proof.checks.filter(({ pass }) => !pass)).toEqual([]);
});

test.each([
  // At the next repeat, 20 mm on, not far away where nobody looks for a seam.
  { says: 'at the next repeat', art: brick(3), around: 11, most: 22 },
  // Half a turn on would be in front.
  { says: 'within a quarter turn, where only two repeats go around', art: brick(3), around: 2, most: 56 },
])('goes by a motif that stands at the seam, $says', async ({ art, around, most }) => {
  const tern =
    '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="30mm" viewBox="0 0 30 30"><circle cx="15" cy="15" r="12"/></svg>';
  const made = await winding({
    tile: art,
    artwork: { around },
    files: { 'tern.svg': tern },
    job: { items: [{ file: 'tern.svg', across: 24, at: { turn: 0, along: 50 }, clear: 2 }], film },
  });
  expect(made.proof.checks.filter(({ pass }) => !pass)).toEqual([]);
  const { wall, winding: line, band } = made.draft.plan.template;
  if (!line) throw new Error('nothing winds');
  const away = windingLine(wall, line, band.from, band.to).segments.flatMap((s) =>
    Array.from({ length: 20 }, (_, i) => {
      const { turn, along } = toWall(wall, pointAt(s, i / 20));
      const girth = 2 * Math.PI * (wall.radius + (along - wall.reference) * wall.sine);
      return Math.hypot(turn * girth, along - 50);
    }),
  );
  // The drawing is laid 24 mm across, so that the disc in it has a radius of 9.6 mm. A cell of the grid is 0.19 mm.
  expect(Math.min(...away)).toBeGreaterThan(9.6 + film.minWidth - 0.2);
  expect(Math.max(...away.map((mm) => Math.abs(mm)))).toBeLessThan(80);
  expect(Math.min(...away)).toBeLessThan(most);
});

test.each([
  ['without artwork', { blank: cup }],
  ['at a handle', { blank: { ...cup, handle: { spans: 40, keepOff: 5 } }, tile: brick(4) }],
  ['in panels', { blank: cup, tile: brick(4), job: { sheet: { across: 150, up: 150, margin: 3 } } }],
])('is refused %s', async (_, given: Typed) => {
  const fault = await madeOf({
    ...given,
    job: { ...given.job, seam: { style: 'winding' } },
  }).catch((thrown: unknown) => thrown);
  expect(fault instanceof Refused && fault.findings.map(({ rule }) => rule)).toEqual(['no-winding']);
});

describe('what a winding seam leaves of motifs', () => {
  /** Bars 9 mm long and 1.5 mm high, 1 mm apart, every other row moved by half: any line up the wall cuts one of two. */
  const bars =
    '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="5mm" viewBox="0 0 10 5"><path d="M.5 .5h9v1.5h-9ZM-4.5 3h9v1.5h-9ZM5.5 3h9v1.5h-9Z"/></svg>';
  const low = { stations: [cup.stations[0], { height: 25, across: 66.5 }] };
  const leftBy = async (minPiece: number, overlap: number) => {
    const { report } = await winding(
      { tile: bars, blank: low, job: { film: { ...film, minPiece } } },
      { overlap },
    );
    return {
      cut: report.seam?.winding?.crossings,
      told: report.checks
        .filter(({ rule }) => rule === 'seam-sliver')
        .map(({ level, times, size }) => ({ level, times, size })),
    };
  };

  test('is told where it is too small for the film, at each end as many as it cuts', async () => {
    const { cut, told } = await leftBy(12, 0);
    expect(told.map(({ level, times }) => [level, times])).toEqual([
      ['look', cut],
      ['look', cut],
    ]);
    // Both halves of a bar of 13.5 mm², drawn; the pattern is laid within a tenth of its size.
    for (const { size } of told) expectWithin(size ?? 0, 13.5 / 2, 13.5 / 4, 'half a bar');
  });

  test('is a note where the other end shows the same art', async () => {
    const { told } = await leftBy(12, 10);
    expect(told.map(({ level }) => level)).toEqual(['note', 'note']);
  });

  test('is left alone where it holds', async () => {
    expect((await leftBy(1, 10)).told).toEqual([]);
  });
});
