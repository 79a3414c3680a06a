import { describe, expect, test } from 'vitest';
import { expectAtMost, expectPointWithin, expectWithin, expectWithinPart } from './closeness.ts';

describe('closeness', () => {
  test('holds at the tolerance and fails just past it', () => {
    expectWithin(10.5, 10, 0.5);
    expect(() => expectWithin(10.5, 10, 0.4999)).toThrow(/off by 0.5/);
    expect(() => expectWithin(9.5, 10, 0.4999)).toThrow(/off by 0.5/);
    expectWithinPart(101, 100, 0.01);
    expect(() => expectWithinPart(101, 100, 0.0099)).toThrow(/off by 1/);
    expect(() => expectWithinPart(-101, -100, 0.0099)).toThrow(/off by 1/);
    expectPointWithin({ x: 3, y: 4 }, { x: 0, y: 0 }, 5);
    expect(() => expectPointWithin({ x: 3, y: 4 }, { x: 0, y: 0 }, 4.99)).toThrow(/off by 5/);
    expectAtMost(1, 1);
    expect(() => expectAtMost(1.1, 1)).toThrow(/more than 1/);
  });

  test('never takes what is not a number for close', () => {
    expect(() => expectWithin(Number.NaN, 1, 1e9)).toThrow();
    expect(() => expectWithin(1, Number.NaN, 1e9)).toThrow();
    expect(() => expectWithinPart(Number.NaN, 1, 1)).toThrow();
    expect(() => expectPointWithin({ x: Number.NaN, y: 0 }, { x: 0, y: 0 }, 1e9)).toThrow();
    expect(() => expectAtMost(Number.NaN, 1)).toThrow();
    expect(() => expectWithin(Infinity, Infinity, 1)).toThrow();
  });

  test('refuses a tolerance that is missing, negative or boundless', () => {
    // @ts-expect-error the tolerance is required
    expect(() => expectWithin(1, 1)).toThrow(/tolerance/);
    // @ts-expect-error the tolerance is required
    expect(() => expectWithinPart(1, 1)).toThrow(/tolerance/);
    // @ts-expect-error the tolerance is required
    expect(() => expectPointWithin({ x: 0, y: 0 }, { x: 0, y: 0 })).toThrow(/tolerance/);
    expect(() => expectWithin(1, 1, Number.NaN)).toThrow(/tolerance/);
    expect(() => expectWithin(1, 1, -1)).toThrow(/tolerance/);
    expect(() => expectWithin(1, 1, Infinity)).toThrow(/tolerance/);
  });
});
