import { describe, expect, test } from 'vitest';
import { columnsIn } from '../../../src/job/typed/columns-in.ts';
import { filled, filledText, textsToFill } from '../../../src/job/typed/list-columns.ts';
import { blankKeys } from '../../../src/job/typed/read-blank.ts';
import { jobKeys } from '../../../src/job/typed/read-job.ts';

const source = { columns: ['name', 'size', 'girth'], hasDecimalComma: false };
const row = { line: 2, cells: ['Anna', '14', '270.2mm'] };

describe('columns in a text', () => {
  test('are found wherever they stand, and filled each', () => {
    expect(columnsIn('{name} of { size }, {name}')).toEqual(['name', 'size', 'name']);
    expect(filledText('{name} of { size }, {name}', row, source)).toBe('Anna of 14, Anna');
  });

  test('what a cell holds is not filled again, and means nothing of its own', () => {
    const cells = ['{size} $& $1', '14', '1'];
    expect(filledText('{name}!', { line: 2, cells }, source)).toBe('{size} $& $1!');
  });

  test('are told with the key they stand at', () => {
    expect(textsToFill({ name: 'plain', lettering: [{ text: '{name}' }, { fit: '{size}' }] })).toEqual([
      { key: 'lettering[0].text', text: '{name}' },
      { key: 'lettering[1].fit', text: '{size}' },
    ]);
  });
});

describe('a filled file', () => {
  test('has numbers where a key takes one, and words where it takes those, though they be digits', () => {
    const job = { name: '{size}', lettering: [{ text: '{size}', capHeight: '{size}', fit: '{girth}' }] };
    expect(filled(job, jobKeys, row, source)).toEqual({
      name: '14',
      lettering: [{ text: '14', capHeight: 14, fit: '270.2mm' }],
    });
  });

  test('has them in a blank of its own and in one within the job', () => {
    const blank = { name: '{size}', stations: [{ height: 0, girth: '{size}' }] };
    const full = { name: '14', stations: [{ height: 0, girth: 14 }] };
    expect(filled(blank, blankKeys, row, source)).toEqual(full);
    expect(filled({ blank }, jobKeys, row, source)).toEqual({ blank: full });
  });

  test('has the unit that stands beside the column', () => {
    expect(filled({ seam: { overlap: '{size}mm' } }, jobKeys, row, source)).toEqual({
      seam: { overlap: '14mm' },
    });
  });

  test('reads a decimal comma where the list has semicolons, in numbers only', () => {
    const cells = ['Anna, 2,5', '13,5', '27,02 cm'];
    const list = { ...source, hasDecimalComma: true };
    const job = { lettering: [{ text: '{name} {size}', capHeight: '{size}', fit: '{girth}' }] };
    expect(filled(job, jobKeys, { line: 2, cells }, list)).toEqual({
      lettering: [{ text: 'Anna, 2,5 13,5', capHeight: 13.5, fit: '27.02 cm' }],
    });
  });
});
