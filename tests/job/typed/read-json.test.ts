import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Refused } from '../../../src/finding.ts';
import { parseJson } from '../../../src/job/typed/read-json.ts';
import { refusalsOf } from '../../blank/a-blank.ts';

const faultOf = (text: string) => refusalsOf(() => parseJson(text, 'cup.blank.json'))[0];

describe('a JSON text', () => {
  // The engine's own JSON.parse is the outside check.
  test('reads as the engine reads it', () => {
    fc.assert(
      fc.property(fc.json(), fc.constantFrom(0, 2, '\t'), (text, indent) => {
        const spaced = JSON.stringify(JSON.parse(text), null, indent);
        expect(parseJson(spaced, 'a.json')).toEqual(JSON.parse(spaced));
      }),
      { seed: 31, numRuns: 1000 },
    );
  });

  test('of ten million letters is read, and refused where it is not closed', () => {
    const long = 'x'.repeat(1e7);
    expect(parseJson(`"${long}"`, 'a.json') === long).toBe(true);
    expect(faultOf(`"${long}`)?.rule).toBe('broken-json');
  });

  test('that is broken is refused whenever the engine refuses it, and only then', () => {
    const broken = fc.tuple(
      fc.json({ maxDepth: 2 }),
      fc.nat(),
      fc.constantFrom('', ',', '"', '}', ']', '1', ' ', '\\', '-', '.', 'e', '\n', '\u0001', '\u007f', 't'),
    );
    fc.assert(
      fc.property(broken, ([json, at, mark]) => {
        const cut = at % (json.length + 1);
        const text = json.slice(0, cut) + mark + json.slice(cut + 1);
        const engine = (() => {
          try {
            return { value: JSON.parse(text) as unknown };
          } catch {
            return undefined;
          }
        })();
        if (engine === undefined) expect(['broken-json', 'key-twice']).toContain(faultOf(text)?.rule);
        else {
          try {
            expect(parseJson(text, 'a.json')).toEqual(engine.value);
          } catch (error) {
            // The one thing we refuse that the engine takes.
            if (!(error instanceof Refused) || error.findings[0]?.rule !== 'key-twice') throw error;
          }
        }
      }),
      { seed: 32, numRuns: 5000 },
    );
  });

  test('may begin with a byte order mark', () => {
    expect(parseJson('\uFEFF{"a":1}', 'a.json')).toEqual({ a: 1 });
  });

  test('of a million values is read, and of one more refused', () => {
    const list = (values: number): string => `[${'1,'.repeat(values - 2)}1]`;
    expect(parseJson(list(1e6), 'a.json')).toHaveLength(1e6 - 1);
    expect(faultOf(list(1e6 + 1))).toMatchObject({
      rule: 'broken-json',
      says: expect.stringMatching(/^holds more than 1000000 values/),
    });
  });

  test('may write a letter by its two halves, but not by one of them', () => {
    expect(parseJson('["\\ud83d\\udc1a"]', 'a.json')).toEqual(['🐚']);
    for (const text of ['["\\ud83d"]', '["\\udc1a\\ud83d"]', '{"a\\udc1a":1}'])
      expect([text, faultOf(text)]).toEqual([
        text,
        expect.objectContaining({
          rule: 'half-letter',
          where: { file: 'cup.blank.json', line: 1, column: 2 },
        }),
      ]);
  });

  test('does not reach any object but the one it gives', () => {
    const value = parseJson('{"__proto__": {"polluted": 1}}', 'a.json');
    expect(Object.hasOwn(Object(value), '__proto__')).toBe(true);
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });
});

describe('a broken JSON text', () => {
  test.each([
    ['{\n  "height": 0,\n}', 2, 14, 'a comma stands before the closing "}"; take the comma out'],
    ['[1, 2 , \n\n]', 1, 7, 'a comma stands before the closing "]"; take the comma out'],
    ['{"a": 1, 5}', 1, 10, '"5" stands where a key in double quotes should'],
    ['{"a":}', 1, 6, '"}" stands where a value'],
    ['{"a" 1}', 1, 6, '"1" stands where ":" after the key "a" should'],
    ['{"a": 1 "b": 2}', 1, 9, 'stands where "," or "}" should'],
    ['[1, 2', 1, 6, 'the file ends where "," or "]" should'],
    ['{"a": 3/8}', 1, 7, '"3/8" stands where a value'],
    ['{"a": 012}', 1, 7, '"012" stands where a value'],
    ["{'a': 1}", 1, 2, 'stands where a key in double quotes should'],
    ['{"a": "open\n}', 1, 12, 'a text is not closed on its line'],
    ['{"a": "C:\\cups"}', 1, 10, 'write \\\\ for a backslash'],
    ['{} {}', 1, 4, 'where the end of the file should'],
    ['', 1, 1, 'the file is empty'],
    ['{\r\n"a": x}', 2, 6, '"x" stands where a value'],
  ])('%j is refused at its line and column', (text, line, column, says) => {
    const fault = faultOf(text);
    expect(fault).toMatchObject({ rule: 'broken-json', where: { file: 'cup.blank.json', line, column } });
    expect(fault?.says).toContain(says);
  });

  test('names a key that is given twice', () => {
    expect(faultOf('{"across": 62,\n "across": 63}')).toMatchObject({
      rule: 'key-twice',
      where: { line: 2, column: 2 },
    });
  });

  test('is refused, not run out of stack, when nested without end', () => {
    expect(faultOf('['.repeat(100_000))?.says).toContain('nested over 64 deep');
  });
});
