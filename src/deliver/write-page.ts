// Writing a page of words, tables and pictures as one HTML file that reads on a screen and prints well.
import { pageStyle } from './page-style.ts';
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
      /** Whether each row has a box to tick. */
      readonly ticks?: boolean;
    }
  | { readonly kind: 'links'; readonly items: readonly Link[] }
  | ({ readonly kind: 'picture' } & Picture)
  | { readonly kind: 'pictures'; readonly items: readonly Picture[] }
  | { readonly kind: 'caution'; readonly items: readonly string[] }
  | { readonly kind: 'timeline'; readonly spans: readonly TimeSpan[] };

/** A picture by its file, and what it shows. */
export interface Picture {
  readonly file: string;
  readonly says: string;
}

/** What something is called, and what it is; empty where it is to be written in by hand. */
export interface Fact {
  readonly says: string;
  readonly is: string;
}

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
  /** Under the title: what it is known by. */
  readonly facts?: readonly Fact[];
  readonly sections: readonly Section[];
}

const tag = (name: string, content: string, attributes = ''): string =>
  `<${name}${attributes}>${content}</${name}>`;

const linkTo = (file: string, content: string): string =>
  tag('a', content, ` href="${escapeXml(encodeURI(file))}"`);

const listItems = (items: readonly string[]): string =>
  items.map((item) => tag('li', escapeXml(item))).join('');

function blockText(block: Block, sourceOf: SourceOf): string {
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
      return figureText(block, sourceOf);
    case 'pictures':
      return tag(
        'div',
        block.items.map((item) => figureText(item, sourceOf)).join('\n'),
        ' class="pictures"',
      );
    case 'table':
      return tableText(block);
    case 'timeline':
      return timelineText(block.spans);
  }
}

const figureText = ({ file, says }: Picture, sourceOf: SourceOf): string =>
  tag(
    'figure',
    `${linkTo(file, `<img src="${escapeXml(sourceOf(file))}" alt="${escapeXml(says)}">`)}${tag('figcaption', escapeXml(says))}`,
  );

function tableText({ head, rows, ticks = false }: Extract<Block, { kind: 'table' }>): string {
  const box = (name: string) => (ticks ? `<${name} class="tick"></${name}>` : '');
  const headRow = tag(
    'tr',
    `${box('td').replace(' class="tick"', '')}${head.map((cell) => tag('th', escapeXml(cell), ' scope="col"')).join('')}`,
  );
  const body = rows
    .map((row) => tag('tr', `${box('td')}${row.map((cell) => tag('td', escapeXml(cell))).join('')}`))
    .join('\n');
  const table = tag('table', `${tag('thead', headRow)}\n${tag('tbody', body)}`);
  return tag('div', table, ' class="scroll"');
}

function factsText(facts: readonly Fact[]): string {
  const all = facts.map(({ says, is }) =>
    tag('div', `${tag('dt', escapeXml(says))}${tag('dd', escapeXml(is), is === '' ? ' class="write"' : '')}`),
  );
  return all.length > 0 ? `${tag('dl', all.join('\n'), ' class="facts"')}\n` : '';
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

/** Where a picture's bytes are, by its file. */
type SourceOf = (file: string) => string;

/**
 * The text of an HTML file: no script, no outside reference but files beside it. Same page, same bytes. `within`: pictures
 * that the page holds itself, as what they are to be found at.
 */
export function writePage(
  { title, lead, facts = [], sections }: Page,
  within: (file: string) => string | undefined = () => undefined,
): string {
  const policy = "default-src 'none'; img-src 'self' file: data:; style-src 'unsafe-inline'";
  const sourceOf: SourceOf = (file) => within(file) ?? encodeURI(file);
  const body = sections.map(({ heading, blocks }) =>
    tag(
      'section',
      `${tag('h2', escapeXml(heading))}\n${blocks.map((block) => blockText(block, sourceOf)).join('\n')}\n`,
    ),
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${escapeXml(title)}</title>
<style>${pageStyle}</style>
</head>
<body>
<main>
<h1>${escapeXml(title)}</h1>
<p>${escapeXml(lead)}</p>
${factsText(facts)}${body.join('\n')}
</main>
</body>
</html>
`;
}
