// A large scribble is refused by what comes first of it, before the rest is worked out.
import { expect, test } from 'vitest';
import type { Painted } from '../../src/artwork/covered.ts';
import { seenAreas } from '../../src/artwork/painted-areas.ts';
import { Refused } from '../../src/finding.ts';

const frame = { width: 40, height: 40 };
/** A star of forty corners, 4 mm wide. */
const star = `M${Array.from({ length: 40 }, (_, k) => `${2 * Math.cos(k)} ${2 * Math.sin(1.3 * k)}`).join('L')}Z`;

test('ten thousand markers over one another are worked out no further than it takes to tell', () => {
  let read = 0;
  const painted = Array.from(
    { length: 10_000 },
    (_, i): Painted => ({
      id: undefined,
      colour: '#000000',
      by: 'nonzero',
      get data() {
        read++;
        return star;
      },
      toMm: { a: 1, b: 0, c: 0, d: 1, e: (i % 100) * 0.4, f: Math.floor(i / 100) * 0.4 },
      clips: [],
      copies: [],
    }),
  );
  expect(() => seenAreas(painted, frame, 'a.svg')).toThrow(Refused);
  expect(read).toBeLessThan(1500);
});
