// Artwork mended on request: by `inspect`, and in a job before it is laid. What was mended is told, and what is left is clean.
import { beforeAll, describe, expect, test } from 'vitest';
import type { Normalise } from '../../src/artwork/svg/svg-normalise.ts';
import { inspect } from '../../src/job/inspect/inspect.ts';
import { mendedArt } from '../../src/job/inspect/inspect-picture.ts';
import { standardCutter, standardFilm } from '../../src/job/typed/material.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { pictureEngine } from '../pictures/compare.ts';
import { madeOf } from './a-job.ts';

let normalise: Normalise;
beforeAll(async () => {
  ({ normalise } = await pictureEngine());
});

const svg = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><g fill="#1d4e63">${body}</g></svg>`;
const neck = '<path d="M4 4H12V8.75H16V4H24V14H16V9.25H12V14H4Z"/>';
const slit = '<path d="M4 18H24V28H14.15V20H13.85V28H4Z"/>';
const speck = '<circle cx="32" cy="6" r=".8"/>';
const broken =
  '<path fill="none" stroke="#1d4e63" stroke-width=".1" d="M28 12H36V18"/><path fill="none" stroke="#1d4e63" stroke-width=".1" d="M36 18.4V22H28V12.3"/>';
/** A bar of 0.5 mm that crosses the tile's left and right border. */
const bar =
  '<path d="M-4 15.75V14H4V15.75H6V14H10V18H6V16.25H4V18H-4Z"/><path d="M36 15.75V14H44V15.75H46V14H50V18H46V16.25H44V18H36Z"/>';

const inspected = (text: string, rest: object = {}) =>
  inspect({
    content: text,
    file: 'a.svg',
    film: standardFilm,
    cutter: standardCutter,
    normalise,
    mend: true,
    ...rest,
  });

describe('inspect, asked to mend', () => {
  test('tells each kind of mend once, with its largest and its count, and finds nothing else', () => {
    const { report } = inspected(svg(neck + slit + speck + broken));
    expect(report.checks.map(({ rule, level }) => `${level} ${rule}`).sort()).toEqual([
      'note gap-closed',
      'note outline-joined',
      'note speck-dropped',
      'note thickened',
    ]);
    expectWithin(report.mended?.largestMove ?? 0, 0.27, 0.005);
    expect(report.mended?.places).toBe(4);
    expect(report.checks.find(({ rule }) => rule === 'thickened')).toMatchObject({
      times: 1,
      layer: '#1d4e63',
    });
  });

  test('gives art that is clean when it is inspected again, whatever its size', () => {
    for (const across of [40, 25, 80]) {
      const first = inspected(svg(neck + slit + speck), { across });
      const again = inspected(mendedArt(first, 'a') ?? '', { mend: false });
      expect(again.report.checks.filter(({ level }) => level !== 'note')).toEqual([]);
      expect(again.art.width).toBe(across);
      expectWithin(again.report.cutLength, first.report.cutLength, 0.01);
    }
  });

  test('mends a mask as the film that it is: its thin bridges, not its gaps', () => {
    const film = { ...standardFilm, use: 'mask' as const };
    const { report } = inspected(svg('<path d="M4 4H14V24H4ZM14.5 4H24V24H14.5Z"/>'), { film });
    expect(report.checks.map(({ rule }) => rule)).toEqual(['thickened']);
    expectWithin(report.checks[0]?.size ?? 0, 0.27, 0.005);
  });

  test('leaves art without a fault alone, and says so', () => {
    const { report } = inspected(svg('<path d="M4 4H24V24H4Z"/>'));
    expect(report.checks).toEqual([]);
    expect(report.mended).toEqual({ places: 0, largestMove: 0 });
  });
});

describe('a job whose artwork is to be mended', () => {
  const can = {
    stations: [
      { height: 0, across: 76 },
      { height: 120, across: 82 },
    ],
    use: 'other',
  };
  const job = { band: { from: 15, to: 105 }, trim: { lip: 3, foot: 3 } };
  const looks = (checks: readonly { level: string; rule: string }[]) =>
    checks.filter(({ level }) => level === 'look').map(({ rule }) => rule);

  test('is cut clean where it is laid smallest, over the borders of its tile too', async () => {
    const tile = svg(neck + slit.replaceAll('M4', 'M6') + speck + bar);
    const asDrawn = await madeOf({ blank: can, job, artwork: { around: 6 }, tile });
    expect([...new Set(looks(asDrawn.report.checks))].sort()).toEqual([
      'small-piece',
      'thin-film',
      'thin-gap',
    ]);
    const mended = await madeOf({ blank: can, job, artwork: { around: 6, mend: true }, tile });
    expect(looks(mended.report.checks)).toEqual([]);
    expect(mended.report.pattern?.joins).toBe(true);
    expect(mended.proof.pass).toBe(true);
    expectAtMost(mended.report.pattern?.largestMove ?? 9, 0.5);
    expect(mended.report.checks.filter(({ rule }) => rule === 'thickened')).toHaveLength(1);
  });

  test('whose petals touch on the borders is joined there by film that goes on from copy to copy', async () => {
    // Circles of 15 mm about the corners of a tile of 30 overlap in petals, which touch halfway along every side.
    const petal = 'M15 0A15 15 0 0 0 0 15A15 15 0 0 0 15 0Z';
    const petals = ['', 'rotate(90 15 15)', 'rotate(180 15 15)', 'rotate(270 15 15)']
      .map((turned) => `<path transform="${turned}" d="${petal}"/>`)
      .join('');
    const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="39.49mm" height="39.49mm" viewBox="0 0 30 30">${petals}</svg>`;
    const blank = {
      ...can,
      stations: [
        { height: 0, across: 95 },
        { height: 120, across: 140 },
      ],
    };
    const { report, proof } = await madeOf({ blank, job, artwork: { around: 8, mend: true }, tile });
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    expect(report.pattern?.joins).toBe(true);
    // Two necks a tile: one on its upright, one on its level border; each told once.
    const times = (rule: string) => report.checks.find((check) => check.rule === rule)?.times;
    expect([times('thickened'), times('gap-closed')]).toEqual([2, 2]);
  });

  test('is mended in the period that is laid where it is a crop of more', async () => {
    // Necks of half a mm in combs 24 mm apart, half a drop from row to row, shown 1.6 by 1.8 times.
    const comb = (x: number, y: number) =>
      `<path transform="translate(${x} ${y})" d="M0 0H6V3.75H12V0H18V10H12V4.25H6V10H0Z"/><circle cx="${x + 9}" cy="${y + 8}" r="1.3"/>`;
    const rows = [-1, 0, 1, 2, 3].flatMap((j) =>
      [-1, 0, 1, 2].map((i) => comb(24 * i + (j % 2) * 12 + 3, 14 * j + 5)),
    );
    const crop = `<svg xmlns="http://www.w3.org/2000/svg" width="39mm" height="50mm" viewBox="0 0 39 50"><g fill="#1d4e63">${rows.join('')}</g></svg>`;
    const asDrawn = await madeOf({ blank: can, job, artwork: { way: 1 }, tile: crop });
    expect(asDrawn.report.pattern?.way).toMatch(/^period-/);
    expect(looks(asDrawn.report.checks)).toContain('thin-film');
    const mended = await madeOf({ blank: can, job, artwork: { way: 1, mend: true }, tile: crop });
    expect(looks(mended.report.checks)).toEqual([]);
    expect(mended.proof.pass).toBe(true);
    // One neck to the period.
    expect(mended.report.checks.find(({ rule }) => rule === 'thickened')?.says).toMatch(/ at 1 place /);
    expect(mended.report.pattern).toMatchObject({ way: asDrawn.report.pattern?.way, joins: true });
  });

  test('whose tile does not fill the plane by its steps is told so, and laid as drawn', async () => {
    const artwork = { around: 5, mend: true, repeat: { across: 50, up: 40 } };
    const { report } = await madeOf({ blank: can, job, artwork, tile: svg(neck) });
    expect(looks(report.checks)).toContain('not-mended');
    expect(looks(report.checks)).toContain('thin-film');
  });
});
