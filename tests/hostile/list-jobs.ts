// Jobs with lists at random, one row a vessel: names of every kind, vessels and drawings by the row, any figure from a column.
import { dotTile, leafTile, type Typed } from '../job/a-job.ts';
import { pick, type Random, randomFrom } from './mutate.ts';
import { Hand, motifs, wholeJob } from './whole-jobs.ts';
import { widerJob } from './wider-jobs.ts';

/** A job and a list as they are typed. */
export interface ListJob {
  readonly job: object;
  /** Text of the CSV file. */
  readonly list: string;
  /** Every other file that either names. */
  readonly files: Readonly<Record<string, string>>;
}

const names: readonly string[] = [
  'Ada',
  'Pebble',
  'Tern & Kelp',
  'Zoë',
  'zoe',
  'ZOE',
  'Åsa Ö',
  'i',
  '1887',
  '7, Quay',
  'a "word"',
  'to the\nlighthouse',
  '  Bo  ',
  'con',
  '../up',
  'a/b\\c',
  '-',
  '.',
  '=1+1',
  '{name}',
  'Łódź',
  'Straße',
  'Маша',
  'Ηλέκτρα',
  'שלום',
  'سلام',
  '海',
  '🐚',
  'n\u0303a',
  '\u200b',
  'AVATO',
  'Maximiliane-Friederike von und zu Hohenwaldau der Ältere',
  'Wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww',
  '',
  '   ',
];

const tileTexts: Readonly<Record<string, string>> = {
  'a.svg': dotTile(26, 18),
  'b.svg': leafTile(30, 24),
  'c.svg': leafTile(45, 36),
};

/** Where a value stands in a parsed file. */
type Path = readonly (string | number)[];

/** Every number, and every length with a unit, of a parsed file. */
function figuresIn(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'number') return [path];
  if (typeof value === 'string') return /^[\d.]+(?:mm|in)$/.test(value) ? [path] : [];
  if (Array.isArray(value)) return value.flatMap((one, i) => figuresIn(one, [...path, i]));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => figuresIn(one, [...path, key]));
}

const valueAt = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>((inside, key) => (inside as Record<string | number, unknown>)[key], value);

/** A copy with one value put in place of another. */
function withValue(value: unknown, [key, ...rest]: Path, put: unknown): unknown {
  if (key === undefined) return put;
  if (Array.isArray(value)) return value.map((one, i) => (i === key ? withValue(one, rest, put) : one));
  const inside = value as Record<string | number, unknown>;
  return { ...inside, [key]: withValue(inside[key], rest, put) };
}

/** A column, and what stands in it in each row. */
interface Column {
  readonly name: string;
  readonly cell: () => string;
}

/** A figure near another one, as it may be typed in a list; now and then none, or nonsense. */
function figureNear(hand: Hand, value: unknown): string {
  const [, digits = '', unit = ''] = /^([\d.]+)(\D*)$/.exec(String(value)) ?? [];
  if (hand.chance(0.03)) return hand.one(['', '0', '-3', 'wide', '1e9', '270,2', '1 1/2in']);
  if (hand.chance(0.4)) return `${digits}${unit}`;
  const share = hand.mm(0.9, 1.1, 0.01);
  return `${Number((Number(digits) * share).toFixed(3))}${unit}`;
}

/** Some figures of a file put into columns. */
function figuresFromList(hand: Hand, file: object, prefix: string, columns: Column[]): object {
  let changed: unknown = file;
  const all = figuresIn(file);
  for (let i = 0; i < hand.whole(0, 3) && all.length > 0; i++) {
    const path = hand.one(all);
    const value = valueAt(file, path);
    const name = `${prefix} ${i}`;
    columns.push({ name, cell: () => figureNear(hand, value) });
    changed = withValue(changed, path, `{${name}}`);
  }
  return changed as object;
}

const quoted = (cell: string, separator: string): string =>
  /["\n\r]/.test(cell) || cell.includes(separator) ? `"${cell.replaceAll('"', '""')}"` : cell;

function csv(hand: Hand, columns: readonly Column[]): string {
  const separator = hand.one([',', ',', ';', '\t']);
  const end = hand.one(['\n', '\n', '\r\n', '\r']);
  const line = (cells: readonly string[]) => cells.map((cell) => quoted(cell, separator)).join(separator);
  const rows = Array.from({ length: hand.whole(1, 4) }, () => line(columns.map(({ cell }) => cell())));
  const strange = rows.flatMap((row) => {
    if (hand.chance(0.1)) return [row, row];
    if (hand.chance(0.05)) return [row, ''];
    if (hand.chance(0.05)) return [row, separator.repeat(columns.length - 1)];
    if (hand.chance(0.03)) return [`${row}${separator}more`];
    return [row];
  });
  const all = [line(columns.map(({ name }) => name)), ...strange];
  return `${hand.chance(0.2) ? '\uFEFF' : ''}${all.join(end)}${hand.chance(0.8) ? end : ''}`;
}

const lettering = (hand: Hand, height: number): object => ({
  text: hand.one(['{name}', '{name}', 'for {name}', '{name}\n{note}', '{note}']),
  capHeight: hand.length(4, 18, 0.5),
  ...hand.some(0.5, () => ({ fit: hand.length(20, 120, 1) })),
  at: { turn: hand.mm(0.1, 0.9, 0.05), along: hand.length(0.2 * height, 0.8 * height, 1) },
  ...hand.some(0.4, () => ({ lay: hand.one(['rigid', 'even', 'conformal']) })),
  ...hand.some(0.4, () => ({ apart: hand.chance(0.5) })),
  ...hand.some(0.3, () => ({ clear: hand.length(0.5, 4) })),
  ...hand.some(0.3, () => ({ backing: { grow: hand.length(0.5, 4) } })),
  ...hand.some(0.3, () => ({ optional: true })),
  ...hand.some(0.2, () => ({ spacing: hand.length(-0.5, 2) })),
});

const sheet = (hand: Hand): object => ({
  across: hand.typed(hand.one([150, 210, 300, 305, 500, 620, 1000])),
  ...hand.some(0.75, () => ({ up: hand.typed(hand.one([150, 297, 300, 450, 700])) })),
  margin: hand.typed(hand.whole(0, 10)),
  ...hand.some(0.3, () => ({ spacing: hand.length(0, 6, 0.5) })),
  ...hand.some(0.15, () => ({ mirror: true })),
});

const cutter = (hand: Hand): object => ({
  ...hand.some(0.5, () => ({ knifeOffset: '0.25mm', ...hand.some(0.5, () => ({ compensate: true })) })),
  ...hand.some(0.5, () => ({ measured: { across: `${hand.mm(149.2, 150.8)}mm`, up: '150mm' } })),
  ...hand.some(0.3, () => ({ marks: hand.one(['crosses', 'corners']) })),
});

/** A job whose rows are mainly made: words on a tile, or on nothing. */
function plainJob(hand: Hand): Typed {
  const [height, foot] = [hand.mm(50, 150, 1), hand.mm(50, 100, 0.5)];
  const blank = {
    stations: [
      { height: 0, across: foot },
      { height, across: Number((foot * hand.mm(0.8, 1.3, 0.01)).toFixed(1)) },
    ],
    use: 'other',
    ...hand.some(0.3, () => ({ footRound: hand.mm(1, 6) })),
    ...hand.some(0.2, () => ({ handle: { spans: hand.mm(20, 60, 1), keepOff: hand.mm(0, 8) } })),
  };
  return {
    blank,
    job: {
      lettering: Array.from({ length: hand.whole(1, 2) }, () => lettering(hand, height)),
      film: { minWidth: 0.2, minPiece: 0.5 },
      ...hand.some(0.3, () => ({ collars: {} })),
    },
    files: motifs,
    ...hand.some(0.7, () => ({
      tile: pick(() => hand.mm(0, 0.99, 0.01), Object.values(tileTexts)),
      artwork: hand.some(0.5, () => ({ lay: hand.one(['even', 'conformal', 'rigid']) })),
    })),
  };
}

const baseOf = (hand: Hand, seed: number): Typed => {
  if (hand.chance(0.5)) return plainJob(hand);
  return hand.chance(0.7) ? wholeJob(5000 + seed) : widerJob(5000 + seed);
};

/** What is taken from the list besides a name: vessels, drawings, motifs. */
function fromColumns(hand: Hand, base: Typed, seed: number, columns: Column[]): ListJob {
  const { blank, job: typed = {}, tile, artwork = {}, files = {} } = base;
  const job = typed as Record<string, unknown>;
  const texts: Record<string, string> = { ...files };
  const byRow = hand.chance(0.5);
  if (byRow) {
    const vessels = [
      blank,
      wholeJob(9000 + seed).blank,
      widerJob(9000 + seed).blank,
      wholeJob(9500 + seed).blank,
    ];
    vessels.forEach((one, i) => {
      texts[`cup-${i}.blank.json`] = JSON.stringify(one);
    });
    const most = hand.whole(1, vessels.length - 1);
    columns.push({ name: 'vessel', cell: () => `cup-${hand.whole(0, most)}` });
  }
  const ownBlank = figuresFromList(hand, blank, 'wall', columns);
  const isApart = hand.chance(0.4);
  if (isApart) texts['b.blank.json'] = JSON.stringify(ownBlank);
  const drawingByRow = tile !== undefined && hand.chance(0.25);
  if (drawingByRow) {
    Object.assign(texts, tileTexts);
    columns.push({ name: 'drawing', cell: () => hand.one(Object.keys(tileTexts)) });
  } else if (tile !== undefined) texts['tile.svg'] = tile;
  const { lettering: asBefore, sheet: __, cutter: ___, ...kept } = job;
  const words = Array.isArray(asBefore) ? asBefore : [];
  const first = job.pieces !== 'gores' && hand.chance(0.8) ? lettering(hand, 80) : undefined;
  const all = words.some((one) => JSON.stringify(one).includes('{name}')) ? words : [...words, first];
  const letterings = all.filter((one) => one !== undefined);
  const filledIn = figuresFromList(hand, kept, 'key', columns);
  return {
    job: {
      name: hand.one(['{name}', 'a cup', 'for {name}', '{name} on {note}']),
      blank: byRow ? '{vessel}.blank.json' : isApart ? 'b.blank.json' : ownBlank,
      ...filledIn,
      ...(letterings.length > 0 ? { lettering: letterings } : {}),
      ...(tile === undefined
        ? {}
        : { artwork: { file: drawingByRow ? '{drawing}' : 'tile.svg', ...artwork } }),
      ...hand.some(0.65, () => ({
        sheet: sheet(hand),
        ...hand.some(0.2, () => ({ batch: hand.whole(2, 4) })),
        ...hand.some(0.2, () => ({ cutter: cutter(hand) })),
      })),
    },
    list: '',
    files: texts,
  };
}

/** One job with its list and its files: the same for the same seed. */
export function listJob(seed: number): ListJob {
  const random: Random = randomFrom(2_000_000 + seed);
  const base = baseOf(new Hand(random, 'mm'), seed);
  const isInches = (base.job as { readonly units?: string } | undefined)?.units === 'in';
  const hand = new Hand(random, isInches ? 'in' : 'mm');
  const few = hand.chance(0.5) ? names.slice(0, 10) : names;
  const columns: Column[] = [
    { name: 'name', cell: () => hand.one(few) },
    { name: 'note', cell: () => hand.one(['', 'tea', 'x 2', '1 : 4']) },
  ];
  const made = fromColumns(hand, base, seed, columns);
  return { ...made, list: csv(hand, columns) };
}
