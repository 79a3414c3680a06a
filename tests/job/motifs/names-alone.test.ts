// A name alone on a cup: its wrap is paper, and what is told of its films is what is cut.
import { expect, test } from 'vitest';
import { readSvg } from '../../../src/deliver/read-svg.ts';
import { tightBox } from '../../../src/geometry/measure.ts';
import { folderOf } from '../a-folder.ts';

const cup = {
  stations: [
    { height: 0, across: 62 },
    { height: 90, across: 74 },
  ],
};
const name = (along: number) => ({
  text: 'Ada',
  capHeight: 14,
  at: { turn: 0.5, along },
  backing: { grow: 3 },
});
const words = (html = '') => html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

test('the plain wrap lies on no sheet, is not counted as film, and the job sheet names the files that are there', async () => {
  const { texts, report, failed } = await folderOf({
    blank: {
      ...cup,
      lipZone: 25,
      keepOut: [{ what: 'weld line', turn: { from: 0.98, to: 0.02 } }],
    },
    job: {
      lettering: [name(40)],
      layers: { files: 'each' },
      // The wrap would be cut in panels, were it film.
      sheet: { across: 120, up: 150 },
      batch: 2,
      coats: [
        { name: 'clear', thickness: 0.1, leastBatch: 40 },
        { name: 'clear', thickness: 0.2, over: true, leastBatch: 90 },
      ],
    },
  });
  expect(failed()).toEqual([]);
  expect(Object.keys(texts)).toContain('wrap.cut.svg');
  expect(report.checks.map(({ rule }) => rule)).not.toContain('keep-out-covered');
  expect(report.sheets?.flatMap(({ pieces }) => pieces.map(({ part }) => part))).toEqual(
    Array.from({ length: 4 }, () => 'lettering-1'),
  );
  const said = words(texts['job-sheet.html']);
  for (const file of said.match(/[\w-]+\.(?:cut|guide)\.svg/g) ?? [])
    expect(Object.keys(texts)).toContain(file);
  expect(said).toContain('lettering-1-backing.cut.svg, lettering-1-film.cut.svg');
  expect(said).toContain('of paper, to try and to lay by');
  expect(said).toContain('of one in several films lay the lowest first');
  expect(said).toContain('not for the lip zone (25 mm below the rim)');
  expect(said).toMatch(/40\.0 ml \(the least.*90\.0 ml \(the least/);
  // Two films as large as the rectangle that both layers are cut in.
  const film = readSvg(texts['lettering-1-film.cut.svg'] ?? '', 'x');
  const outline = film.groups.filter(({ role }) => role === 'outline').flatMap(({ paths }) => paths);
  const { minX, minY, maxX, maxY } = tightBox(outline.flatMap(({ contours }) => contours));
  expect(said).toContain(`${((2 * (maxX - minX) * (maxY - minY)) / 100).toFixed(0)} cm²`);
  // The line that it is laid by would cut through the name.
  expect(film.groups.map(({ role }) => role)).not.toContain('register');
});

test('a name past the band of the wrap is told not to be in the picture', async () => {
  const lines = async (along: number) =>
    (
      await folderOf({ blank: cup, job: { lettering: [name(along)], band: { from: 10, to: 55 } } })
    ).report.checks.filter(({ rule }) => rule === 'past-band');
  expect(await lines(32)).toEqual([]);
  expect((await lines(70)).map(({ says }) => says)).toEqual([
    expect.stringMatching(/^"Ada" lies past the band of the wrap, 10 mm to 55 mm along/),
  ]);
});

test('a text that may be left out is, where it is empty; any other is refused', async () => {
  const job = (optional?: boolean) => ({
    lettering: [name(30), { ...name(60), text: ' ', ...(optional === undefined ? {} : { optional }) }],
  });
  const { report } = await folderOf({ blank: cup, job: job(true) });
  expect(report.lettering?.map(({ text }) => text)).toEqual(['Ada']);
  for (const refused of [job(), job(false)])
    await expect(folderOf({ blank: cup, job: refused })).rejects.toThrow(
      /lettering\[1\]\.text: "".*optional/,
    );
});

test('a height that letters would hold at is told with its width where the wall is shorter', async () => {
  const holding = async (text: string) => {
    const job = { lettering: [{ text, fit: 60, at: { turn: 0.5, along: 40 } }], film: { minWidth: 2 } };
    const { report } = await folderOf({ blank: cup, job });
    return report.checks.find(({ rule }) => rule === 'thin-film')?.says ?? '';
  };
  expect(await holding('Ada')).toMatch(/mm high would hold$/);
  // Sixty letters of a stroke that has to be far thicker.
  expect(await holding('Ada'.repeat(20))).toMatch(/would hold, but it would be [\d.]+ mm wide, more than/);
});
