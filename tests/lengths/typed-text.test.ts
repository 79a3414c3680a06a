// Texts encoded by Node, which is not what reads them.
import { expect, test } from 'vitest';
import { Refused, toLine } from '../../src/finding.ts';
import { shown } from '../../src/lengths/shown.ts';
import { typedText } from '../../src/lengths/typed-text.ts';

const text = '{ "name":\n"Möwe 🐚 Łódź" }';
const utf16 = Buffer.from(`\uFEFF${text}`, 'utf16le');

test.each<readonly [string, Buffer]>([
  ['UTF-8', Buffer.from(text)],
  ['UTF-8 after a byte order mark', Buffer.from(`\uFEFF${text}`)],
  ['UTF-16, the low byte first', utf16],
  ['UTF-16, the high byte first', Buffer.from(utf16).swap16()],
])('text in %s is read letter by letter', (_, bytes) => {
  expect(typedText(bytes, 'a.json')).toBe(text);
});

const halfPair = Buffer.from(utf16);
halfPair.writeUInt16LE(0xd800, 10);
test.each<readonly [string, string, Buffer, RegExp]>([
  [
    'Latin-1',
    'a.json',
    Buffer.from(text.replace(/[🐚Łź]/gu, ''), 'latin1'),
    /^a\.json:2: .* save it in UTF-8$/,
  ],
  ['Latin-1, a list', 'a.csv', Buffer.from('Möwe', 'latin1'), /^a\.csv:1: .* save it as "CSV UTF-8"$/],
  ['UTF-8 cut within a letter', 'a.json', Buffer.from('\n\nMö').subarray(0, 4), /^a\.json:3: /],
  ['UTF-16 of an odd byte', 'a.json', utf16.subarray(0, -1), /^a\.json: is not text in UTF-8/],
  ['UTF-16 with half a letter', 'a.json', halfPair, /^a\.json: is not text in UTF-8/],
])('text in %s is refused, with its line where there are lines', (_, file, bytes, says) => {
  const told = (): string => {
    try {
      return typedText(bytes, file);
    } catch (fault) {
      return fault instanceof Refused ? fault.findings.map(toLine).join() : String(fault);
    }
  };
  expect(told()).toMatch(says);
});

test('a letter of two places is shown whole, or not at all', () => {
  expect(shown(`${'x'.repeat(39)}🐚🐚`)).toBe(`"${'x'.repeat(39)}…"`);
  expect(shown(`${'x'.repeat(38)}🐚🐚`)).toBe(`"${'x'.repeat(38)}🐚…"`);
});
