// Changes to well-formed input that make it strange: the same for the same seed.
import { randomFrom } from '../geometry/drawn.ts';

export type Random = () => number;
export { randomFrom };

export const pick = <T>(random: Random, from: readonly T[]): T => {
  const one = from[Math.floor(random() * from.length)];
  if (one === undefined) throw new Error('nothing to pick from');
  return one;
};

/** Values that a field of JSON may hold by mistake or by malice. */
const strangeValues: readonly unknown[] = [
  null,
  true,
  false,
  0,
  -0,
  -1,
  1e-12,
  1e-300,
  1e12,
  1e308,
  -1e308,
  0.1,
  360,
  1e6,
  '',
  ' ',
  'NaN',
  'Infinity',
  '-3mm',
  '1e999mm',
  '0/0in',
  '1/0in',
  '3 3/8in',
  '9'.repeat(400),
  '{name}',
  '../../x',
  'nul\u0000',
  '💡',
  '\u202emm',
  [],
  {},
  [[]],
  [null],
  { a: [1e308, 0], b: [0, 1e308] },
  { height: 0 },
  [1, 2, 3],
  { __proto__: null, constructor: 1 },
];

/** A copy of a JSON value with one place in it changed, taken away, doubled or moved. */
export function mutatedJson(value: unknown, random: Random): unknown {
  if (Array.isArray(value)) {
    if (value.length === 0 || random() < 0.15)
      return pick(random, [
        [...value, ...value],
        value.slice(1),
        [...value].reverse(),
        pick(random, strangeValues),
      ]);
    const at = Math.floor(random() * value.length);
    return value.map((one, i) => (i === at ? mutatedJson(one, random) : one));
  }
  if (typeof value === 'object' && value !== null) {
    const keys = Object.keys(value);
    if (keys.length === 0 || random() < 0.05) return pick(random, strangeValues);
    const key = pick(random, keys);
    const entries = Object.entries(value);
    if (random() < 0.08) return Object.fromEntries(entries.filter(([name]) => name !== key));
    if (random() < 0.05) return Object.fromEntries([...entries, [`${key}x`, 1]]);
    return Object.fromEntries(
      entries.map(([name, one]) => [name, name === key ? mutatedJson(one, random) : one]),
    );
  }
  if (typeof value === 'number' && random() < 0.5)
    return value * pick(random, [-1, 0, 0.01, 0.5, 1.001, 2, 25.4, 100, 1e4]);
  return pick(random, strangeValues);
}

const strangeNumbers = [
  '0',
  '-1',
  '1e308',
  '-1e308',
  '1e-308',
  'NaN',
  '1e999',
  '0.0000001',
  '99999999',
  '.',
  '1e',
  '50%',
  '-50%',
  '3in',
  '1e5mm',
  'auto',
  '',
];
const strangeParts = [
  '<g>',
  '</g>',
  '<use href="#a"/>',
  '<style>*{fill:red}</style>',
  ' transform="scale(0)"',
  ' transform="matrix(1e300 0 0 1e300 0 0)"',
  ' stroke="#000" stroke-width="1e9"',
  ' stroke-dasharray="1e-9"',
  ' clip-path="url(#a)"',
  ' fill="url(#a)"',
  ' d="M0 0"',
  ' id="a"',
  '<![CDATA[',
  '-->',
  '<!--',
  '&#0;',
  '&#xD800;',
  '\u0000',
  '\uFFFF',
  '"',
  "'",
  '>',
  '<',
  '/',
  '<svg viewBox="0 0 0 0">',
  '<image href="http://127.0.0.1:9/x.png"/>',
  '<script>throw 1</script>',
];

/** A text of SVG with one thing changed: a number, a stretch taken away, doubled or swapped, something strange put in, or one letter. */
export function mutatedSvg(text: string, random: Random): string {
  const at = Math.floor(random() * text.length);
  const length = 1 + Math.floor(random() ** 3 * Math.min(400, text.length));
  switch (Math.floor(random() * 7)) {
    case 0:
    case 1: {
      const numbers = [...text.matchAll(/-?(?:\d+\.?\d*|\.\d+)(?:e-?\d+)?/g)];
      if (numbers.length === 0) return text.slice(at);
      const one = pick(random, numbers);
      return text.slice(0, one.index) + pick(random, strangeNumbers) + text.slice(one.index + one[0].length);
    }
    case 2:
      return text.slice(0, at) + text.slice(at + length);
    case 3:
      return text.slice(0, at + length) + text.slice(at);
    case 4:
      return text.slice(0, at) + pick(random, strangeParts) + text.slice(at);
    case 5: {
      const other = Math.floor(random() * text.length);
      return text.slice(0, at) + text.slice(other, other + length) + text.slice(at + length);
    }
    default:
      return text.slice(0, at) + String.fromCharCode(Math.floor(random() * 128)) + text.slice(at + 1);
  }
}
