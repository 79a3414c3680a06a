// What the build does to pairs changes nothing that the code does: it is run both ways.
import { expect, test } from 'vitest';
import { withoutPairs } from '../../building/pairs.ts';

const code = `
const seen = [];
const told = (value) => (seen.push(value), value);
const [a, b] = [told(1), told({ c: [2, 3] })];
let [x, y] = [a + 1, told(7)];
const [one, two] = [0, (told('y'), 1)];
[x, y] = [y, x];
const [c, d] = b.c;
const [first, rest] = [(() => { const [p, q] = [8, 9]; return p * q; })(), [...b.c]];
const [, late = 4] = [told(5)];
const [some] = [...rest];
for (let [i, j] = [0, 2]; i < j; i++) seen.push(i);
seen.push([a, x, y, c, d, first, rest, late, some, one, two]);
seen;
`;

test('pairs of plain names are taken apart, all else stays, and it does the same', () => {
  const plain = withoutPairs(code);
  expect(plain).toContain('let x = a + 1, y = told(7);');
  expect(plain).toContain("const [one, two] = [0, (told('y'), 1)];");
  expect(plain).toContain('[x, y] = [y, x];');
  expect(plain).toContain('const [, late = 4] = [told(5)];');
  const run = (text: string): unknown => new Function(`return eval(${JSON.stringify(text)})`)();
  expect(run(plain)).toEqual(run(code));
});
