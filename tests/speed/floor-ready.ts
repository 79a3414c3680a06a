// What the floor of `make` writes its drawings from: the numbers of their paths, and the text around them.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Stands for a number in the text: no XML may hold it. */
const mark = '\u0001';

/** Puts the numbers of all paths in a folder's drawings beside one another; where that was done, nothing. */
export function makeFloorReady(finished: string, ready: string): void {
  if (existsSync(ready)) return;
  mkdirSync(ready, { recursive: true });
  for (const file of readdirSync(finished).filter((name) => name.endsWith('.svg'))) {
    const numbers: number[] = [];
    const text = readFileSync(join(finished, file), 'utf8');
    const parts = text.split(/( d="[^"]*")/).map((part) => {
      if (!part.startsWith(' d="')) return part;
      return part.replace(/-?\d+(?:\.\d+)?/g, (number) => {
        numbers.push(Number(number));
        return mark;
      });
    });
    writeFileSync(join(ready, `${file}.text`), parts.join(''));
    writeFileSync(join(ready, `${file}.numbers`), new Uint8Array(Float64Array.from(numbers).buffer));
  }
}

/** @throws Error where the floor wrote anything else than what was made. */
export function refuseOtherBytes(made: string, written: string): void {
  for (const file of readdirSync(made))
    if (!readFileSync(join(made, file)).equals(readFileSync(join(written, file))))
      throw new Error(`the floor wrote other bytes: ${file}`);
}
