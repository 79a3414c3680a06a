// Bad art, a folder a rule and a folder a case: everything that is found in it, where, and how large.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Normalise } from '../../src/artwork/svg/svg-normalise.ts';
import { inspect } from '../../src/job/inspect/inspect.ts';
import { standardCutter, standardFilm } from '../../src/job/typed/material.ts';
import { expectPointWithin, expectWithin } from '../closeness.ts';
import { pictureEngine } from '../pictures/compare.ts';

interface Expected {
  readonly rule: string;
  readonly x?: number;
  readonly y?: number;
  readonly size?: number;
  /** How far from its place a finding may be, where it is one of many: mm. */
  readonly far?: number;
}

interface Case {
  readonly note: string;
  /** How wide the drawing is to be, mm. */
  readonly across?: number;
  readonly checks: readonly Expected[];
}

const folder = fileURLToPath(new URL('../cases/', import.meta.url));
/** The other runner's: how artwork is read. */
const rules = readdirSync(folder).filter((rule) => rule !== 'artwork');
const cases = rules.flatMap((rule) =>
  readdirSync(`${folder}${rule}`).map((name) => ({
    name: `${rule}: ${name.replaceAll('-', ' ')}`,
    at: `${folder}${rule}/${name}/`,
  })),
);

let normalise: Normalise;
beforeAll(async () => {
  ({ normalise } = await pictureEngine());
});

/** Reported sizes are within 0.02 of what was drawn, whatever their unit. */
const sizeTolerance = 0.02;

describe('artwork is inspected', () => {
  test.each(cases)('$name', ({ at }) => {
    const { checks: wanted, across }: Case = JSON.parse(readFileSync(`${at}case.json`, 'utf8'));
    const { report } = inspect({
      content: readFileSync(`${at}art.svg`, 'utf8'),
      file: 'art.svg',
      ...(across === undefined ? {} : { across }),
      film: standardFilm,
      cutter: standardCutter,
      normalise,
    });
    expect(report.checks.map(({ rule }) => rule)).toEqual(wanted.map(({ rule }) => rule));
    report.checks.forEach(({ where, size }, i) => {
      const { x, y, size: wantedSize, far = 0.05, rule = '' } = wanted[i] ?? {};
      if (x === undefined || y === undefined) return;
      expectPointWithin({ x: where.x ?? Number.NaN, y: where.y ?? Number.NaN }, { x, y }, far, rule);
      expectWithin(size ?? Number.NaN, wantedSize ?? Number.NaN, sizeTolerance, rule);
    });
  });

  test('by a case for every rule of the checks', () => {
    for (const rule of ['thin-film', 'thin-gap', 'small-piece', 'sharp', 'open-line', 'doubled-line'])
      expect(rules).toContain(rule);
    for (const rule of ['self-crossing', 'close-nodes', 'layer-edges']) expect(rules).toContain(rule);
  });
});
