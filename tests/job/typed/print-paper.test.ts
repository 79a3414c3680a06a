import { describe, expect, test } from 'vitest';
import { paperNamed } from '../../../src/job/typed/print-paper.ts';
import { refusalsOf } from '../../blank/a-blank.ts';
import { expectWithin } from '../../closeness.ts';

describe('paper', () => {
  // ANSI/ASME Y14.1 size A is 8.5 x 11 in, ISO 216 A4 is 210 x 297 mm, C4 is 229 x 324 mm; all from memory.
  test.each([
    ['A4', 210, 297],
    [' letter', 215.9, 279.4],
    ['210x297mm', 210, 297],
    ['297 x 210 mm', 210, 297],
    ['22.9cm × 324mm', 229, 324],
    ['8 1/2 x 11in', 215.9, 279.4],
    ['8½" x 11"', 215.9, 279.4],
    ['8.5in x 279.4 mm', 215.9, 279.4],
  ])('%j is %d by %d mm', (typed, across, up) => {
    const paper = paperNamed(typed);
    expectWithin(paper.across, across, 1e-9);
    expectWithin(paper.up, up, 1e-9);
  });

  test.each([
    ['a9', /"a9" is no paper size here; give a4, a3, letter or tabloid, or a size with its unit/],
    ['210x330', /no paper size here/],
    ['210x330 ells', /no unit here/],
    ['0x330mm', /"0mm" is no size/],
    ['90x330mm', /90 mm across, too narrow for the rulers/],
    ['210mm x 9000mm', /over 5000 mm/],
  ])('%j is refused, in words', (typed, says) => {
    const [finding, ...more] = refusalsOf(() => paperNamed(typed));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ rule: 'paper-size', where: { key: '--paper-size' } });
    expect(finding?.says).toMatch(says);
  });
});
