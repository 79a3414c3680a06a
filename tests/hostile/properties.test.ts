// What holds for any input, by fast-check: readings, jobs, lists and art, each made from scratch and not from something well-formed.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { describeBlank } from '../../src/job/blank/describe-blank.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { jobKeys, readJob } from '../../src/job/typed/read-job.ts';
import { readList } from '../../src/job/typed/read-list.ts';
import { readOf, tileText } from '../artwork/a-tile.ts';
import { faultOf, firstSeed, patient, rounds } from './fuzz.ts';

/** Times as many on request, as for the tests that change input at random. */
const times = (runs: number) => ({ numRuns: rounds(runs), seed: 20267 + firstSeed });

/** What may be typed for a length: sound, odd, or none. */
const typedLength = fc.oneof(
  fc.double({ min: 1, max: 400, noNaN: true }),
  fc.double(),
  fc.integer({ min: 1, max: 99 }).map((eighths) => `${Math.floor(eighths / 8)} ${eighths % 8}/8in`),
  fc.constantFrom('62mm', '-3', '0', '1e309mm', 'nine', '', null),
);

const station = fc.oneof(
  fc.record({ height: typedLength, across: typedLength }),
  fc.record({ height: typedLength, girth: typedLength }),
  fc.record({ along: typedLength, girth: typedLength, across: typedLength }, { requiredKeys: [] }),
);

test(
  'any readings give a blank that is described in finite figures, or are refused in words',
  patient,
  async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(station, { maxLength: 9 }), async (stations) => {
        const typed: unknown = JSON.parse(JSON.stringify({ name: 'any', use: 'other', stations }));
        const fault = await faultOf(() => {
          const told = JSON.stringify(describeBlank(readBlank(typed, 'b.json'), 'b.json', 'mm'));
          // JSON has no word for what is not finite but null.
          expect(told).not.toContain(':null');
        });
        expect(fault).toBeUndefined();
      }),
      times(150),
    );
  },
);

test('any JSON under any key of a job is read or refused in words', patient, async () => {
  const keys = fc.constantFrom(...Object.keys(jobKeys));
  const job = fc.dictionary(keys, fc.jsonValue({ maxDepth: 3 }), { maxKeys: 4 });
  await fc.assert(
    fc.asyncProperty(job, async (typed) => {
      const sound = { name: 'any', blank: 'b.blank.json' };
      expect(await faultOf(() => readJob({ ...sound, ...typed }, 'j.json'))).toBeUndefined();
    }),
    times(400),
  );
});

/** A cell in quotes, as RFC 4180, section 2, rules 5 to 7, has it. */
const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;

test('any cells in quotes come out of a list as they went in', patient, () => {
  const cell = fc.string({ unit: 'binary', maxLength: 12 }).map((text) => text.replace(/\r\n?/g, '\n'));
  const rows = fc.array(fc.tuple(cell, cell, cell), { maxLength: 9 });
  fc.assert(
    fc.property(
      rows,
      fc.constantFrom(',', ';', '\t'),
      fc.constantFrom('\n', '\r\n'),
      (cells, between, end) => {
        const text = [['a', 'b', 'c'], ...cells].map((row) => row.map(quoted).join(between)).join(end);
        // Lines without a word in them are passed over.
        const wanted = cells.filter((row) => row.some((one) => one.trim() !== ''));
        expect(readList(text, 'list.csv').rows.map((row) => row.cells)).toEqual(wanted);
      },
    ),
    times(40),
  );
});

const number = fc.oneof(
  fc.double({ min: -60, max: 60, noNaN: true }),
  fc.double({ noNaN: true }),
  fc.constantFrom(0, 1e-9, 1e308, -1e308, 20),
);
const counts = { M: 2, l: 2, L: 2, h: 1, V: 1, c: 6, C: 6, S: 4, q: 4, T: 2, Z: 0 } as const;
const step = fc
  .constantFrom(...(Object.keys(counts) as (keyof typeof counts)[]))
  .chain((letter) =>
    fc
      .array(number, { minLength: counts[letter], maxLength: counts[letter] })
      .map((values) => `${letter}${values.join(' ')}`),
  );

test(
  'any path is read as finite areas within the tile and a reach around it, or refused in words',
  patient,
  async () => {
    const path = fc.array(step, { maxLength: 12 }).map((steps) => `<path d="M0 0${steps.join('')}"/>`);
    await fc.assert(
      fc.asyncProperty(fc.array(path, { minLength: 1, maxLength: 3 }), async (paths) => {
        const fault = await faultOf(async () => {
          const { tile } = await readOf(tileText(paths.join('')));
          const points = (tile?.layers ?? []).flatMap(({ shapes }) =>
            shapes.flatMap(({ contours }) =>
              contours.flatMap(({ segments }) => segments.map(({ to }) => to)),
            ),
          );
          expect(points.filter(({ x, y }) => !Number.isFinite(x + y))).toEqual([]);
        });
        expect(fault).toBeUndefined();
      }),
      times(60),
    );
  },
);
