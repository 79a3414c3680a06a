// What the flat drawing says is cut: sizes by hand.
import { expect, test } from 'vitest';
import type { TemplateReport } from '../../src/job/report.ts';
import { cutInWords } from '../../src/page/board/cut-in-words.ts';

const piece = (width: number, height: number, more: Partial<TemplateReport> = {}): TemplateReport => ({
  shape: 'sector',
  parts: [],
  turns: { from: 0, to: 1 },
  sweepDeg: 28.8,
  width,
  height,
  overlap: 6,
  trim: { foot: 3, lip: 3 },
  band: { from: 0, to: height },
  runOff: 2,
  ...more,
});

test('one piece is told by its size and shape', () => {
  expect(cutInWords(piece(254, 127), 'in')).toBe('Cut piece 10 in by 5 in: part of a ring, 28.80° of it.');
  expect(cutInWords(piece(254, 127, { sweepDeg: 0.05 }), 'mm')).toBe(
    'Cut piece 254 mm by 127 mm: as good as a rectangle.',
  );
});

test('of several the largest is told: none of them is as high as all together', () => {
  const panels = piece(250, 60, { parts: [piece(130, 60), piece(125, 60)] });
  const stacked = piece(250, 140, { shape: 'stepped', parts: [piece(180, 50), panels, piece(150, 30)] });
  expect(cutInWords(stacked, 'mm')).toBe('4 cut pieces, the largest 180 mm by 50 mm.');
});

test('gores are told by their number and width', () => {
  const gores = { count: 16, width: 17.31, strain: 0.0194, joined: 'loose' } as const;
  expect(cutInWords(piece(351.9, 101, { shape: 'gores', gores }), 'mm')).toBe(
    '16 gores, each 17.3 mm at its widest, drawn on 351.9 mm by 101 mm.',
  );
});
