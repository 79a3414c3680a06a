import { describe, expect, test } from 'vitest';
import { checkPlaces } from '../../../src/job/motifs/motif-places.ts';
import { readMotifs } from '../../../src/job/motifs/motifs.ts';
import { planWrap } from '../../../src/job/plan/plan.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { jobContent } from '../../../src/job/typed/write-job.ts';
import { refusalsOf } from '../../blank/a-blank.ts';
import { expectWithin } from '../../closeness.ts';
import { pictureEngine } from '../../pictures/compare.ts';
import { setText } from '../a-font.ts';
import { filesOf } from '../a-job.ts';

const { normalise } = await pictureEngine();

const drawing = (size: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${size}><path d="M0 0H10V5H0Z"/></svg>`;
/** Twice as wide as it is high. */
const tern = drawing('width="40mm" height="20mm" viewBox="0 0 10 5"');
const cup = {
  stations: [
    { height: 0, across: 80 },
    { height: 120, across: 80 },
  ],
};
const item = (rest: object = {}) => ({ file: 'tern.svg', across: 60, at: { turn: 0.5, along: 50 }, ...rest });

function checked(items: readonly object[], rest: object = {}, blank: object = cup, text = tern) {
  const job = readJob(
    { name: 'test', blank: 'b.json', coats: [], film: { thickness: 0 }, items, ...rest },
    'j.json',
  );
  const input = { job, jobFile: 'j.json', blank: readBlank(blank, 'b.json'), blankFile: 'b.json' };
  const files = filesOf({ 'tern.svg': text });
  const motifs = readMotifs({
    job,
    jobFile: 'j.json',
    blank: input.blank,
    files,
    tools: { normalise, words: () => [], setText },
  });
  const { places, findings } = checkPlaces(input, planWrap(input), motifs);
  const reports = motifs.map(({ says, at, size }, i) => ({ file: says, at, ...size, ...places[i] }));
  return { reports, findings };
}

describe('an item of a job', () => {
  test('takes its height from its drawing, unless it is given one', () => {
    expect(checked([item()]).reports[0]).toEqual({
      file: 'tern.svg',
      at: { turn: 0.5, along: 50 },
      across: 60,
      up: 30,
      lies: true,
      misses: [],
      nearest: { turn: 0.5, along: 50 },
    });
    expect(checked([item({ up: '1in' })]).reports[0]?.up).toBe(25.4);
  });

  test('that misses is told by how much, and the nearest place where it lies', () => {
    const { reports, findings } = checked([item(), item({ at: { turn: 0.5, along: '92mm' } })]);
    expect(reports[1]?.lies).toBe(false);
    // 92 mm and half of 30 mm are 7 mm over the 100 mm at which the lip zone of a 120 mm wall begins.
    expect(reports[1]?.misses).toEqual([{ what: 'lip zone', by: 7 }]);
    expectWithin(reports[1]?.nearest?.along ?? NaN, 85, 1e-9);
    expect(findings[0]).toMatchObject({
      rule: 'item-misplaced',
      level: 'look',
      where: { key: 'items[1].at' },
    });
    expect(findings[0]?.says).toContain('reaches 7 mm into the lip zone');
    expect(findings[0]?.says).toContain('turn 0.50000, 85 mm along');
  });

  test('lies at the nearest place as it is told in words', () => {
    const blank = { ...cup, stations: [cup.stations[0], { height: 120, across: 97 }], use: 'other' };
    const { findings } = checked(
      [item({ at: { turn: 0.03, along: 112 } })],
      { artwork: { file: 'a.svg' } },
      blank,
    );
    const [, turn, along] = /turn ([\d.]+), ([\d.]+) mm along/.exec(findings[0]?.says ?? '') ?? [];
    const again = checked(
      [item({ at: { turn: Number(turn), along: Number(along) } })],
      { artwork: { file: 'a.svg' } },
      blank,
    );
    expect(again.reports[0]?.lies).toBe(true);
  });

  test('minds the seam only where a pattern is wrapped around', () => {
    const across = [item({ at: { turn: 0, along: 50 } })];
    expect(checked(across).reports[0]?.lies).toBe(true);
    const [report] = checked(across, { artwork: { file: 'a.svg' } }).reports;
    expect(report?.misses).toEqual([{ what: 'seam', by: 30 }]);
  });

  test('minds handle and keep-outs', () => {
    const blank = {
      ...cup,
      handle: { spans: 30, keepOff: 5 },
      keepOut: [{ what: 'embossed mark', turn: { from: 0.45, to: 0.55 }, along: { from: 40, to: 60 } }],
    };
    const { reports } = checked([item({ at: { turn: 0, along: 50 } }), item()], {}, blank);
    expect(reports[0]?.misses).toEqual([{ what: 'handle', by: 50 }]);
    expect(reports[1]?.misses).toEqual([{ what: 'embossed mark', by: 25 }]);
  });

  test('too large for the wall has no nearest place', () => {
    const { reports, findings } = checked([item({ across: 250 })]);
    expect(reports[0]?.nearest).toBeNull();
    expect(findings[0]?.says).toContain('lies nowhere');
  });

  test('is refused without a size, a place, or a drawing, each by name', () => {
    const rules = (one: object) =>
      refusalsOf(() => checked([one])).map(({ rule, where }) => [rule, where.key]);
    expect(rules({ file: 'tern.svg', at: { turn: 0.5, along: 5 } })).toEqual([
      ['missing-key', 'items[0].across'],
    ]);
    expect(rules(item({ at: { turn: 1.5, along: 5 } }))).toEqual([['not-a-number', 'items[0].at.turn']]);
    expect(rules(item({ rotated: 10 }))).toEqual([['unknown-key', 'items[0].rotated']]);
    expect(refusalsOf(() => checked([item()], {}, cup, 'no drawing')).map(({ rule }) => rule)).toEqual([
      'unreadable',
    ]);
  });

  // Its files failed the proof: there is no wall to lay it by.
  test('is refused where its place is off the wall, and lies on it at its very edge', () => {
    const at = (along: number) => checked([item({ at: { turn: 0.5, along } })]);
    const [refusal] = refusalsOf(() => at(140));
    expect([refusal?.rule, refusal?.where.key]).toEqual(['off-wall', 'items[0].at.along']);
    expect(refusal?.says).toContain('goes up to 120 mm');
    expect([at(0), at(120)].map(({ reports }) => reports.length)).toEqual([1, 1]);
  });

  test('is written with its job, its file as seen from there', () => {
    const job = readJob({ name: 'test', blank: 'b.json', items: [item()] }, 'j.json');
    expect(jobContent(job, 'b.json', (file) => `../${file}`)).toMatchObject({
      items: [{ file: '../tern.svg', across: 60, at: { turn: 0.5, along: 50 } }],
    });
  });
});
