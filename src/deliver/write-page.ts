// Writing a page of words, tables and pictures as one HTML file that reads on a screen and prints well.
import { escapeXml } from './write-svg.ts';

/** A block of a page. `tick` rows have an empty box to tick or to write in. */
export type Block =
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly numbered?: boolean }
  | { readonly kind: 'ticks'; readonly items: readonly string[] }
  | {
      readonly kind: 'table';
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  | { readonly kind: 'links'; readonly items: readonly Link[] }
  | { readonly kind: 'picture'; readonly file: string; readonly says: string }
  | { readonly kind: 'caution'; readonly items: readonly string[] }
  | { readonly kind: 'timeline'; readonly spans: readonly TimeSpan[] };

/** A file to open from the page, by its path beside it, and what it is. */
export interface Link {
  readonly file: string;
  readonly says: string;
}

/** Work or waiting on a timeline, hours from the start. */
export interface TimeSpan {
  readonly says: string;
  readonly from: number;
  readonly to: number;
  readonly isWait: boolean;
}

export interface Section {
  readonly heading: string;
  readonly blocks: readonly Block[];
}

export interface Page {
  readonly title: string;
  readonly lead: string;
  readonly sections: readonly Section[];
}

/** Quiet, and the same on paper: nothing but rules, weights and one warm tone for cautions, which have a word too. */
const style = `
:root { color-scheme: light; }
body { font: 11pt/1.45 "Atkinson Hyperlegible", system-ui, sans-serif; color: #1c1c1c; background: #fff; max-width: 52rem; margin: 2rem auto; padding: 0 1rem; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.15rem; margin: 1.8rem 0 .5rem; border-bottom: 1px solid #8a8a8a; padding-bottom: .2rem; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { text-align: left; padding: .3rem .6rem .3rem 0; border-bottom: 1px solid #d5d5d5; vertical-align: top; }
th { font-weight: 600; border-bottom-color: #8a8a8a; }
figure { margin: .5rem 0; } figure img { max-width: 100%; max-height: 22cm; height: auto; } figcaption { color: #4d4d4d; }
ul.ticks { list-style: none; padding-left: 0; } ul.ticks li { padding-left: 1.8rem; position: relative; margin: .35rem 0; }
ul.ticks li::before { content: ""; position: absolute; left: .1rem; top: .25rem; width: .9rem; height: .9rem; border: 1.5px solid #1c1c1c; }
.caution { border: 1px solid #b3541e; border-left-width: 6px; padding: .3rem 1rem; margin: .6rem 0; }
.timeline { width: 100%; height: auto; }
@page { margin: 15mm; }
@media print { body { margin: 0; max-width: none; padding: 0; font-size: 10pt; } h2 { break-after: avoid; } tr, figure, .caution, ul.ticks li { break-inside: avoid; } }
`;

const tag = (name: string, content: string, attributes = ''): string =>
  `<${name}${attributes}>${content}</${name}>`;

const linkTo = (file: string, content: string): string =>
  tag('a', content, ` href="${escapeXml(encodeURI(file))}"`);

const listItems = (items: readonly string[]): string =>
  items.map((item) => tag('li', escapeXml(item))).join('');

function blockText(block: Block): string {
  switch (block.kind) {
    case 'words':
      return tag('p', escapeXml(block.text));
    case 'list':
      return tag(block.numbered ? 'ol' : 'ul', listItems(block.items));
    case 'ticks':
      return tag('ul', listItems(block.items), ' class="ticks"');
    case 'caution':
      return tag(
        'div',
        `${tag('strong', 'Caution')}${tag('ul', listItems(block.items))}`,
        ' class="caution" role="note"',
      );
    case 'links':
      return tag(
        'ul',
        block.items
          .map(({ file, says }) => tag('li', `${linkTo(file, escapeXml(file))} ${escapeXml(says)}`))
          .join('\n'),
      );
    case 'picture':
      return tag(
        'figure',
        `${linkTo(block.file, `<img src="${escapeXml(encodeURI(block.file))}" alt="${escapeXml(block.says)}">`)}${tag('figcaption', escapeXml(block.says))}`,
      );
    case 'table':
      return tableText(block.head, block.rows);
    case 'timeline':
      return timelineText(block.spans);
  }
}

function tableText(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const headRow = tag('tr', head.map((cell) => tag('th', escapeXml(cell), ' scope="col"')).join(''));
  const body = rows
    .map((row) => tag('tr', row.map((cell) => tag('td', escapeXml(cell))).join('')))
    .join('\n');
  return tag('table', `${tag('thead', headRow)}\n${tag('tbody', body)}`);
}

/** Rows of a timeline, px in its own drawing. */
const row = { height: 22, bar: 12, words: 410, width: 960 } as const;

/** Bars from left to right, one a row: solid for work, hatched for waiting. */
function timelineText(spans: readonly TimeSpan[]): string {
  const end = Math.max(...spans.map(({ to }) => to), 1e-9);
  const scale = (row.width - row.words - 10) / end;
  const bars = spans.map(({ says, from, to, isWait }, i) => {
    const y = i * row.height;
    const x = row.words + from * scale;
    const width = Math.max(3, (to - from) * scale);
    const fill = isWait ? 'url(#wait)' : '#3a5a8c';
    return (
      `<text x="0" y="${y + 15}" font-size="13">${escapeXml(says)}</text>` +
      `<rect x="${x.toFixed(1)}" y="${y + 5}" width="${width.toFixed(1)}" height="${row.bar}" fill="${fill}" stroke="#3a5a8c"/>`
    );
  });
  const height = spans.length * row.height + 22;
  const axis = ticksOf(end).map((hour) => {
    const x = (row.words + hour * scale).toFixed(1);
    const says = hour >= 24 && hour % 24 === 0 ? `day ${hour / 24}` : `${hour} h`;
    return `<path d="M${x} 0V${height - 18}" stroke="#d5d5d5"/><text x="${x}" y="${height - 4}" font-size="11" text-anchor="middle">${says}</text>`;
  });
  const hatch =
    '<defs><pattern id="wait" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="#fff"/><rect width="2" height="6" fill="#3a5a8c"/></pattern></defs>';
  const says = spans.map((span) => span.says).join('; ');
  return `<svg class="timeline" viewBox="0 0 ${row.width} ${height}" role="img" aria-label="${escapeXml(says)}">${hatch}${axis.join('')}${bars.join('\n')}</svg>`;
}

/** Round hours to mark, at most six of them after the start. */
function ticksOf(end: number): readonly number[] {
  const step = [1, 2, 6, 12, 24, 48, 96, 168, 336].find((hours) => end / hours <= 6) ?? 672;
  return Array.from({ length: Math.floor(end / step) + 1 }, (_, i) => i * step);
}

/** The text of an HTML file: no script, no outside reference but the pictures beside it. Same page, same bytes. */
export function writePage({ title, lead, sections }: Page): string {
  const policy = "default-src 'none'; img-src 'self' file: data:; style-src 'unsafe-inline'";
  const body = sections.map(({ heading, blocks }) =>
    tag('section', `${tag('h2', escapeXml(heading))}\n${blocks.map(blockText).join('\n')}\n`),
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${escapeXml(title)}</title>
<style>${style}</style>
</head>
<body>
<main>
<h1>${escapeXml(title)}</h1>
<p>${escapeXml(lead)}</p>
${body.join('\n')}
</main>
</body>
</html>
`;
}
