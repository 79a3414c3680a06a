// The picture of inspected artwork.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { inspect } from '../../src/job/inspect/inspect.ts';
import { inspectionPicture } from '../../src/job/inspect/inspect-picture.ts';
import { startTools } from '../../src/job/tools.ts';
import { standardCutter, standardFilm } from '../../src/job/typed/material.ts';
import { inspectedPicture } from '../../src/picture/inspected.ts';
import { pictureFault } from './compare.ts';

const find = createRequire(import.meta.url).resolve;
const tools = await startTools({
  svg: readFileSync(find('@resvg/resvg-wasm/index_bg.wasm')),
  font: readFileSync(
    find('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'),
  ),
});

/** One of each: a neck, a slot, a point, a speck, a line that crosses itself, one left open, one doubled, one of no area. */
const art = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80">
<path id="float" fill="#17566b" d="M5 5H25V14.75H35V5H55V25H35V15.25H25V25H5Z"/>
<path id="block" fill="#17566b" d="M60 5H80V25H70.15V15H69.85V25H60Z"/>
<path id="thorn" fill="#17566b" d="M5 40L35 38V42Z"/>
<circle id="crumb" fill="#17566b" cx="45" cy="40" r="0.8"/>
<path id="bow" fill="#a33a2c" d="M60 35L75 45V35L60 45Z"/>
<path id="pennant" fill="#a33a2c" d="M80 35H95V45H80.3"/>
<path id="plank" fill="#2a6f4e" d="M5 55H25V70H5Z"/>
<path id="board" fill="#2a6f4e" d="M25 55H45V70H25Z"/>
<path id="stripe" fill="#a33a2c" d="M45 55H50V70H45Z"/>
<path id="rope" fill="none" stroke="#000" stroke-width=".2" d="M60 55H90V75"/>
</svg>`;

test('bad artwork is drawn with a numbered mark for each finding, of a shape by its rule, and the list of them', async () => {
  const inspected = inspect({
    content: art,
    file: 'flotsam.svg',
    film: standardFilm,
    cutter: standardCutter,
    normalise: tools.normalise,
  });
  const picture = inspectionPicture(inspected, 'flotsam.svg', tools.words);
  expect(inspected.report.checks).toHaveLength(11);
  const options = { name: 'inspected', widthPx: 800, tolerance: 0.001 };
  expect(await pictureFault(picture, options)).toBeUndefined();
});

test('art past its frame is not drawn over the words, and is told nothing of', async () => {
  // A tile whose motifs are drawn whole on either side of its frame, with a speck and a thorn outside.
  const tern = (x: number, y: number) =>
    `<path d="M${x - 18} ${y}Q${x} ${y - 16} ${x + 18} ${y}Q${x} ${y + 16} ${x - 18} ${y}Z"/>`;
  const content = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"><g fill="#17566b">
${tern(0, 0)}${tern(60, 0)}${tern(0, 40)}${tern(60, 40)}${tern(30, 20)}<circle cx="30" cy="52" r="0.5"/><path d="M64 10L90 9V11Z"/></g></svg>`;
  const inspected = inspect({
    content,
    file: 'terns.svg',
    film: standardFilm,
    cutter: standardCutter,
    normalise: tools.normalise,
  });
  expect(inspected.report.checks.filter(({ where: { x = 0, y = 0 } }) => x > 60.1 || y > 40.1)).toEqual([]);
  const picture = inspectionPicture(inspected, 'terns.svg', tools.words);
  const options = { name: 'inspected-frame', widthPx: 600, tolerance: 0.001 };
  expect(await pictureFault(picture, options)).toBeUndefined();
});

test('of very many findings the first are numbered, the others small, and it says so', () => {
  const marks = Array.from({ length: 130 }, (_, i) => ({
    number: i + 1,
    at: { x: 4 * (i % 13), y: 4 * Math.floor(i / 13) },
    rule: 'thin-gap',
    says: `gap ${i + 1}`,
    again: [{ x: 1, y: 1 }],
  }));
  const subject = { title: 'sieve', width: 60, height: 50, layers: [], lines: [], notes: [] };
  const read: string[] = [];
  const words: typeof tools.words = (text, ...how) => {
    read.push(text);
    return tools.words(text, ...how);
  };
  inspectedPicture({ ...subject, marks }, words);
  const numbers = (from: number) => read.filter((text) => /^\d+$/.test(text) && Number(text) > from);
  expect(numbers(120)).toEqual([]);
  expect(new Set(numbers(0)).size).toBe(120);
  expect(read.join(' ')).toContain(
    'and 90 more, in the report; past 120 the marks are small and have no number',
  );
  read.length = 0;
  inspectedPicture({ ...subject, marks: marks.slice(0, 120) }, words);
  expect(new Set(numbers(0)).size).toBe(120);
  expect(read.join(' ')).not.toContain('have no number');
});
