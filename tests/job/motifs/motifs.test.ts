// Items cut: apart or with the wrap, kept clear, and put to the proof as they were written and as they should never be.
import { beforeAll, describe, expect, test } from 'vitest';
import { readSvg } from '../../../src/deliver/read-svg.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { clippedShapes } from '../../../src/geometry/regions.ts';
import { chordTolerance } from '../../../src/geometry/tolerance.ts';
import { proofOfFolder } from '../../../src/job/list/prove-folder.ts';
import { blankContent, jobContent } from '../../../src/job/typed/write-job.ts';
import { expectWithin, expectWithinPart } from '../../closeness.ts';
import { leafTile, madeOf } from '../a-job.ts';

const cup = {
  use: 'other',
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270.2 },
  ],
};
/** A sun of 20 mm and a bar, in two colours, 40 by 30 mm. */
const badge = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <circle cx="20" cy="14" r="10" fill="#d4532f"/><path d="M5 26H35V29H5Z" fill="#17566b"/></svg>`;
const bar = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path d="M5 10H35V20H5Z" fill="#17566b"/></svg>`;
const files = { 'badge.svg': badge, 'bar.svg': bar };
const item = (rest: object = {}) => ({
  file: 'badge.svg',
  across: 40,
  at: { turn: 0.5, along: 75 },
  ...rest,
});
const made = (items: readonly object[], rest: object = {}) =>
  madeOf({ blank: cup, job: { items, film: { thickness: 0 } }, files, ...rest });
const artIn = (text: string) =>
  readSvg(text, 'x', ['artwork']).groups.filter(({ role }) => role === 'artwork');
type Made = Awaited<ReturnType<typeof made>>;

const withPattern = { tile: leafTile(40, 30), artwork: { around: 6 } };

/** The proof of the folder, its texts changed before they are read. */
function provedFolder(
  { draft, report, parts, blank }: Made,
  change: (texts: Record<string, string>) => void,
) {
  const texts: Record<string, string> = { 'wrap.cut.svg': draft.cut, 'wrap.guide.svg': draft.guide };
  for (const { stem, cut, guide } of parts) {
    texts[`${stem}.cut.svg`] = cut;
    texts[`${stem}.guide.svg`] = guide;
  }
  change(texts);
  const parsed = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
  return proofOfFolder({
    job: parsed(jobContent(draft.job, 'blank.json')),
    blank: parsed(blankContent(blank)),
    blankFile: 'blank.json',
    report: parsed(report),
    texts,
  });
}

const failed = (proof: { checks: readonly { rule: string; pass: boolean }[] }) =>
  proof.checks.filter(({ pass }) => !pass).map(({ rule }) => rule);

/** Every number pair of path data in groups of artwork, moved. */
const shiftedArt = (text: string, dx: number, dy: number): string =>
  text.replace(/(<g data-role="artwork"[^>]*>)([\s\S]*?)(<\/g>)/g, (_, open, body, close) => {
    const moved = String(body).replace(
      /M(-?[\d.]+)[ ,]?(-?[\d.]+)/g,
      (__, x, y) => `M${Number(x) + dx} ${Number(y) + dy}`,
    );
    return open + moved + close;
  });

describe('items without a pattern', () => {
  let job: Made;
  beforeAll(async () => {
    job = await made([item(), item({ file: 'bar.svg', at: { turn: 0.2, along: 60 }, lay: 'even' })]);
  });

  test('are cut apart, each with a guide, a layer a colour', () => {
    expect(job.parts.map(({ stem }) => stem)).toEqual(['item-1', 'item-2']);
    const layers = (i: number) => artIn(job.parts[i]?.cut ?? '').map(({ layer }) => layer);
    expect(layers(0)).toEqual(['item-1 #d4532f', 'item-1 #17566b']);
    expect(layers(1)).toEqual(['item-2']);
    expect(artIn(job.draft.cut)).toEqual([]);
  });

  test('have their drawn size in the cut file', () => {
    const areas = artIn(job.parts[0]?.cut ?? '').map(({ paths }) =>
      paths.reduce((sum, path) => sum + shapeArea(path), 0),
    );
    expectWithinPart(areas[0] ?? 0, Math.PI * 100, 3e-4);
    expectWithin(areas[1] ?? 0, 90, 0.01);
  });

  test('are proved, and the folder proves them again', () => {
    expect(job.proof.checks.filter(({ rule }) => rule.startsWith('motif'))).toHaveLength(5);
    expect(failed(job.proof)).toEqual([]);
    expect(failed(provedFolder(job, () => undefined))).toEqual([]);
  });

  test('fail the proof where a file is missing, scaled, shifted, emptied or its level line bent', () => {
    const rules = (change: (texts: Record<string, string>) => void) => failed(provedFolder(job, change));
    const inFile = (name: string, change: (text: string) => string) => (texts: Record<string, string>) => {
      const before = texts[name] ?? '';
      texts[name] = change(before);
      expect(texts[name]).not.toBe(before);
    };
    expect(rules((texts) => delete texts['item-2.cut.svg'])).toContain('motif-files');
    expect(rules(inFile('item-1.cut.svg', (t) => t.replace(/width="([\d.]+)mm"/, 'width="$1px"')))).toEqual([
      'motif-files',
    ]);
    expect(
      rules(inFile('item-2.cut.svg', (t) => t.replace('data-layer="item-2"', 'data-layer="other"'))),
    ).toEqual(['motif-place', 'motif-whole']);
    const [, x = '', y = ''] =
      /id="plumb-line" d="M([\d.]+)[ ,]([\d.]+)/.exec(job.parts[0]?.guide ?? '') ?? [];
    expect(Number(x)).toBeGreaterThan(1);
    expect(
      rules(inFile('item-1.guide.svg', (t) => t.replace(`d="M${x} ${y}`, `d="M${Number(x) + 0.5} ${y}`))),
    ).toContain('motif-place');
  });
});

test('a layer of one small dot is whole in the proof: a share of its area would be what numbers are rounded to', async () => {
  const dotted = `<svg xmlns="http://www.w3.org/2000/svg" width="29.9mm" height="30mm" viewBox="0 0 29.9 30">
    <path d="M2 3H27.9V23H2Z" fill="#d4532f"/><path d="M5.123 25.377h.6v.6h-.6Z" fill="#17566b"/></svg>`;
  const cone = { height: 150, across: 86.1 };
  const { proof } = await madeOf({
    blank: { use: 'other', stations: [{ height: 0, across: 62.3 }, cone] },
    job: { items: [item({ file: 'dot.svg', across: 29.9, at: { turn: 0.3, along: 70.3 }, lay: 'even' })] },
    files: { 'dot.svg': dotted },
  });
  expect(failed(proof)).toEqual([]);
});

describe('items with a pattern', () => {
  test('are layers of the wrap, over the pattern or in a place kept clear, and hold in the proof', async () => {
    const { draft, parts, proof, report } = await made(
      [item({ clear: 3 }), item({ file: 'bar.svg', at: { turn: 0.02, along: 60 } })],
      withPattern,
    );
    expect(parts).toEqual([]);
    const groups = artIn(draft.cut);
    expect(groups.map(({ layer }) => layer)).toEqual([
      '#000000',
      'item-1 #d4532f',
      'item-1 #17566b',
      'item-2',
    ]);
    expect(failed(proof)).toEqual([]);
    expect(report.items?.map(({ apart, clear }) => [apart, clear])).toEqual([
      [false, 3],
      [false, undefined],
    ]);
    expect(proof.checks.find(({ rule }) => rule === 'repeats')?.value).toBeLessThan(0.01);
    // Item 2 lies over the seam, so that the overlap has it too; that is told, for its two halves have to meet.
    expect(draft.findings.filter(({ rule }) => rule === 'item-misplaced')).toHaveLength(1);
  });

  test('kept clear, have no pattern nearer than that', async () => {
    const plain = await made([item({ file: 'bar.svg' })], withPattern);
    const clear = await made([item({ file: 'bar.svg', clear: 3 })], withPattern);
    const shapesIn = (job: Made, layer: string) =>
      artIn(job.draft.cut)
        .filter((group) => group.layer === layer)
        .flatMap(({ paths }) => paths);
    const sum = (shapes: readonly Parameters<typeof shapeArea>[0][]) =>
      shapes.reduce((total, shape) => total + shapeArea(shape), 0);
    const [all, left] = [shapesIn(plain, '#000000'), shapesIn(clear, '#000000')];
    const bars = shapesIn(clear, 'item-1');
    expect(sum(clippedShapes(left, bars, 'intersection', chordTolerance))).toBe(0);
    expect(sum(clippedShapes(all, bars, 'intersection', chordTolerance))).toBeGreaterThan(20);
    // What is gone lies in the bar of 30 by 10 mm grown by 3: no more than 300 + 80 x 3 + 9 pi.
    expect(sum(all) - sum(left)).toBeGreaterThan(20);
    expect(sum(all) - sum(left)).toBeLessThan(300 + 240 + 9 * Math.PI);
  });

  test('are cut apart where that is asked for', async () => {
    const { parts, proof } = await made([item({ apart: true })], withPattern);
    expect(parts.map(({ stem }) => stem)).toEqual(['item-1']);
    expect(failed(proof)).toEqual([]);
  });

  test('moved in the cut file alone are named by the register', async () => {
    const job = await made([item({ clear: 3 })], withPattern);
    const proof = provedFolder(job, (texts) => {
      texts['wrap.cut.svg'] = (texts['wrap.cut.svg'] ?? '').replace(
        /<g data-role="artwork" data-layer="item-1 #17566b"[\s\S]*?<\/g>/,
        (group) => shiftedArt(group, 0.3, 0.7),
      );
    });
    expect(failed(proof)).toContain('register');
  });
});

test('a mask is one sheet: items are cut out of the wrap', async () => {
  const { draft, parts } = await madeOf({
    blank: cup,
    job: { items: [item()], film: { thickness: 0, use: 'mask' } },
    files,
  });
  expect(parts).toEqual([]);
  expect(artIn(draft.cut)).toHaveLength(2);
});
