// Font files as they come: each kind, cut short, and changed at random.
import { zlibSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { fontIn } from '../../../src/artwork/text/font-file.ts';
import { openFont } from '../../../src/artwork/text/lettering.ts';
import { inflated } from '../../../src/deliver/compress.ts';
import { Refused } from '../../../src/finding.ts';
import { textSetter } from '../../../src/job/tools.ts';
import { refusalsOf } from '../../blank/a-blank.ts';
import { randomFrom } from '../../geometry/drawn.ts';
import { plainFont, scriptFont } from '../../job/a-font.ts';

const read = (bytes: Uint8Array) => fontIn(bytes, 'hand.ttf', inflated);
const refusal = (bytes: Uint8Array) => {
  const [finding] = refusalsOf(() => read(bytes));
  expect(finding).toMatchObject({ rule: 'font', level: 'stop', where: { file: 'hand.ttf' } });
  return finding?.says ?? '';
};
const tagged = (tag: string, rest = new Uint8Array(60)) =>
  new Uint8Array([...[...tag].map((c) => c.charCodeAt(0)), ...rest]);

/** A WOFF file of a font, written by its specification (W3C, WOFF File Format 1.0, sections 3 and 4): tables packed where that helps. */
function woffOf(font: Uint8Array): Uint8Array {
  const view = new DataView(font.buffer, font.byteOffset, font.length);
  const count = view.getUint16(4);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = 12 + 16 * i;
    const [from, length] = [view.getUint32(at + 8), view.getUint32(at + 12)];
    const plain = font.subarray(from, from + length);
    const packed = zlibSync(plain);
    return {
      tag: view.getUint32(at),
      sum: view.getUint32(at + 4),
      length,
      data: packed.length < length ? packed : plain,
    };
  });
  const padded = (n: number) => Math.ceil(n / 4) * 4;
  const total = tables.reduce((sum, { data }) => sum + padded(data.length), 44 + 20 * count);
  const file = new Uint8Array(total);
  const out = new DataView(file.buffer);
  [0x774f4646, view.getUint32(0), total].forEach((n, i) => void out.setUint32(4 * i, n));
  out.setUint16(12, count);
  let at = 44 + 20 * count;
  tables.forEach(({ tag, sum, length, data }, i) => {
    [tag, at, data.length, length, sum].forEach((n, k) => void out.setUint32(44 + 20 * i + 4 * k, n));
    file.set(data, at);
    at += padded(data.length);
  });
  return file;
}

describe('a font file', () => {
  test('of TrueType is taken as it is', () => {
    expect(read(plainFont)).toBe(plainFont);
  });

  test('in a WOFF wrapper gives the same letters', () => {
    const options = {
      text: 'Pebble',
      capHeight: 14,
      spacing: 0,
      align: 'middle',
      direction: 'auto',
    } as const;
    const setText = textSetter(openFont(plainFont));
    const wrapped = woffOf(scriptFont);
    expect(wrapped.length).toBeLessThan(scriptFont.length);
    const [plain, unwrapped] = [scriptFont, wrapped].map((bytes) =>
      setText(options, { file: 'hand.woff', bytes }).shapes(),
    );
    expect(unwrapped).toEqual(plain);
  });

  test.each([
    ['WOFF2', tagged('wOF2'), 'WOFF2'],
    ['a collection', tagged('ttcf'), 'collection'],
    ['a picture', tagged('\x89PNG'), 'no font'],
    ['nothing', new Uint8Array(3), 'too short'],
  ])('that is %s is refused by what it is, with what to give', (_, bytes, says) => {
    expect(refusal(bytes)).toContain(says);
    expect(refusal(bytes)).toContain('give a TTF, OTF or WOFF file');
  });

  test('cut short anywhere is refused', () => {
    for (const bytes of [plainFont, woffOf(plainFont)])
      for (const share of [0.001, 0.01, 0.3, 0.9, 0.999])
        expect(refusal(bytes.slice(0, Math.floor(bytes.length * share)))).toMatch(
          /cut short|too short|has no table/,
        );
  });

  test('of a WOFF that would unpack to more than is read is refused before it is', () => {
    const bytes = woffOf(plainFont);
    new DataView(bytes.buffer).setUint32(44 + 12, 0xf0000000);
    expect(refusal(bytes)).toMatch(/MB unpacked/);
  });

  test('without letters or outlines is refused by the table it lacks', () => {
    const bytes = plainFont.slice();
    const view = new DataView(bytes.buffer);
    for (let i = 0; i < view.getUint16(4); i++)
      if (view.getUint32(12 + 16 * i) === 0x676c7966) view.setUint32(12 + 16 * i, 0x78787878);
    expect(refusal(bytes)).toContain('has no table "glyf" or "CFF" or "CFF2"');
  });

  test('changed at random is lettered or refused in words', () => {
    const random = randomFrom(4711);
    const setText = textSetter(openFont(plainFont));
    const options = {
      text: 'Mist AV fi',
      capHeight: 14,
      spacing: 0,
      align: 'middle',
      direction: 'auto',
    } as const;
    let lettered = 0;
    for (let round = 0; round < 60; round++) {
      const bytes = (round % 2 === 0 ? plainFont : woffOf(plainFont)).slice();
      const changes = 1 + Math.floor(40 * random());
      for (let i = 0; i < changes; i++)
        bytes[Math.floor(bytes.length * random() ** 3)] = Math.floor(256 * random());
      try {
        setText(options, { file: 'hand.ttf', bytes }).shapes();
        lettered++;
      } catch (fault) {
        if (!(fault instanceof Refused)) throw fault;
      }
    }
    expect(lettered).toBeGreaterThan(5);
    expect(lettered).toBeLessThan(60);
  });
});
