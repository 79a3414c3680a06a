// Machines told true: what a test piece measured is typed, and what goes to that machine comes out true; proved, and spoiled.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { loadFont } from '../../../src/artwork/text/lettering.ts';
import { pagesOf } from '../../../src/deliver/pages.ts';
import { papers } from '../../../src/deliver/paper.ts';
import { readSvg } from '../../../src/deliver/read-svg.ts';
import { writePdf } from '../../../src/deliver/write-pdf.ts';
import { lineWidth } from '../../../src/deliver/write-svg.ts';
import { moveContour } from '../../../src/geometry/affine.ts';
import { boxCorners } from '../../../src/geometry/box.ts';
import { polygon } from '../../../src/geometry/contour.ts';
import { tightBox } from '../../../src/geometry/measure.ts';
import { draftTestPiece } from '../../../src/job/cutter/test-piece.ts';
import { printOf } from '../../../src/job/prints/print.ts';
import { standardCutter } from '../../../src/job/typed/material.ts';
import { correctionOf } from '../../../src/job/typed/measured.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { refusalsOf } from '../../blank/a-blank.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { levelRuns, renderedPdf } from '../../deliver/rendered-pdf.ts';
import { folderOf } from '../a-folder.ts';
import { leafTile } from '../a-job.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 44 },
    { height: 40, across: 50 },
  ],
};
/** A cutter that makes 100 mm into 99.6 across, and into 100.1 up. */
const measured = { drawn: 100, across: 99.6, up: 100.1 };
const sheet = { across: 260, up: 300, margin: 5 };

const jobOf = (typed: object) => readJob({ name: 'test', blank: 'b.json', ...typed }, 't.job.json');

describe('what is typed', () => {
  test('is as long as the scales are drawn, unless another length is told, with its unit or without', () => {
    expect(jobOf({ cutter: { measured: { across: 149.4, up: '150.15mm' } } }).cutter.measured).toEqual({
      drawn: 150,
      across: 149.4,
      up: 150.15,
    });
    expect(jobOf({ printer: { measured } }).printer).toEqual({ measured });
  });

  test('is refused past 3 %: a px for a mm, or 100 typed for a scale of 150', () => {
    const of = (one: object) =>
      refusalsOf(() => jobOf({ cutter: { measured: one } })).map(({ rule, where }) => [rule, where.key]);
    expect(of({ across: 100, up: 150 })).toEqual([['measured-far-off', 'cutter.measured.across']]);
    expect(of({ drawn: 100, across: 100, up: 26.46 })).toEqual([['measured-far-off', 'cutter.measured.up']]);
    expect(of({ across: 150 })).toEqual([['missing-key', 'cutter.measured.up']]);
  });

  test('corrects by what it says, and by nothing where the machine is true', () => {
    const { across, up } = correctionOf(measured) ?? { across: 0, up: 0 };
    expectWithin(across * 99.6, 100, 1e-12);
    expectWithin(up * 100.1, 100, 1e-12);
    expect(correctionOf({ drawn: 150, across: 150, up: 150 })).toBeUndefined();
  });
});

describe.each([
  ['that works out its knife', {}],
  ['whose files hold the axis of its knife', { knifeOffset: 0.25, compensate: true, runOn: 0.5 }],
])('files for a cutter %s', (_, cutter) => {
  const typed = { blank: cup, tile: leafTile(30, 20) };
  const made = folderOf({ ...typed, job: { cutter: { ...cutter, measured }, sheet } });
  const plain = folderOf({ ...typed, job: { cutter, sheet } });

  test('come out of that machine as the plain ones do of a true one; guides are the same', async () => {
    const [corrected, others] = await Promise.all([made, plain]);
    // What the machine makes of a mm.
    const machine = { a: 0.996, b: 0, c: 0, d: 1.001, e: 0, f: 0 };
    for (const name of ['wrap.cut.svg', 'sheet-1.cut.svg']) {
      const [a, b] = [corrected, others].map(({ texts }) => readSvg(texts[name] ?? '', name));
      expectWithin((a?.width ?? 0) * machine.a, b?.width ?? 9, 2e-4);
      expectWithin((a?.height ?? 0) * machine.d, b?.height ?? 9, 2e-4);
      const nodes = (drawing: typeof a, move = { ...machine, a: 1, d: 1 }) =>
        (drawing?.groups ?? []).flatMap(({ paths }) =>
          paths.flatMap(({ contours }) =>
            contours.flatMap((contour) => moveContour(move, contour).segments.map(({ to }) => to)),
          ),
        );
      const [ours, wanted] = [nodes(a, machine), nodes(b)];
      expect(ours.length).toBe(wanted.length);
      for (const [i, { x, y }] of ours.entries())
        expectAtMost(Math.hypot(x - (wanted[i]?.x ?? 99), y - (wanted[i]?.y ?? 99)), 3e-4);
    }
    expect(corrected.texts['wrap.guide.svg']).toBe(others.texts['wrap.guide.svg']);
  });

  test('say so plainly: in the title of the file, in the report, on the job sheet', async () => {
    const { texts, report } = await made;
    expect(texts['wrap.cut.svg']).toContain('corrected for one cutter: +0.40 % across, -0.10 % up</title>');
    expect(report.cutter?.corrected?.across).toBe(100 / 99.6);
    expect(report.cutter?.does.map(({ key }) => key)).toContain('measured');
    expect(texts['job-sheet.html']).toContain('+0.40 % across, -0.10 % up');
  });

  test('hold in the proof, which undoes the correction; 1 % more, or none of it, fails', async () => {
    const [{ texts, prove, failed, report }, others] = await Promise.all([made, plain]);
    expect(prove().checks.filter(({ pass }) => !pass)).toEqual([]);
    expect(report.proof?.pass).toBe(true);
    expect(failed({ 'wrap.cut.svg': others.texts['wrap.cut.svg'] ?? '' })).not.toEqual([]);
    expect(failed({ 'sheet-1.cut.svg': others.texts['sheet-1.cut.svg'] ?? '' })).not.toEqual([]);
    const larger = (text: string) =>
      text.replace(/(?<= d=")[^"]*/g, (d) => d.replace(/\d+\.?\d*/g, (n) => String(Number(n) * 1.01)));
    for (const name of ['wrap.cut.svg', 'sheet-1.cut.svg'])
      expect(failed({ [name]: larger(texts[name] ?? '') })).not.toEqual([]);
  });
});

describe('prints', () => {
  const font = createRequire(import.meta.url).resolve(
    '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf',
  );
  const words = loadFont(readFileSync(font));
  const paper = papers.find(({ name }) => name === 'a4') ?? { name: 'a4', across: 210, up: 297 };
  const frame = (width: number) => ({
    width: width + 20,
    height: 40,
    groups: [
      {
        role: 'outline' as const,
        paths: [{ contours: [polygon(boxCorners({ minX: 10, minY: 10, maxX: width + 10, maxY: 30 }))] }],
      },
    ],
  });
  /** The rulers of 100 mm and 4 in of a print, mm, as PDFium draws them, and the size of its page. */
  const rulers = async (width: number, correction?: { across: number; up: number }) => {
    const { across = 1, up = 1 } = correction ?? {};
    const drawn = { ...paper, across: paper.across / across, up: paper.up / up };
    const drawing = frame(width);
    const pages = pagesOf(drawing, { paper: drawn, title: 'a frame', words });
    const [page] = await renderedPdf(await writePdf(drawing, pages, 'a frame', correction));
    if (!page) throw new Error('there is a page');
    const lengths = levelRuns(page, page.height - 26.5, 90).filter((length) => length < 110);
    return { lengths: lengths.map((length) => length - lineWidth), size: [page.width, page.height] };
  };

  // A page that lies across goes through the printer turned: its level ruler runs along the feed.
  test.each([
    ['upright', 100, 99.6],
    ['across', 240, 100.1],
  ])(
    'are true on that printer, on the same paper, %s, as an independent renderer measures',
    async (_, width, makes) => {
      const plain = await rulers(width);
      const corrected = await rulers(width, { across: 100 / 99.6, up: 100 / 100.1 });
      expect(plain.lengths).toHaveLength(2);
      [100, 101.6].forEach((mm, i) => {
        expectWithin(plain.lengths[i] ?? 0, mm, 0.1);
        expectWithin(((corrected.lengths[i] ?? 0) * makes) / 100, mm, 0.1);
      });
      for (const [i, side] of corrected.size.entries()) expectWithin(side, plain.size[i] ?? 0, 1e-6);
      expect((plain.size[0] ?? 0) > (plain.size[1] ?? 0)).toBe(width > 200);
    },
  );

  test('say for one printer only what they were corrected by', async () => {
    const { piece } = draftTestPiece({ cutter: standardCutter, words });
    const print = (correction?: { across: number; up: number }) =>
      printOf(piece.guide, 'g', { paper, title: 'test', words, correction });
    const [plain, corrected] = [await print(), await print({ across: 1.004, up: 0.999 })];
    expect(Buffer.from(corrected).equals(Buffer.from(plain))).toBe(false);
  });
});

describe('the test piece', () => {
  const words = () => [];

  test('is a square of 100 mm and two scales of 150 mm, each measured from its first line to its last', () => {
    const { piece, checks } = draftTestPiece({ cutter: standardCutter, words });
    const { groups, width, height } = readSvg(piece.cut, 'cut');
    const box = tightBox(
      groups
        .filter(({ role }) => role === 'outline')
        .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours)),
    );
    expectWithin(box.maxX - box.minX, 100, 1e-9);
    expectWithin(box.maxY - box.minY, 100, 1e-9);
    const scales = groups
      .filter(({ role }) => role === 'artwork')
      .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));
    const level = scales.map((contour) => tightBox([contour]));
    expectWithin(Math.max(...level.map(({ minX, maxX }) => maxX - minX)), 150, 1e-9);
    expectWithin(Math.max(...level.map(({ minY, maxY }) => maxY - minY)), 150, 1e-9);
    expect(Math.max(width, height)).toBeLessThan(190);
    expect(checks).toEqual([]);
  });

  test('is corrected once the cutter was measured, and told where its bed is too small', () => {
    const { piece } = draftTestPiece({ cutter: { ...standardCutter, measured }, words });
    const { groups } = readSvg(piece.cut, 'cut');
    const box = tightBox(
      groups
        .filter(({ role }) => role === 'outline')
        .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours)),
    );
    expectWithin((box.maxX - box.minX) * 0.996, 100, 2e-4);
    expectWithin((box.maxY - box.minY) * 1.001, 100, 2e-4);
    const { checks } = draftTestPiece({ cutter: { ...standardCutter, bed: { across: 150 } }, words });
    expect(checks.map(({ rule }) => rule)).toEqual(['sheet-too-small']);
  });
});
