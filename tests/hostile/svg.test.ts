// Drawings of an open corpus (zondicons 1.2.2, MIT, as package @iconify-json/zondicons) and tiles of ours, changed at random:
// each is read, or refused in words.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import icons from '@iconify-json/zondicons/icons.json' with { type: 'json' };
import { expect, test } from 'vitest';
import { inspect } from '../../src/job/inspect/inspect.ts';
import { standardCutter, standardFilm } from '../../src/job/typed/material.ts';
import { tileText } from '../artwork/a-tile.ts';
import { pictureEngine } from '../pictures/compare.ts';
import { type Attempt, faultOf, patient, seeds } from './fuzz.ts';
import { mutatedSvg, pick, randomFrom } from './mutate.ts';

const cases = join(import.meta.dirname, '../cases/artwork');
const drawings: readonly string[] = [
  ...Object.values(icons.icons).map(({ body }) =>
    tileText(body, 'width="40mm" height="40mm" viewBox="0 0 20 20"'),
  ),
  ...readdirSync(cases).flatMap((folder) =>
    readdirSync(join(cases, folder))
      .filter((file) => file.endsWith('.svg'))
      .map((file) => readFileSync(join(cases, folder, file), 'utf8')),
  ),
];

test('drawings changed at random are read or refused in words', patient, async () => {
  const { normalise } = await pictureEngine();
  const faults: Attempt[] = [];
  for (const seed of seeds(400)) {
    const random = randomFrom(seed);
    let text = pick(random, drawings);
    for (let i = 0; i <= random() * 4; i++) text = mutatedSvg(text, random);
    const fault = await faultOf(() =>
      inspect({ content: text, file: 'a.svg', film: standardFilm, cutter: standardCutter, normalise }),
    );
    if (fault !== undefined) faults.push({ seed, input: text.slice(0, 3000), fault });
  }
  expect(faults).toEqual([]);
});
