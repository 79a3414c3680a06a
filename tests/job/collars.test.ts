// Everything a batch takes laid on its sheets: wraps, cover strips, motifs and lettering by the colour of their film, collars on paper.
import { beforeAll, describe, expect, test } from 'vitest';
import { readSvg } from '../../src/deliver/read-svg.ts';
import { contourLength } from '../../src/geometry/arc-length.ts';
import { proofOfFolder } from '../../src/job/list/prove-folder.ts';
import { proofOfDrafts } from '../../src/job/proof/proof.ts';
import { type NestedSheets, nestSheets } from '../../src/job/sheets/nest-sheets.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { blankContent, jobContent } from '../../src/job/typed/write-job.ts';
import { refusalsOf } from '../blank/a-blank.ts';
import { expectWithin } from '../closeness.ts';
import { paperArea } from '../geometry/libraries.ts';
import { madeOf } from './a-job.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 110, across: 80 },
  ],
};
const bar = (colour: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="20mm" viewBox="0 0 30 20"><path fill="${colour}" d="M0 0H30V20H0Z"/></svg>`;
const text = (along: number, turn: number) => ({
  text: 'tern',
  capHeight: 8,
  colour: '#17566b',
  at: { turn, along },
});
const job = {
  coats: [{ name: 'clear', thickness: 0.3 }],
  film: { thickness: 0.1 },
  band: { from: 12, to: 100 },
  seam: { style: 'strip', strip: 10 },
  collars: { width: 18, overlap: 8 },
  items: [
    { file: 'red.svg', across: 30, at: { turn: 0.5, along: 40 } },
    { file: 'blue.svg', across: 30, at: { turn: 0.3, along: 40 } },
  ],
  lettering: [text(75, 0.3), text(75, 0.7)],
  sheet: { across: 320, up: 460, margin: 8, spacing: 3 },
  batch: 2,
};

type Made = Awaited<ReturnType<typeof madeOf>>;
let made: Made;
let nested: NestedSheets;
beforeAll(async () => {
  made = await madeOf({
    blank: cup,
    job,
    files: { 'red.svg': bar('#c23b22'), 'blue.svg': bar('#17566b') },
  });
  const pieces = [{ stem: 'wrap', cut: made.draft.cut, guide: made.draft.guide }, ...made.parts].map(
    (piece) => ({ turned: 0, ...piece }),
  );
  nested = await nestSheets({ job: made.draft.job, pieces }, { trials: 5000 });
});

describe('the sheets of a batch with everything', () => {
  test('are one set a colour of film, with its wraps, strips, motifs and lettering; collars on paper', () => {
    const laid = new Map<string, Record<string, number>>();
    for (const { film, times, pieces } of nested.reports) {
      const counts = laid.get(film) ?? {};
      for (const { part } of pieces) counts[part] = (counts[part] ?? 0) + times;
      laid.set(film, counts);
    }
    expect(Object.fromEntries(laid)).toEqual({
      '#c23b22': { wrap: 2, strip: 2, 'item-1': 2 },
      '#17566b': { 'item-2': 2, 'lettering-1': 2, 'lettering-2': 2 },
      paper: { 'collar-1': 2, 'collar-2': 2 },
    });
  });

  test('have nothing over anything else, by another library', () => {
    for (const { stem, cut } of nested.texts) {
      const outlines = readSvg(cut, stem)
        .groups.filter(({ role }) => role === 'outline')
        .flatMap(({ paths }) => paths);
      outlines.forEach((one, i) => {
        for (const other of outlines.slice(i + 1))
          expectWithin(paperArea('intersection', one.contours, other.contours), 0, 0.01, stem);
      });
    }
  });

  test('hold the lines that were proved', () => {
    const { drafts, draft, parts, blank } = made;
    const files = [{ stem: 'wrap', cut: draft.cut, guide: draft.guide }];
    const proof = proofOfDrafts(drafts, blank, files, parts, nested.texts);
    expect(proof.checks.filter(({ pass }) => !pass)).toEqual([]);
    expect(proof.checks.map(({ rule }) => rule)).toEqual(
      expect.arrayContaining(['collar-outline', 'sheet-pieces']),
    );
    const short = nested.texts.map((sheet) =>
      sheet.film === 'paper'
        ? { ...sheet, cut: sheet.cut.replace(/<path id="collar-2\.2"[^>]*>/, '') }
        : sheet,
    );
    const spoiled = proofOfDrafts(drafts, blank, files, parts, short);
    expect(spoiled.checks.filter(({ pass }) => !pass).map(({ rule }) => rule)).toEqual(['sheet-pieces']);
  });
});

describe('a collar cut with a job', () => {
  test('is as long as the girth of the coated wall, at the middle of its paper', () => {
    const [first] = made.parts.filter(({ stem }) => stem.startsWith('collar'));
    const drawing = readSvg(first?.guide ?? '', 'collar', ['trim']);
    const level = drawing.groups
      .flatMap(({ paths }) => paths)
      .filter(({ id }) => id === 'level-line')
      .flatMap(({ contours }) => contours)
      .reduce((sum, contour) => sum + contourLength(contour), 0);
    // Frustum in closed form: pi (62 + 2 (12 sin a + (0.3 + 0.05) cos a)), and the tab of 8 mm, square to the seam.
    const lean = Math.atan(9 / 110);
    const girth = 2 * Math.PI * (31 + 12 * Math.sin(lean) + 0.35 * Math.cos(lean));
    expectWithin(level, girth + 8, 0.02);
  });

  test('is proved: cut for another coat it is off', () => {
    const { draft, report, parts, blank } = made;
    const texts: Record<string, string> = { 'wrap.cut.svg': draft.cut, 'wrap.guide.svg': draft.guide };
    for (const { stem, cut, guide } of parts)
      Object.assign(texts, { [`${stem}.cut.svg`]: cut, [`${stem}.guide.svg`]: guide });
    const parsed = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
    const proved = (job: object) =>
      proofOfFolder({
        job: parsed(job),
        blank: parsed(blankContent(blank)),
        blankFile: 'b',
        report: parsed(report),
        texts,
      });
    const failed = (job: object) =>
      proved(job)
        .checks.filter(({ pass }) => !pass)
        .map(({ rule }) => rule);
    const resolved = jobContent(draft.job, 'b') as typeof job;
    expect(failed(resolved)).toEqual([]);
    expect(failed({ ...resolved, collars: { ...resolved.collars, paper: 0.2 } })).toEqual(['collar-outline']);
  });

  test('that the wall has no room for is refused at its key', async () => {
    const cases = [
      [{ width: '5mm' }, 'collars.width', /5 mm is too narrow/],
      [{ at: [400] }, 'collars.at', /400 mm is past the lip/],
      [{ at: [{ along: 3, edge: 'upper' }] }, 'collars.at.edge', /has only 3 mm of wall/],
    ] as const;
    for (const [collars, key, says] of cases) {
      const outcome = await madeOf({ blank: cup, job: { band: job.band, collars } }).catch((fault) => fault);
      const [finding] = refusalsOf(() => {
        throw outcome;
      });
      expect(finding).toMatchObject({ level: 'stop', where: { file: 't.job.json', key } });
      expect(finding?.says).toMatch(says);
    }
    const gores = { name: 'n', blank: 'b.json', pieces: 'gores', collars: {} };
    expect(refusalsOf(() => readJob(gores, 'j.json'))[0]).toMatchObject({ rule: 'collars-of-gores' });
  });
});
