// Source: Math Central QQ.09.11 and QQ.09.07, see source.md.
import { describe, expect, test } from 'vitest';
import { expectWithin, expectWithinPart } from '../../closeness.ts';
import { laidByHeight, laidBySlant } from '../frustum.ts';
import values from './values.json' with { type: 'json' };

describe('the lampshade of QQ.09.11', () => {
  const { height, small, large, ...published } = values.lampshade;

  test.each([
    { foot: large, lip: small },
    { foot: small, lip: large },
  ])('unrolls to the published sector: foot $foot, lip $lip', ({ foot, lip }) => {
    const laid = laidByHeight(foot, lip, height);
    // Published to three figures and to the whole degree.
    expectWithin(laid.slant, published.slant, 0.05);
    expectWithin(laid.outerRadius, published.outerRadius, 0.05);
    expectWithin(360 - laid.sectorDeg, published.wasteWedgeDeg, 0.5);
    expectWithin(laid.innerRadius, published.innerRadius, 0.05);
  });

  test('has not the misprinted inner radius, which takes the apex height for the slant', () => {
    const laid = laidByHeight(large, small, height);
    expect(Math.abs(laid.innerRadius - published.misprintedInnerRadius)).toBeGreaterThan(0.1);
  });
});

describe('the two circumferences of QQ.09.07', () => {
  const { small, large, height, ...published } = values.circumferences;
  const across = (circumference: number) => circumference / Math.PI;

  test('unroll to the published sector within its early rounding, 1 %', () => {
    const laid = laidByHeight(across(small), across(large), height);
    expectWithinPart(laid.outerRadius, published.outerRadius, 0.01);
    expectWithinPart(laid.innerRadius, published.innerRadius, 0.01);
    expectWithinPart(laid.sectorDeg, published.sectorDeg, 0.01);
  });

  test('would not if the 8 inches were measured along the wall: slant and height are told apart', () => {
    const laid = laidBySlant(across(small), across(large), height);
    expect(Math.abs(laid.outerRadius / published.outerRadius - 1)).toBeGreaterThan(0.01);
  });
});
