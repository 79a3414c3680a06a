// A job once a row: what is shared between rows changes no byte, and what is wrong is told before anything is made.
import { describe, expect, test } from 'vitest';
import { wallGirthAt, wallOf } from '../../../src/blank/wall.ts';
import { type Refused, toLine } from '../../../src/finding.ts';
import { jobOfRow, namedRows, refusalOf, textsFilled } from '../../../src/job/list/names.ts';
import { namesInWords, namesReport } from '../../../src/job/list/names-report.ts';
import { makeFiles } from '../../../src/job/make-files.ts';
import { Recall } from '../../../src/job/recall.ts';
import { readList } from '../../../src/job/typed/read-list.ts';
import { pictureEngine } from '../../pictures/compare.ts';
import { setText } from '../a-font.ts';
import { filesOf, leafTile } from '../a-job.ts';

const blank = {
  name: 'a mug',
  stations: [
    { height: 0, girth: 250 },
    { height: 60, girth: '{girth}' },
  ],
};
const job = {
  name: "{name}'s mug",
  blank: 'b.blank.json',
  lettering: [{ text: '{name}', capHeight: 9, at: { turn: 0.5, along: 30 } }],
};
const list = readList('name,girth\nAnna,260\nBo,260\nCy,261\nAnna,260\n', 'names.csv');
const input = { typed: job, jobFile: 't.job.json', list };
const fetchText = async () => JSON.stringify(blank);

async function refusalsOf(typed: object, text = 'name,girth\nAnna,260\n'): Promise<string> {
  const other = { ...input, typed, list: readList(text, 'names.csv') };
  const fault = await textsFilled(other, async () => blank)
    .then(() => jobOfRow(other, other.list.rows[0] ?? { line: 0, cells: [] }, fetchText))
    .then(() => undefined)
    .catch((refused: Refused) => refused);
  return fault?.findings.map(toLine).join('\n') ?? '';
}

describe('what is filled from a list', () => {
  test('is found in the job and in its blank', async () => {
    expect(await textsFilled(input, async () => blank)).toEqual([
      { key: 'name', text: "{name}'s mug" },
      { key: 'lettering[0].text', text: '{name}' },
      { key: 'stations[1].girth', text: '{girth}' },
    ]);
  });

  test('names rows by the name of the job', async () => {
    const rows = namedRows(list, await textsFilled(input, async () => blank));
    expect(rows.map(({ folder }) => folder)).toEqual(['anna-s-mug', 'bo-s-mug', 'cy-s-mug', 'anna-s-mug-2']);
  });

  test('gives each row its own job and blank', async () => {
    const given = await jobOfRow(input, { line: 4, cells: ['Cy', '261'] }, fetchText);
    expect(given.job.name).toBe("Cy's mug");
    expect(given.job.lettering?.[0]?.text).toBe('Cy');
    expect(wallGirthAt(wallOf(given.blank).wall, 60)).toBeCloseTo(261, 1);
  });

  test('that no list has is refused with the nearest column, in the job and in the blank', async () => {
    expect(await refusalsOf({ ...job, name: '{nmae}' })).toBe(
      't.job.json: name: {nmae} is no column of names.csv; the nearest is {name}',
    );
    expect(await refusalsOf(job, 'name,grith\nAnna,260\n')).toBe(
      'b.blank.json: stations[1].girth: {girth} is no column of names.csv; the nearest is {grith}',
    );
  });

  test('has to be anything at all', async () => {
    const plain = { name: 'plain', blank: { ...blank, stations: [] } };
    expect(await refusalsOf(plain)).toMatch(/^t\.job\.json: nothing in it is filled from names\.csv/);
  });

  test.each([
    ['', 'stations[1].girth: "" is empty'],
    ['-3', 'stations[1].girth: -3 is negative'],
    ['two hands', 'stations[1].girth: "two hands" is not a length'],
  ])('a girth of "%s" keeps its row back', async (girth, says) => {
    expect(await refusalsOf(job, `name,girth\nAnna,${girth}\n`)).toContain(`b.blank.json: ${says}`);
  });
});

describe('rows that share what they have in common', () => {
  const artwork = { file: 'leaves.svg', around: 12 };
  const files = filesOf({ 'leaves.svg': leafTile(20, 20) });
  const typed = {
    ...job,
    artwork,
    lettering: [{ ...job.lettering[0], clear: 1 }],
    seam: { style: 'overlap', overlap: 6 },
  };

  test('come to the same bytes as each alone', async () => {
    const tools = { ...(await pictureEngine()), words: () => [], setText };
    const options = { pictures: false, fromFolder: (file: string) => file };
    const recall = new Recall();
    const contents = async (row: (typeof list.rows)[number], shared: object) => {
      const given = await jobOfRow({ ...input, typed }, row, fetchText);
      const made = await makeFiles(
        { ...given, blankFile: 'b.blank.json', jobFile: 't.job.json', files, tools, ...shared },
        options,
      );
      const { files: more, report } = await made.rest(made.pieces);
      return { pieces: made.pieces, more, report };
    };
    for (const row of list.rows.slice(0, 3))
      expect(await contents(row, { recall })).toEqual(await contents(row, {}));
  }, 60_000);

  test('keep little', () => {
    const recall = new Recall();
    let made = 0;
    const of = (key: string) => recall.of('kind', key, () => ++made);
    for (const key of ['a', 'b', 'a', 'c', 'a', 'd', 'a']) of(key);
    expect(made).toBe(4);
    of('b');
    expect(made).toBe(5);
  });
});

test('the report tells what was made, what was left out, and what failed', () => {
  const made = [
    {
      line: 2,
      label: 'Anna',
      folder: 'anna',
      proved: true,
      checks: [],
      files: [{ file: 'anna/a.svg', role: 'cut' }],
      sharing: [],
    },
    { line: 4, label: 'Cy', folder: 'cy', proved: false, checks: [], files: [], sharing: [] },
  ];
  const report = namesReport(made, [{ line: 3, says: 'no' }]);
  expect(report).toMatchObject({ done: 2, refused: [{ line: 3, says: 'no' }] });
  expect(report.files).toEqual([
    { file: 'anna/a.svg', role: 'cut', line: 2 },
    { file: 'names.json', role: 'report' },
    { file: 'index.html', role: 'index' },
  ]);
  expect(namesInWords(report, 1, 'out')).toEqual([
    '2 vessels made, 1 of them as an earlier run left them; 1 of the list left out',
    'proof: the written files FAIL in cy',
    'written to out: a folder a vessel, names.json, and index.html that opens all of it',
  ]);

  const sheets = { ...report, shared: { proved: false, sets: [] } };
  expect(namesInWords(sheets, 1, 'out')).toContain(
    'sheets that they share: 0, whose proof FAILED: "prove out" says in what',
  );
});

test('why a row is left out is told in one line with what stands on the vessel', async () => {
  const other = { ...input, typed: { ...job, edges: '{name}', trim: '{girth}' } };
  const fault = await jobOfRow(other, { line: 2, cells: ['Anna', '260'] }, fetchText).catch(
    (f: Refused) => f,
  );
  expect(refusalOf(fault as Refused, { label: 'Anna' })).toMatch(
    /^"Anna": t\.job\.json: edges: .*; t\.job\.json: trim: .*$/,
  );
});
