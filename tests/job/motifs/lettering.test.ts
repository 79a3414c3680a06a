// Lettering of a job from what is typed to the files, and what is refused.
import { describe, expect, test } from 'vitest';
import { readSvg } from '../../../src/deliver/read-svg.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { offsetShapes } from '../../../src/geometry/offset.ts';
import { clippedShapes } from '../../../src/geometry/regions.ts';
import { chordTolerance } from '../../../src/geometry/tolerance.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { jobContent } from '../../../src/job/typed/write-job.ts';
import { refusalsOf } from '../../blank/a-blank.ts';
import { expectWithin } from '../../closeness.ts';
import { hebrewFont, scriptFont } from '../a-font.ts';
import { leafTile, madeOf } from '../a-job.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270.2 },
  ],
};
const lettering = (rest: object = {}) => ({
  text: 'Skye',
  capHeight: 14,
  at: { turn: 0.5, along: 75 },
  ...rest,
});
const film = { thickness: 0, minWidth: 0.1, minGap: 0.05, minPiece: 0.1, minAngle: 1 };
const made = (texts: readonly object[], rest: object = {}) =>
  madeOf({ blank: cup, job: { lettering: texts, film, ...rest }, fonts: { 'hand.ttf': scriptFont } });
const artIn = (text: string) =>
  readSvg(text, 'x', ['artwork']).groups.filter(({ role }) => role === 'artwork');
const rulesOf = async (texts: readonly object[], rest: object = {}) =>
  (await made(texts, rest)).draft.findings.map(({ rule }) => rule);

describe('lettering', () => {
  test('is cut apart, in capitals of its height, on the wall where it was said', async () => {
    const { parts, report, proof, draft } = await made([lettering({ text: 'HH' })]);
    expect(parts.map(({ stem }) => stem)).toEqual(['lettering-1']);
    expect(report.lettering?.[0]).toMatchObject({
      name: 'lettering-1',
      text: 'HH',
      capHeight: 14,
      at: { turn: 0.5, along: 75 },
      apart: true,
      lies: true,
    });
    expectWithin(report.lettering?.[0]?.reach.from ?? 0, 68, 1e-3);
    expectWithin(report.lettering?.[0]?.reach.to ?? 0, 82, 1e-3);
    expect(proof.pass).toBe(true);
    expect(draft.findings.filter(({ rule }) => rule === 'item-misplaced')).toEqual([]);
  });

  test('is called on its guide by what the guide can spell, its lines one after another', async () => {
    const said: string[] = [];
    const words = (text: string) => {
      said.push(text);
      return [];
    };
    const job = { lettering: [lettering({ text: 'Tern\nRock' })], film };
    await madeOf({ blank: cup, job, words });
    expect(said.join(' ')).toContain('lettering-1, "Tern / Rock"');
    said.length = 0;
    await madeOf({
      blank: cup,
      job: { ...job, lettering: [lettering({ text: 'טרן', font: 'alef.ttf' })] },
      fonts: { 'alef.ttf': hebrewFont },
      words,
    });
    expect(said.join(' ')).toContain('lettering-1 ');
    expect(said.join(' ')).not.toMatch(/lettering-1, |טרן/);
  });

  test('is level along the arc of a taper, unless it is rigid', async () => {
    const wide = { text: 'LIGHTHOUSE', capHeight: 10 };
    const reach = async (lay: string) =>
      (await made([lettering({ ...wide, lay })])).report.lettering?.[0]?.reach;
    const [level, rigid] = [await reach('even'), await reach('rigid')];
    // The O and the S reach a little past the capitals' height, alike in both.
    expectWithin((level?.to ?? 0) - (level?.from ?? 0), 10, 0.4);
    expect((rigid?.to ?? 0) - (rigid?.from ?? 0)).toBeGreaterThan(10.5);
  });

  test('on a backing lies on it everywhere, by so much, without holes', async () => {
    const { parts } = await made([lettering({ text: 'Pebble', font: 'hand.ttf', backing: { grow: 3 } })]);
    const [backing, letters] = artIn(parts[0]?.cut ?? '');
    expect([backing?.layer, letters?.layer]).toEqual(['lettering-1 backing', 'lettering-1']);
    expect(backing?.paths.map(({ contours }) => contours.length)).toEqual([1]);
    const grown = offsetShapes(letters?.paths ?? [], 2.95);
    const past = clippedShapes(grown, backing?.paths ?? [], 'difference', chordTolerance);
    expectWithin(
      past.reduce((sum, shape) => sum + shapeArea(shape), 0),
      0,
      0.01,
    );
  });

  test('with a pattern is a layer of the wrap, the pattern kept clear of it', async () => {
    const { draft, parts, proof } = await madeOf({
      blank: cup,
      job: { lettering: [lettering({ clear: 2 })], film },
      tile: leafTile(40, 30),
      artwork: { around: 6 },
    });
    expect(parts).toEqual([]);
    expect(artIn(draft.cut).map(({ layer }) => layer)).toEqual(['#000000', 'lettering-1']);
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
  });

  test('whose strokes are thinner than the film can stand is told, with the height that would hold', async () => {
    const { draft } = await made([lettering({ capHeight: 5 })], { film: { ...film, minWidth: 1 } });
    const [finding] = draft.findings.filter(({ rule }) => rule === 'thin-film');
    expect(finding).toMatchObject({ level: 'look', where: { key: 'lettering[0]' } });
    const [, height] = /capitals ([\d.]+) mm high would hold/.exec(finding?.says ?? '') ?? [];
    expect(Number(height)).toBeGreaterThan(5);
    const rules = await rulesOf([lettering({ capHeight: Number(height) + 0.01 })], {
      film: { ...film, minWidth: 1 },
    });
    expect(rules).not.toContain('thin-film');
  });

  test('is refused where its font lacks a character, each named', async () => {
    const [finding] = await made([lettering({ text: 'Zoë 猫' })]).then(
      () => [],
      (fault: { findings: readonly { rule: string; says: string; where: object }[] }) => fault.findings,
    );
    expect(finding).toMatchObject({ rule: 'missing-glyph', where: { key: 'lettering[0].text' } });
    expect(finding?.says).toContain('"猫" (U+732B)');
  });

  // Of 200 letters in 5 mm the proof found none of the area left, and told a place off by 99,999 mm.
  test('is refused where its size leaves no letters, by the key that asks for it', async () => {
    await expect(
      made([{ text: 'abcdefghij'.repeat(20), fit: 5, at: { turn: 0.5, along: 75 } }]),
    ).rejects.toThrow(/lettering\[0\].fit: 5 mm of width .* capitals 0.0\d+ mm high/);
    await expect(made([lettering({ capHeight: 0.09 })])).rejects.toThrow(/capHeight: capitals 0.090 mm/);
    expect((await made([lettering({ capHeight: 0.11 })])).proof.pass).toBe(true);
  });

  test('that is still to be filled from a list says so', async () => {
    expect(await rulesOf([lettering({ text: '{name}' })])).toContain('unfilled');
    expect(await rulesOf([lettering()])).not.toContain('unfilled');
  });

  test('is refused without a size, a place or a text, each by its key', () => {
    const refused = (one: object) =>
      refusalsOf(() => readJob({ name: 'n', blank: 'b.json', lettering: [one] }, 'j.json')).map(
        ({ rule, where }) => [rule, where.key],
      );
    expect(refused({ text: 'a', at: { turn: 0.5, along: 5 } })).toEqual([['no-size', 'lettering[0]']]);
    // A size that was typed wrong is told as that alone.
    expect(
      refused({ text: 'a', capHeight: '62,4', at: { turn: 0.5, along: 5 } }).map(([, key]) => key),
    ).toEqual(['lettering[0].capHeight']);
    expect(refused({ text: 'a', fit: 20 })).toEqual([['missing-key', 'lettering[0].at']]);
    expect(refused(lettering({ text: 'a\u0007' }))).toEqual([['not-text', 'lettering[0].text']]);
    expect(refused(lettering({ colour: 'red' }))).toEqual([['not-a-colour', 'lettering[0].colour']]);
    expect(refused(lettering({ capheight: 3 }))).toEqual([['unknown-key', 'lettering[0].capheight']]);
  });

  test('is written with its job, and read again the same', () => {
    const typed = {
      name: 'n',
      blank: 'b.json',
      lettering: [
        lettering({ text: 'a\r\nb', font: 'hand.ttf', backing: { grow: 2 }, fit: 50 }),
        lettering(),
      ],
    };
    const job = readJob(typed, 'j.json');
    expect(job.lettering?.[0]?.text).toBe('a\nb');
    const written = jobContent(job, 'b.json');
    expect(readJob(JSON.parse(JSON.stringify(written)), 'j.json').lettering).toEqual(job.lettering);
    expect(jobContent(job, 'b.json', (file) => `../${file}`)).toMatchObject({
      lettering: [{ font: '../hand.ttf' }, {}],
    });
  });
});
