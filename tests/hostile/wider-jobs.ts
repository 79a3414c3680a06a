// Whole jobs with what few makers use at once: bought crops under cover strips, drawings over drawings, films in an order, levels and panels, profiles.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Typed } from '../job/a-job.ts';
import { randomFrom } from './mutate.ts';
import { Hand, motifs, sample, wholeJob, words } from './whole-jobs.ts';

const profiles = join(import.meta.dirname, '../../profiles');
/** Profiles of a kind that are in mm, as they may stand in a job. */
const profilesOf = (kind: string): readonly object[] =>
  readdirSync(join(profiles, kind))
    .sort()
    .map((file) => JSON.parse(readFileSync(join(profiles, kind, file), 'utf8')) as Record<string, unknown>)
    .filter(({ units }) => kind === 'blanks' || units !== 'in')
    .map(({ name, units, source: _, sources: __, ...rest }) =>
      kind === 'blanks' ? { name, units, ...rest } : rest,
    );
const [blanks, films, sheets, cutters] = ['blanks', 'films', 'sheets', 'cutters'].map(profilesOf);

/** A field of dots and bars of which a crop of any size can be taken; what it truly repeats by is 20 by 15 mm. */
function crop(hand: Hand): string {
  const [across, up] = [hand.mm(26, 66, 0.5), hand.mm(20, 48, 0.5)];
  const motif = (x: number, y: number) =>
    `<circle cx="${x}" cy="${y}" r="3.4" fill="#17566b"/><path d="M${x + 6} ${y - 2}L${x + 14} ${y + 3}L${x + 12.5} ${y + 5}L${x + 5} ${y}Z" fill="#d4532f"/>`;
  const [first, last] = [-1, 5];
  const all = Array.from({ length: last - first }, (_, i) =>
    Array.from({ length: last - first }, (__, j) => motif((i + first) * 20 + 4, (j + first) * 15 + 5)).join(
      '',
    ),
  ).join('');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${across}mm" height="${up}mm" viewBox="0 0 ${across} ${up}">${all}</svg>`;
}

/** Drawings of one size to lay over one another, from the lowest up. */
const sea = ['#204060', '#d8b26a', '#d4532f'].map((colour, i) => {
  const [x, y, r] = [10 + 7 * i, 10 + 3 * i, 9 - 2 * i];
  return `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><circle cx="${x}" cy="${y}" r="${r}" fill="${colour}"/><path d="M${x - 4} ${y + 6}C${x} ${y + 2} ${x + 8} ${y + 12} ${x + 13} ${y + 5}L${x + 12} ${y + 9}L${x} ${y + 11}Z" fill="${colour}"/></svg>`;
});

/** The colours of drawings in another order, each with its own spread or without. */
const order = (hand: Hand, drawings: string): object => ({
  order: [...new Set(drawings.match(/#[0-9a-f]{6}/g))]
    .sort(() => (hand.chance(0.5) ? 1 : -1))
    .filter(() => hand.chance(0.8))
    .map((colour) => (hand.chance(0.4) ? { colour, spread: hand.length(-0.3, 0.5) } : colour)),
  ...hand.some(0.5, () => ({ style: hand.one(['stacked', 'knocked-out']) })),
  ...hand.some(0.5, () => ({ spread: hand.length(-0.3, 0.6) })),
  ...hand.some(0.3, () => ({ underlay: { choke: hand.length(0, 0.4) } })),
  ...hand.some(0.3, () => ({ backing: { grow: hand.length(0.5, 3), smooth: hand.length(0, 4) } })),
  ...hand.some(0.4, () => ({ files: 'each' })),
});

/** Tiles with artwork's own keys. */
function artOf(hand: Hand, isWhole: boolean): Pick<Typed, 'tile' | 'artwork' | 'files'> {
  const lay = hand.some(0.6, () => ({
    lay: hand.one(isWhole ? ['even', 'conformal', 'rigid'] : ['even', 'conformal']),
  }));
  const around = hand.some(0.4, () => ({ around: hand.whole(2, 12) }));
  switch (hand.one(['crop', 'crop', 'over', 'lattice', 'ground'] as const)) {
    case 'crop':
      return {
        tile: crop(hand),
        artwork: {
          ...lay,
          ...(hand.chance(0.7)
            ? {
                way: hand.one([1, 2, 3, 4, 5, 6, 7, 8, 9, 'as-drawn']),
              }
            : around),
        },
      };
    case 'over':
      return {
        tile: sea[0] ?? '',
        files: { 'over-1.svg': sea[1] ?? '', 'over-2.svg': sea[2] ?? '' },
        artwork: {
          over: ['over-1.svg', hand.chance(0.5) ? { file: 'over-2.svg', colour: '#7a4a21' } : 'over-2.svg'],
          ...lay,
          ...around,
        },
      };
    case 'lattice': {
      const a = [hand.length(22, 60), hand.length(-12, 12)];
      const b = [hand.length(-20, 20), hand.length(18, 50)];
      return {
        tile: sea[hand.whole(0, 2)] ?? '',
        artwork: { repeat: { a, b }, ...lay, ...around },
      };
    }
    case 'ground':
      return {
        tile: sample('tapered-cup/scales.svg').replace(
          /(<svg[^>]*>)/,
          '$1<rect width="45" height="30" fill="#f4efe2"/>',
        ),
        artwork: { ...hand.some(0.7, () => ({ ground: '#f4efe2' })), ...lay, ...around },
      };
  }
}

const moreWords = [...words, 'Änne & Zoë', 'WAVE\nlines\nthree', 'i', 'Quay 7, tea', 'AVATO'];

/** Many letterings and items, such as lists of names have. */
const motifsOf = (hand: Hand, height: number): object => ({
  ...hand.some(0.5, () => ({
    items: Array.from({ length: hand.whole(2, 7) }, () => ({
      file: hand.one(Object.keys(motifs)),
      across: hand.length(5, 40, 1),
      at: { turn: hand.mm(0, 1, 0.01), along: hand.length(0.1 * height, 0.9 * height, 1) },
      ...hand.some(0.3, () => ({ lay: hand.one(['rigid', 'even', 'conformal']) })),
      ...hand.some(0.3, () => ({ apart: hand.chance(0.6) })),
    })),
  })),
  lettering: Array.from({ length: hand.whole(1, 5) }, () => ({
    text: hand.one(moreWords),
    capHeight: hand.length(4, 20, 0.5),
    at: { turn: hand.mm(0, 1, 0.01), along: hand.length(0.1 * height, 0.9 * height, 1) },
    ...hand.some(0.4, () => ({ fit: hand.length(20, 120, 1) })),
    ...hand.some(0.3, () => ({ align: hand.one(['left', 'middle', 'right']) })),
    ...hand.some(0.2, () => ({ lineStep: hand.length(8, 24) })),
    ...hand.some(0.2, () => ({ direction: hand.one(['auto', 'ltr', 'rtl']) })),
    ...hand.some(0.3, () => ({
      backing: { grow: hand.length(0.5, 4), ...hand.some(0.5, () => ({ smooth: hand.length(0, 4) })) },
    })),
    ...hand.some(0.5, () => ({ lay: hand.one(['rigid', 'even', 'conformal']) })),
    ...hand.some(0.3, () => ({ apart: hand.chance(0.5) })),
    ...hand.some(0.3, () => ({ optional: true })),
  })),
});

const panels = (hand: Hand, isWhole: boolean): object => ({
  ...hand.some(0.6, () => ({ overlap: hand.length(0, 9) })),
  ...hand.some(0.6, () => ({ joints: hand.one(['repeats', 'least-art', [], [0.5], [0.2, 0.45, 0.8]]) })),
  ...hand.some(isWhole ? 0.4 : 0, () => ({ levels: hand.one([['40mm'], ['30mm', '55mm'], ['60mm']]) })),
});

const coat = (hand: Hand): object => ({
  name: 'resin',
  volume: hand.whole(2, 30),
  ...hand.some(0.5, () => ({ loss: hand.mm(0, 0.5, 0.05) })),
  ...hand.some(0.4, () => ({ covers: { from: hand.length(2, 20), to: hand.length(30, 60) } })),
  ...hand.some(0.3, () => ({ wait: 12, leastBatch: 20, price: 30 })),
});

/** A job of `wholeJob` with some of its keys put in place of others. */
export function widerJob(seed: number): Typed {
  const { tile: _, artwork: __, job: typed = {}, ...base } = wholeJob(seed);
  const { band, items, lettering, mask, gores, units, ...plain } = typed as Record<string, unknown>;
  const hand = new Hand(randomFrom(1_000_000 + seed), units === 'in' ? 'in' : 'mm');
  const inMm = units !== 'in';
  const isProfile = hand.chance(0.5);
  const blank = isProfile ? hand.one(blanks ?? []) : base.blank;
  const bends = 'wall' in blank && blank.wall !== undefined && blank.wall !== 'straight';
  const hasHandle = 'handle' in blank;
  const pieces = bends
    ? hand.one(hasHandle ? ['one', 'stacked'] : ['one', 'stacked', 'stacked', 'gores'])
    : 'one';
  const isGores = pieces === 'gores';
  const { artwork, ...drawn } = hand.chance(0.75) ? artOf(hand, pieces === 'one') : {};
  const drawings = [drawn.tile ?? '', ...Object.values(drawn.files ?? {})].join('');
  const { seam, collars, panels: ___, layers, edges, sheet, ...kept } = plain;
  const job = {
    units,
    ...kept,
    ...(seam && (artwork || !JSON.stringify(seam).includes('winding')) && !isGores ? { seam } : {}),
    ...(edges && artwork ? { edges } : {}),
    ...(sheet ? { sheet } : {}),
    ...(isProfile || !band ? {} : { band }),
    pieces,
    ...(isGores ? {} : hand.some(artwork ? 0.4 : 0.8, () => motifsOf(hand, isProfile ? 80 : 60))),
    ...(artwork ? hand.some(0.35, () => ({ layers: order(hand, drawings) })) : {}),
    ...(isGores
      ? {}
      : hand.some(0.25, () => ({
          panels: panels(hand, pieces === 'one'),
          ...hand.some(inMm ? 0.7 : 0, () => ({ sheet: hand.one(sheets ?? []) })),
        }))),
    ...hand.some(0.2, () => ({ coats: [coat(hand), coat(hand)] })),
    ...hand.some(inMm ? 0.2 : 0, () => ({ film: hand.one(films ?? []) })),
    ...hand.some(inMm ? 0.15 : 0, () => ({ cutter: hand.one(cutters ?? []) })),
    ...(artwork && pieces === 'one'
      ? hand.some(0.2, () => ({
          mask: { covers: hand.one(['foot', 'lip']), standOff: hand.length(1, 5), follows: ['artwork'] },
        }))
      : {}),
    ...(isGores
      ? {}
      : hand.some(0.2, () => ({
          collars: {
            at: [hand.length(15, 40), { along: hand.length(41, 60), edge: hand.one(['upper', 'lower']) }],
            width: hand.length(8, 25),
            overlap: hand.length(0, 12),
          },
        }))),
    ...hand.some(0.1, () => ({ printer: { measured: { across: '149.4mm', up: '150.15mm' } } })),
  };
  return {
    blank,
    job,
    files: { ...motifs, ...drawn.files },
    ...(artwork ? { artwork, tile: drawn.tile ?? '' } : {}),
  };
}
