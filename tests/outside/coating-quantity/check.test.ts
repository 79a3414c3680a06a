// Source: spreading rates of coatings, see source.md.
import { describe, test } from 'vitest';
import { coatVolume, pouredThickness } from '../../../src/blank/coats.ts';
import { expectWithinPart } from '../../closeness.ts';
import values from './values.json' with { type: 'json' };

/** A US gallon is 231 cubic inches, an inch 25.4 mm (NIST Handbook 44, appendix C; from memory). */
const inch = 25.4;
const gallon = (231 * inch ** 3) / 1000;

describe.each(values.spreading)('$name', (row) => {
  const millilitres = row.gallons === undefined ? 1000 * (row.litres ?? 0) : row.gallons * gallon;
  const area =
    row.squareFeet === undefined ? 1e6 * (row.squareMetres ?? 0) : row.squareFeet * (12 * inch) ** 2;
  const thickness = row.inches === undefined ? (row.mm ?? 0) : row.inches * inch;

  test('is as thick as published when so much is poured on so much', () => {
    expectWithinPart(pouredThickness(millilitres, 1 - row.stays, area), thickness, row.part);
  });

  test('takes as much as published for so thick a coat', () => {
    expectWithinPart(coatVolume(thickness, 1 - row.stays, area), millilitres, row.part);
  });
});
