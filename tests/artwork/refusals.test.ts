// Drawings that can't be cut, or that the reader would change in silence: refused, or told, by rule and place.
import { describe, expect, test } from 'vitest';
import { toLine } from '../../src/finding.ts';
import { readOf, tileText } from './a-tile.ts';

const square = '<rect width="20" height="20"/>';

/** The first finding's rule, when the drawing was refused. */
async function refusal(text: string): Promise<string | undefined> {
  const { tile, findings } = await readOf(text);
  for (const finding of findings) expect(toLine(finding)).not.toMatch(/\n|Error|undefined|\[object/);
  return tile === undefined ? findings[0]?.rule : undefined;
}

describe('what has no edge to cut is refused', () => {
  test.each([
    ['text', `${square}<text x="5" y="5">hello</text>`],
    ['text', `${square}<flowRoot><flowPara>hello</flowPara></flowRoot>`],
    ['text', '<text x="5" y="5">text only</text>'],
    ['raster', `${square}<image href="data:image/png;base64,iVBORw0KGgo=" width="9" height="9"/>`],
    ['raster', '<image href="photo.png" width="40" height="40"/>'],
    ['foreign', `${square}<foreignObject width="9" height="9"><p>hi</p></foreignObject>`],
    ...[
      '<rect width="9" height="9" fill="#808080"/>',
      '<rect width="9" height="9" fill="white" fill-opacity=".5"/>',
      '<g opacity=".5"><rect width="9" height="9" fill="white"/></g>',
      '<linearGradient id="g"><stop stop-color="white"/><stop offset="1"/></linearGradient><rect width="9" height="9" fill="url(#g)"/>',
    ].map((shade) => [
      'mask',
      `<mask id="m">${shade}</mask><g mask="url(#m)"><rect width="20" height="20"/></g>`,
    ]),
    ['mask', `<style>mask{mask-type:alpha}</style>${square}`],
    [
      'filter',
      '<filter id="f"><feGaussianBlur stdDeviation="1"/></filter><rect width="20" height="20" filter="url(#f)"/>',
    ],
    ['filter', '<rect width="20" height="20" style="filter:blur(2px)"/>'],
    ['no-area', ''],
    ['no-area', '<rect width="20" height="0"/>'],
    ['no-area', '<path d="M0 0L20 20"/>'],
    ['no-area', '<path d="M0 0L20 20" stroke="red" stroke-width="0"/>'],
    ['no-area', '<rect width="20" height="20" fill="none"/>'],
    ['no-area', '<defs><rect width="20" height="20"/></defs>'],
    ['no-area', '<rect x="50" width="20" height="20"/>'],
    ['no-area', '<clipPath id="c"/><rect width="20" height="20" clip-path="url(#c)"/>'],
  ])('%s: %s', async (rule, body) => expect(await refusal(tileText(body))).toBe(rule));
});

describe('what the reader would cut short, drop or place wrongly is refused', () => {
  test.each([
    ['broken-path', '<path d="M0 0 L20 0 L20 20 oops L0 20 Z"/>'],
    ['broken-path', '<path d="M0 0 L20 0 L20"/>'],
    ['broken-path', '<path d="M0 0 L20 NaN L20 20Z"/>'],
    ['broken-path', '<path d="M0 0 L1e400 0 L20 20Z"/>'],
    ['broken-path', '<path d="M0 0 L1e308 0 L20 20Z"/>'],
    ['broken-path', '<path d="L20 0 L20 20Z"/>'],
    ['broken-path', '<path d="M0 0 A5 5 0 2 1 20 20Z"/>'],
    ['broken-path', '<polygon points="0,0 20,0 20"/>'],
    ['broken-path', '<polygon points="0,0 20,x 20,20"/>'],
    ['broken-shape', `${square}<rect width="NaN" height="5"/>`],
    ['broken-shape', `${square}<rect width="-5" height="5"/>`],
    ['broken-shape', `${square}<circle r="five"/>`],
    ['broken-shape', `${square}<ellipse rx="5" ry="1e308"/>`],
    ['broken-shape', `${square}<rect x="1e30" width="5" height="5"/>`],
    ['broken-shape', `${square}<use href="#a" x="NaN"/>`],
    ['broken-transform', '<rect width="20" height="20" transform="turn(20)"/>'],
    ['broken-transform', '<rect width="20" height="20" transform="rotate(20deg)"/>'],
    ['broken-transform', '<rect width="20" height="20" transform="scale(1e300)"/>'],
    ['out-of-range', '<rect width="9" height="99999999in"/>'],
    ['out-of-range', '<g transform="scale(1e5)"><rect width="20" height="20" transform="scale(1e5)"/></g>'],
    // What the reader was seen to pass over (SVG 2 has them all).
    ['style-transform', '<rect width="20" height="20" style="transform:rotate(45deg)"/>'],
    ['style-transform', '<style>.a { TRANSFORM : scale(2) }</style><rect class="a" width="20" height="20"/>'],
    ['style-transform', '<rect width="20" height="20" style="fill:red; rotate:45deg"/>'],
    ['style-transform', '<rect width="20" height="20" transform="rotate(45)" transform-origin="10 10"/>'],
    [
      'style-transform',
      '<rect width="20" height="20" transform="rotate(45)" style="transform-origin:center"/>',
    ],
    ['style-shape', `<style>circle{r:5px}</style>${square}<circle/>`],
    ['style-shape', `${square}<path style="d:path('M0 0L9 9L0 9Z')"/>`],
    ['stroke-unread', '<path d="M0 0L20 20" stroke="red" vector-effect="non-scaling-stroke"/>'],
    ['stroke-unread', '<path d="M0 0L20 20" style="stroke:red; vector-effect: non-scaling-stroke"/>'],
    [
      'stroke-unread',
      '<style>.a{vector-effect:non-scaling-stroke;stroke:red}</style><path class="a" d="M0 0H9"/>',
    ],
    ['stroke-unread', '<path d="M0 0L20 20" stroke="red" stroke-dasharray="1" pathLength="10"/>'],
    // Drawn a unit wide, or solid.
    ['stroke-unread', '<path d="M0 0L20 20" stroke="red" stroke-width="1e400"/>'],
    ['stroke-unread', '<path d="M0 0L20 20" stroke="red" stroke-dasharray="2,1e400"/>'],
    ['stroke-unread', '<path d="M0 0L20 20" style="stroke:red;stroke-width: 1e400px"/>'],
    [
      'stroke-unread',
      `<style>.a{stroke:red;stroke-width:${'9'.repeat(400)}}</style><path class="a" d="M0 0H9"/>`,
    ],
    // Left out, and nothing was said.
    ['out-of-range', '<path d="M0 0L20 20" stroke="red" stroke-width="9e8"/>'],
    ['out-of-range', '<g transform="scale(1e4)"><path d="M0 0H.001" stroke="red" stroke-width="30"/></g>'],
    ['stroke-unread', `${square}<marker id="m"><path d="M0 0H9V9" fill="context-stroke"/></marker>`],
    [
      'too-many-copies',
      '<pattern id="g" width=".01" height=".01" patternUnits="userSpaceOnUse"><rect width=".005" height="2"/></pattern><rect width="40" height="40" fill="url(#g)"/>',
    ],
    ['too-many-dashes', '<path d="M0 0L20 20" stroke="red" stroke-dasharray="1e-9"/>'],
    ['too-many-dashes', '<path d="M0 0L90000 20" stroke="red" stroke-dasharray="0 .01"/>'],
    ['clip-shape', '<rect width="20" height="20" clip-path="circle(5px)"/>'],
    ['clip-shape', '<rect width="20" height="20" style="clip-path:inset(5px)"/>'],
  ])('%s: %s', async (rule, body) => expect(await refusal(tileText(body))).toBe(rule));
});

describe('what may be read differently is told, and read', () => {
  test.each([
    ['style-important', '<style>rect{fill:red !important}</style><rect width="20" height="20"/>'],
    ['style-unread', '<style>@media print{rect{fill:red}}</style><rect width="20" height="20"/>'],
    ['style-unread', '<style>@import "x.css";</style><rect width="20" height="20"/>'],
    ['style-unread', '<style>rect:nth-child(2){fill:red}</style><rect width="20" height="20"/>'],
    ['style-unread', '<style>rect:not(.a){fill:red}</style><rect width="20" height="20"/>'],
    ['style-unread', '<style>g + rect{fill:red}</style><rect width="20" height="20"/>'],
    ['style-unread', '<style>[id^="a"]{fill:red}</style><rect width="20" height="20"/>'],
    ['style-unread', '<style>rect{fill:var(--ink)}</style><rect width="20" height="20"/>'],
    ['style-unread', '<style>rect{fill:oklch(0.5 0.1 20)}</style><rect width="20" height="20"/>'],
    ['style-unread', '<style>rect{FILL:red}</style><rect width="20" height="20"/>'],
    ['style-unread', '<rect width="20" height="20" style="width:30px"/>'],
    ['outside-reference', `${square}<use href="other.svg#a"/>`],
    [
      'outside-reference',
      `${square}<use xmlns:xlink="http://www.w3.org/1999/xlink" xlink:href="/etc/hosts#a"/>`,
    ],
  ])('%s: %s', async (rule, body) => {
    const { tile, findings } = await readOf(tileText(body));
    expect(tile).toBeDefined();
    expect(findings.map((finding) => [finding.rule, finding.level])).toEqual([[rule, 'look']]);
  });

  test.each([
    '<style>/* transform: none; var(--a) */ .a{fill:#0a0;stroke-width:2;text-transform:none}</style>',
    '<style>.a:hover{fill:red} a:link > .b{fill:red} g:first-child{fill:red}</style>',
    '<style>@font-face{font-family:"X";src:url(x.woff)} .a{fill:red}</style>',
    '<path d="M0 0H9V9" vector-effect="non-scaling-stroke" stroke="none" pathLength="5"/>',
    '<style>.a{stroke:none;stroke-width:1e9;stroke-dasharray:12345678.25,1e-12} .b{fill:#e11}</style>',
    '<style>.a[id="b"] .c, *{line-height:1.25;-x-stroke:none;fill:rgb(1,2,3)}</style>',
  ])('and what is followed, or changes nothing, is not: %s', async (style) => {
    expect((await readOf(tileText(`${style}${square}`))).findings).toEqual([]);
  });

  test('see-through film once, however many there are', async () => {
    const { findings } = await readOf(
      tileText(
        `<g id="mist" opacity=".5">${square}</g>${'<rect width="5" height="5" fill-opacity=".2"/>'.repeat(30)}`,
      ),
    );
    expect(findings.map(({ rule, level, where }) => [rule, level, where.element])).toEqual([
      ['see-through', 'note', 'g#mist'],
    ]);
    expect(findings[0]?.says).toContain('and 30 more');
  });
});
