// Several drawings as the layers of one job, against the same shapes in one drawing; areas of it by hand.
import { expect, test } from 'vitest';
import { inspect } from '../../src/job/inspect/inspect.ts';
import { standardCutter, standardFilm } from '../../src/job/typed/material.ts';
import { jobContent } from '../../src/job/typed/write-job.ts';
import { refusalsOf } from '../blank/a-blank.ts';
import { expectWithin } from '../closeness.ts';
import { pictureEngine } from '../pictures/compare.ts';
import { madeOf } from './a-job.ts';

const svg = (body: string, width = 40): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="20mm" viewBox="0 0 ${width} 20">${body}</svg>`;
const sea = '<path d="M0 4H40V16H0Z" fill="#17566b"/>';
const kelp = (colour: string) => `<path d="M5 6H20V14H5Z" fill="${colour}"/>`;
const tern = (colour: string) => `<path d="M10 2H30V10H10Z" fill="${colour}"/>`;
const [green, sand] = ['#6a7f2a', '#d8b26a'];

const blank = {
  stations: [
    { height: 0, girth: 200 },
    { height: 80, girth: 216 },
  ],
};
const files = { 'kelp.svg': svg(kelp('#000')), 'tern.svg': svg(tern('#000')) };
const over = [
  { file: 'kelp.svg', colour: green },
  { file: 'tern.svg', colour: sand },
];
const made = (tile: string, artwork: object, job: object = {}) =>
  madeOf({
    blank,
    job: { band: { from: 10, to: 60 }, ...job },
    tile,
    files,
    artwork: { around: 5, ...artwork },
  });

test('drawings laid over one another give the layers of one drawing with the same shapes, in register', async () => {
  for (const layers of [{}, { layers: { style: 'knocked-out', spread: 0.3 } }]) {
    const stacked = await made(svg(sea), { over }, layers);
    const single = await made(svg(sea + kelp(green) + tern(sand)), {}, layers);
    expect(stacked.proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    expect(stacked.report.pattern?.layers.map(({ layer }) => layer)).toEqual(['#17566b', green, sand]);
    stacked.report.pattern?.layers.forEach(({ area, middle }, i) => {
      const other = single.report.pattern?.layers[i];
      expectWithin(area, other?.area ?? 0, 1e-3 * area, 'area');
      expectWithin(middle.right, other?.middle.right ?? 0, 1e-3);
      expectWithin(middle.up, other?.middle.up ?? 0, 1e-3);
    });
  }
});

test('they are kept in the resolved job, and a colour that two have, or another size, is refused in words', async () => {
  const { draft } = await made(svg(sea), { over });
  expect(jobContent(draft.job, 'b.blank.json', (file) => `art/${file}`)).toMatchObject({
    artwork: {
      file: 'art/tile.svg',
      over: [{ file: 'art/kelp.svg', colour: green }, { file: 'art/tern.svg' }],
    },
  });
  const refused = async (artwork: object, tile = svg(sea)) => {
    const fault = await made(tile, artwork).catch((one: unknown) => one);
    return refusalsOf(() => {
      throw fault;
    }).map(({ says }) => says);
  };
  expect(await refused({ over: ['kelp.svg', 'tern.svg'] })).toEqual([
    expect.stringContaining('has #000000, as kelp.svg has'),
  ]);
  expect(await refused({ over }, svg(sea, 42))).toEqual([
    expect.stringContaining('is 40 mm by 20 mm, and tile.svg is 42 mm by 20 mm'),
    expect.stringContaining('is 40 mm by 20 mm'),
  ]);
});

test('are inspected together, each told by its own file, though all are drawn in black', async () => {
  const { normalise } = await pictureEngine();
  const thin = svg('<path d="M2 17H30V17.3H2Z"/>');
  const base = { content: svg(kelp('#000')), film: standardFilm, cutter: standardCutter, normalise };
  const both = inspect({ ...base, file: 'kelp.svg', over: [{ file: 'thin.svg', content: thin }] });
  expect(both.report.pieces).toBe(2);
  // By hand: 15 by 8 mm and 28 by 0.3 mm, cut around.
  expectWithin(both.report.cutLength, 2 * (15 + 8) + 2 * (28 + 0.3), 1e-6);
  expect(
    both.report.checks.filter(({ rule }) => rule === 'thin-film').map(({ where }) => where.file),
  ).toEqual(['thin.svg']);
});
