// An inch is 25.4 mm exactly: international yard and pound agreement, 1959.
import { describe, expect, test } from 'vitest';
import { toldIn } from '../../src/lengths/told-in.ts';

describe('a sentence told in inches', () => {
  test.each([
    ['is 6.35 mm wide; give at least 12.7 mm', 'is 0.25 in wide; give at least 0.5 in'],
    ['54.6, 145.7 mm: a point', '2.15, 5.736 in: a point'],
    ['one sheet of 304.8 mm by 609.6 mm for all', 'one sheet of 12 in by 24 in for all'],
    ['template: 266.0 x 254.3 mm sector', 'template: 10.472 x 10.012 in sector'],
    ['from 12.7 to 25.4 mm along', 'from 0.5 to 1 in along'],
    ['0.254 mm holds; it comes to 0.34 mm', '0.01 in holds; it comes to 0.0134 in'],
    ['meet within 0.0254 mm and 0.010 degrees', 'meet within 0.001 in and 0.010 degrees'],
    ['moved by -2.54 mm.', 'moved by -0.1 in.'],
    ['± 3.3 mm', '± 0.13 in'],
    ['3 pieces, 288.0 cm²', '3 pieces, 44.6 in²'],
    ['6452 cm² of film', '1000 in² of film'],
    ['a half drop of 14.50 mm (sure to 100 %)', 'a half drop of 0.571 in (sure to 100 %)'],
    // A foot is twelve inches.
    ['7.62 m of cutting and 45 lifts', '25.0 ft of cutting and 45 lifts'],
    ['at turn 0.072, 15.6 mm along', 'at turn 0.072, 0.614 in along'],
  ])('%s', (says, told) => expect(toldIn(says, 'in')).toBe(told));

  test.each([
    'the squares measure 25 mm and 1 in',
    'the smallest 4 mm² of film',
    'set its knife offset to 0.25 mm (0.0098 in), and its run-on to 0.5 mm (0.0197 in)',
    'kelp 30 mm.svg: has no area',
    '"62 mm" is not a length here',
    'cut 1 in wide',
    'the film is 90 mmx',
  ])('%s stays as it is', (says) => expect(toldIn(says, 'in')).toBe(says));

  test('in mm nothing changes', () => expect(toldIn('is 6.35 mm wide', 'mm')).toBe('is 6.35 mm wide'));
});
