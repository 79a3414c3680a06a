// Files that are no SVG, are broken, or are made to do harm: refused in one line, quickly, with their place.
import { describe, expect, test } from 'vitest';
import { toLine } from '../../src/finding.ts';
import { randomFrom } from '../geometry/drawn.ts';
import { readOf, tileText } from './a-tile.ts';

const square = '<rect width="20" height="20"/>';
const nested = (depth: number) => tileText(`${'<g>'.repeat(depth)}${square}${'</g>'.repeat(depth)}`);

describe('a file that can not be read is refused with its place', () => {
  test.each([
    ['an empty file', '', 1],
    ['spaces only', ' \n ', 1],
    ['a sentence', 'Dear all, here is the artwork.', 1],
    ['an unclosed element', tileText('<g><rect width="9" height="9"/>'), 1],
    ['a crossed element', tileText('<g>\n<a></g></a>'), 2],
    ['a file cut off in the middle', tileText(square).slice(0, 120), 1],
    ['a PDF with another ending', '%PDF-1.7\n%âãÏÓ\n1 0 obj\n<< /Type /Catalog >>\nendobj', 1],
    ['a picture with another ending', '\u0089PNG\r\n\u001a\n\u0000\u0000', 1],
    ['JSON', '{ "name": "cup" }', 1],
    ['an entity that is not declared', tileText('&lip;'), 1],
    ['an attribute given twice', tileText('<rect width="9" width="8" height="9"/>'), 1],
    [
      'a prefix that is not declared',
      tileText('<use xlink:href="#a"/><rect id="a" width="9" height="9"/>'),
      1,
    ],
  ])('%s', async (_, text, line) => {
    const { tile, findings } = await readOf(text);
    expect(tile).toBeUndefined();
    expect(findings.map(({ rule, level }) => [rule, level])).toEqual([['unreadable', 'stop']]);
    expect(findings[0]?.where.line).toBe(line);
    expect(findings.map(toLine)[0]).toMatch(/^tile\.svg/);
    expect(findings.map(toLine)[0]).not.toMatch(/\n|Error/);
  });

  test.each([
    ['a web page', '<!DOCTYPE html><html><body><svg/></body></html>', 'its root is <html>'],
    ['another drawing format', '<plist><dict/></plist>', 'its root is <plist>'],
    [
      'an svg element without its namespace',
      '<svg width="9mm" height="9mm"><rect width="9" height="9"/></svg>',
      'xmlns=',
    ],
  ])('%s', async (_, text, says) => {
    const { tile, findings } = await readOf(text);
    expect(tile).toBeUndefined();
    expect(findings[0]?.rule).toBe('unreadable');
    expect(findings[0]?.says).toContain(says);
  });

  test.each([
    ['no size', tileText(square, '')],
    ['a width alone', tileText(square, 'width="40mm"')],
    ['a width of zero', tileText(square, 'width="0" height="40mm" viewBox="0 0 40 40"')],
    ['a negative height', tileText(square, 'width="40mm" height="-40mm" viewBox="0 0 40 40"')],
    ['a width that is no number', tileText(square, 'width="NaN" height="40mm" viewBox="0 0 40 40"')],
    ['a width past every number', tileText(square, 'width="1e308mm" height="40mm" viewBox="0 0 40 40"')],
    ['a view box without area', tileText(square, 'width="40mm" height="40mm" viewBox="0 0 40 0"')],
  ])('%s', async (_, text) => {
    const { tile, findings } = await readOf(text);
    expect(tile).toBeUndefined();
    expect(findings.map(({ rule }) => rule)).toEqual(['no-size']);
  });
});

describe('a broken path is named by file, line and column', () => {
  test('where its element begins, by its id, and every one of them', async () => {
    const text = tileText(`\n  ${square}\n  <path id="leaf"\n    d="M0 0L9 9Q"/> <path d="M0"/>\n`);
    const { findings } = await readOf(text);
    expect(
      findings.map(({ rule, where: { file, line, column, element } }) => [rule, file, line, column, element]),
    ).toEqual([
      ['broken-path', 'tile.svg', 3, 3, 'path#leaf'],
      ['broken-path', 'tile.svg', 4, 21, 'path'],
    ]);
    expect(findings.map(toLine)[0]).toMatch(/^tile\.svg:3:3: path#leaf: path data can't be read: /);
  });

  test('whatever the line ends are', async () => {
    for (const end of ['\n', '\r\n']) {
      const { findings } = await readOf(tileText(`${end}<g>${end} <path${end}d="M0"/></g>`));
      expect(findings.map(({ where: { line, column } }) => [line, column])).toEqual([[3, 2]]);
    }
  });
});

describe('a file made to do harm', () => {
  const bomb = `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa">${[...'bcdefghij']
    .map((name, i) => `<!ENTITY ${name} "${`&${'abcdefghi'[i]};`.repeat(10)}">`)
    .join('')}]>${tileText('<title>&j;</title>')}`;

  test.each([
    ['an entity bomb', bomb],
    [
      'an outside entity',
      `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hosts">]>${tileText('<title>&x;</title>')}`,
    ],
    [
      'an outside parameter entity',
      `<!DOCTYPE svg [<!ENTITY % x SYSTEM "http://example.org/x.dtd"> %x;]>${tileText(square)}`,
    ],
    ['a name for markup', `<!DOCTYPE svg [<!ENTITY x "<script/>">]>${tileText('<title>&x;</title>')}`],
    [
      'a plain name used very often',
      `<!DOCTYPE svg [<!ENTITY x "${'a'.repeat(200)}">]>${tileText(`<title>${'&x;'.repeat(2_000_000)}</title>`)}`,
    ],
    ['nesting of ten thousand', nested(10_000)],
    ['nesting of a million', nested(1_000_000)],
  ])('is refused: %s', async (_, text) => {
    const { tile, findings } = await readOf(text);
    expect(tile).toBeUndefined();
    expect(findings.map(({ rule }) => rule)).toEqual(['unreadable']);
  });

  const copies = (count: number) =>
    `<defs><path id="p" d="M0 0${'l.1 .1'.repeat(2000)}z"/></defs>${'<use href="#p"/>'.repeat(count)}`;
  const rules = Array.from({ length: 20_000 }, (_, i) => `.a${i} .b>c{fill:red}`).join('');
  const random = randomFrom(3);
  const scribble = Array.from({ length: 3000 }, () => `L${random() * 40} ${random() * 40}`).join('');

  test.each([
    ['a million groups in a row', tileText('<g/>'.repeat(1_000_000)), 'more than 100000 elements'],
    [
      'ten million segments',
      tileText(`<path d="M0 0${'h1v1'.repeat(5_000_000)}"/>`),
      'more than 1000000 points',
    ],
    ['copies that spell out to millions of points', tileText(copies(2000)), 'more than 2000000 points'],
    [
      'more style rules than can be tried',
      tileText(`<style>${rules}</style>${'<g/>'.repeat(2000)}`),
      'style rules',
    ],
    [
      'a scribble that crosses itself a million times',
      tileText(`<path d="M0 0${scribble}Z"/>`),
      'cross more than',
    ],
    [
      'the pen along such a scribble',
      tileText(`<path fill="none" stroke="#000" d="M0 0${scribble}Z"/>`),
      'cross more than',
    ],
  ])('is refused by a limit that it names: %s', async (_, text, limit) => {
    const { tile, findings } = await readOf(text);
    expect(tile).toBeUndefined();
    expect(findings.map(({ says }) => says).join()).toContain(limit);
  });

  const box = 'M4 4H36V36H4Z';
  const path = `<path d="${box}"/>`;
  const within = (count: number, inside: string) => `${'<g>'.repeat(count)}${inside}${'</g>'.repeat(count)}`;
  const triangle = (i: number) =>
    `<path d="M${1 + (i % 45) * 0.8} ${1 + Math.floor(i / 45) * 0.8}l.5 .5l-.5 0z"/>`;
  const triangles = Array.from({ length: 2000 }, (_, i) => triangle(i)).join('');
  const marker = `<marker id="m" markerWidth="3" markerHeight="3">${triangles}</marker>`;
  const line = (bears: string) =>
    `<path fill="none" stroke="#000" ${bears} d="M0 0${'l.1 .1l.1-.1'.repeat(500)}"/>`;
  const cell = (id: string, side: number, inside: string) =>
    `<pattern id="${id}" width="${side}" height="${side}" patternUnits="userSpaceOnUse">${inside}</pattern>`;
  const disc = '<circle cx=".25" cy=".25" r=".2"/>';

  // Each took minutes, hours or far longer: of the first the reader tried every thirty of two hundred groups.
  test.each([
    [
      'a style rule of thirty steps for what stands deep',
      `<style>g.x ${'g '.repeat(30)}path{fill:red}</style>${within(200, path)}`,
      'style rules of so many steps, such as "g.x g g',
    ],
    [
      'a style rule of thirty thousand declarations',
      `<style>.a{${'fill:red;'.repeat(30_000)}}</style><path class="a" d="${box}"/>`,
      'has 30001 declarations in style rules of 270004 letters',
    ],
    [
      'style rules for elements of five hundred classes',
      `<style>${Array.from({ length: 2000 }, (_, i) => `.z${i}{fill:red}`).join('')}</style>${`<path class="${'c '.repeat(5000)}" d="${box}"/>`.repeat(1000)}`,
      '2000 style rules for 1002 elements',
    ],
    [
      'a hundred thousand selectors of one style rule',
      `<style>${'.a,'.repeat(100_000)}b{fill:red}</style>${path.repeat(400)}`,
      '100001 style rules for',
    ],
    [
      'markers of two thousand shapes on a line',
      `${marker}${line('marker-mid="url(#m)"')}`,
      'more than 2000000 points',
    ],
    [
      'such markers that the group around the line names',
      `${marker}<g style="marker:url(#m)">${line('')}</g>`,
      'more than 2000000 points',
    ],
    [
      'such markers that a style sheet names',
      `<style>path{marker-mid:url("#m")}</style>${marker}${line('')}`,
      'more than 2000000 points',
    ],
    [
      'a clip path of forty-five thousand shapes',
      `<clipPath id="c">${Array.from({ length: 45_000 }, (_, i) => triangle(i)).join('')}</clipPath><path clip-path="url(#c)" d="${box}"/>`,
      'is clipped by shapes of too many points',
    ],
    [
      'a clip path of two thousand shapes over one another',
      `<clipPath id="c">${triangle(0).repeat(2000)}</clipPath><path clip-path="url(#c)" d="${box}"/>`,
      'lie over or beside each other as thickly',
    ],
    [
      'patterns in a pattern, of many shapes',
      `${cell('p', 0.5, disc.repeat(25))}${cell('q', 2, '<path fill="url(#p)" d="M0 0H2V2H0Z"/>')}<path fill="url(#q)" d="${box}"/>`,
      'copies come to more than 40000 shapes',
    ],
    [
      'a filter past all',
      `<filter id="f" width="1e18"><feTurbulence baseFrequency="1e300"/></filter><g filter="url(#f)">${path}</g>`,
      'is past what is read',
    ],
  ])('is refused before it is worked out: %s', async (_, body, says) => {
    const { tile, findings } = await readOf(tileText(body));
    expect(tile).toBeUndefined();
    expect(findings.map(({ says }) => says).join()).toContain(says);
  });

  test('fifteen thousand shapes within a frame with round corners are none of them', async () => {
    const dots = Array.from({ length: 15_000 }, (_, i) => triangle(i)).join('');
    const body = `<clipPath id="c"><rect width="40" height="270" rx="3"/></clipPath><g clip-path="url(#c)">${dots}</g>`;
    const { tile } = await readOf(tileText(body));
    expect(tile?.layers.length).toBe(1);
  });

  const spaces = ' '.repeat(200_000);
  const digits = '1'.repeat(200_000);

  // A look at every letter for each other one: none of these came to an end within minutes, and the first ran out of room.
  test.each<readonly [string, string, string]>([
    ['a transform of a million steps', `<g transform="${'rotate(1) '.repeat(1e6)}">${path}</g>`, ''],
    ['a transform of spaces', `<g transform="${spaces}x">${path}</g>`, 'broken-transform'],
    ['a transform of open steps', `<g transform="${'rotate( '.repeat(1e5)}">${path}</g>`, 'broken-transform'],
    ['a length of digits', `<rect x="${digits}!" width="9" height="9"/>`, 'broken-shape'],
    ['a length of spaces', `<rect x="1${spaces}!" width="9" height="9"/>`, 'broken-shape'],
    ['a style sheet of colons', `<style>${':a'.repeat(200_000)}</style>${path}`, ''],
    ['a style sheet of open brackets', `<style>${':a('.repeat(200_000)}</style>${path}`, ''],
    ['a style sheet of sums', `<style>${'a+b'.repeat(200_000)}</style>${path}`, ''],
    [
      'a stroke of spaces',
      `<path vector-effect="non-scaling-stroke" style="stroke:${spaces}none" d="${box}"/>`,
      '',
    ],
  ])('is looked through once: %s', async (_, body, rule) => {
    const { findings } = await readOf(tileText(body));
    expect(findings.map((finding) => finding.rule).join()).toBe(rule);
  });

  test('a size of digits is refused, not looked through', async () => {
    const { findings } = await readOf(tileText(path, `width="${digits}!" height="40mm"`));
    expect(findings.map(({ rule }) => rule)).toEqual(['no-size']);
  });

  test('what drawing programs write of these is read', async () => {
    const rules = Array.from(
      { length: 100 },
      (_, i) => `.a${i}, #b > .st${i}, #layer .c${i}{fill:#123}`,
    ).join('');
    const arrow = '<marker id="m" markerWidth="3" markerHeight="3"><path d="M0 0L3 1.5L0 3Z"/></marker>';
    const clipped = `<clipPath id="c">${path}</clipPath>${`<path class="st1 c2" clip-path="url(#c)" d="${box}"/>`.repeat(300)}`;
    const body = `<style>${rules}</style>${arrow}<g id="b" transform="translate(1, 2) , rotate( 3 )scale(1)">${clipped}</g>`;
    const lines = line('marker-end="url(#m)"').replace('stroke="#000"', 'stroke="#123"');
    expect((await readOf(tileText(body + lines))).findings).toEqual([]);
  });

  test('a few hundred crossings are read', async () => {
    const few = Array.from({ length: 60 }, (_, i) => `L${i % 2 ? 2 : 38} ${2 + ((i * 17) % 36)}`).join('');
    expect((await readOf(tileText(`<path d="M0 0${few}Z"/>`))).tile).toBeDefined();
  });

  test('nesting as a drawing program may make is read', async () => {
    expect((await readOf(nested(100))).tile).toBeDefined();
  });

  test('a plain document type is read', async () => {
    const doctype =
      '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">';
    expect((await readOf(`<?xml version="1.0"?>${doctype}${tileText(square)}`)).tile).toBeDefined();
  });

  test('a comment full of masks that never end is passed over', async () => {
    const comment = `<!-- ${'<mask '.repeat(300_000)}" -->`;
    const { tile } = await readOf(tileText(comment + square));
    expect(tile?.layers).toHaveLength(1);
  });

  test('copies of copies without end are refused', async () => {
    const level = (i: number) => `<g id="a${i}">${`<use href="#a${i - 1}"/>`.repeat(10)}</g>`;
    const levels = Array.from({ length: 7 }, (_, i) => level(i + 1)).join('');
    const { tile, findings } = await readOf(
      tileText(`<defs><rect id="a0" width="1" height="1"/>${levels}</defs><use href="#a7"/>`),
    );
    expect(tile).toBeUndefined();
    expect(findings.map(({ rule }) => rule)).toEqual(['unreadable']);
  });

  test('a copy of itself and a clip by itself end', async () => {
    const { tile } = await readOf(
      tileText(
        `${square}<g id="a"><use href="#a"/></g><clipPath id="c" clip-path="url(#c)"><rect width="9" height="9"/></clipPath><rect width="9" height="9" clip-path="url(#c)"/>`,
      ),
    );
    expect(tile?.layers.length).toBe(1);
  });
});

test('names for plain texts, as drawing programs give to their namespaces, are written out', async () => {
  const declared = `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd" [
  <!ENTITY ns_svg "http://www.w3.org/2000/svg">
  <!ENTITY ink '#17566b'>
]>
<svg xmlns="&ns_svg;" width="20mm" height="20mm" viewBox="0 0 20 20"><rect fill="&ink;" width="9" height="9"/>`;
  const { tile, findings } = await readOf(`${declared}</svg>`);
  expect([findings, tile?.layers.map(({ colour }) => colour)]).toEqual([[], ['#17566b']]);
  // Lines are counted as in the file.
  const { findings: broken } = await readOf(`${declared}\n<g></svg>`);
  expect(broken.map(({ rule, where }) => [rule, where.line])).toEqual([['unreadable', 6]]);
});

describe('what is past all bounds is refused before the rest is worked out', () => {
  test('a scribble of filled shapes before the lines that are drawn by a pen', async () => {
    // The dashes alone are too many, and are drawn first: they are not come to.
    const dashed =
      '<path fill="none" stroke="#000" stroke-width=".3" stroke-dasharray=".001" d="M0 0H40M0 2H40"/>';
    const at = (i: number) => `${(i % 100) * 0.05} ${Math.floor(i / 100) * 0.05}`;
    const squares = Array.from({ length: 3000 }, (_, i) => `<path d="M${at(i)}h5v5h-5z"/>`);
    const { findings } = await readOf(tileText(dashed + squares.join('')));
    expect(findings.map(({ rule }) => rule)).toEqual(['too-tangled']);
    const alone = await readOf(tileText(dashed));
    expect(alone.findings.map(({ rule }) => rule)).toEqual(['too-many-dashes']);
  });

  test('twenty thousand lines without an area side by side', async () => {
    const lines = Array.from({ length: 20_000 }, (_, i) => `M${i * 0.002} 0V40`);
    const pen = 'fill="none" stroke="#000" stroke-width="1e-9"';
    const { findings } = await readOf(
      tileText(`<path d="M4 4H9V9Z"/>${lines.map((d) => `<path ${pen} d="${d}"/>`).join('')}`),
    );
    expect(findings.map(({ rule, level }) => [rule, level])).toEqual([['too-fine', 'stop']]);
  });

  test('more colours than there are films', async () => {
    const squares = Array.from({ length: 1001 }, (_, i) => {
      const colour = (0x111111 + 331 * i).toString(16);
      return `<path fill="#${colour}" d="M${i % 40} ${Math.floor(i / 40)}h.9v.9h-.9z"/>`;
    });
    const { findings } = await readOf(tileText(squares.join('')));
    expect(findings.map(({ rule, level }) => [rule, level])).toEqual([['too-many-colours', 'stop']]);
    expect((await readOf(tileText(squares.slice(1).join('')))).tile?.layers).toHaveLength(1000);
  });

  test('more areas than a cutter cuts in a day', async () => {
    const rows = Array.from({ length: 246 }, (_, row) => `M0 ${2 * row}${'h1v1h-1zm2 0'.repeat(246)}`);
    const size = 'width="492mm" height="492mm" viewBox="0 0 492 492"';
    const { findings } = await readOf(tileText(`<path d="${rows.join('')}"/>`, size));
    expect(findings.map(({ rule, level }) => [rule, level])).toEqual([['too-many-areas', 'stop']]);
    expect(findings.map(toLine)[0]).toMatch(/^tile\.svg: has more than 60000 areas/);
  });
});
