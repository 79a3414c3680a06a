// Jobs such as makers give, put together at random from everything that the job file knows: the same for the same seed.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { dotTile, leafTile, type Typed } from '../job/a-job.ts';
import { pick, type Random, randomFrom } from './mutate.ts';

const samples = join(import.meta.dirname, '../../samples');
export const sample = (file: string): string => readFileSync(join(samples, file), 'utf8');

/** Two colours that cross the borders, of which one lies over the other. */
const twoColours = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
<path d="M-6 15Q0 6 6 15Q0 24 -6 15ZM34 15Q40 6 46 15Q40 24 34 15Z" fill="#17566b"/><path d="M14 6C20 2 26 8 22 14C18 12 12 12 14 6Z" fill="#d4532f"/>
<circle cx="20" cy="12" r="4" fill="#17566b"/></svg>`;
/** Level stripes that go on around for ever, and a slanting net of pen lines. */
const stripes = `<svg xmlns="http://www.w3.org/2000/svg" width="24mm" height="16mm" viewBox="0 0 24 16"><path d="M-1 3H25V6H-1ZM-1 11H25V12.5H-1Z" fill="#223322"/></svg>`;
const net = `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><path d="M-2 -2L22 22M22 -2L-2 22" fill="none" stroke="#334455" stroke-width="1.6"/></svg>`;

/** Tiles, each with the size of its drawing, mm. */
const tiles: readonly { readonly text: string; readonly across: number; readonly up: number }[] = [
  { text: twoColours, across: 40, up: 30 },
  { text: stripes, across: 24, up: 16 },
  { text: net, across: 20, up: 20 },
  { text: leafTile(30, 24), across: 30, up: 24 },
  { text: leafTile(48, 36), across: 48, up: 36 },
  { text: dotTile(26, 18), across: 26, up: 18 },
  { text: sample('tapered-cup/scales.svg'), across: 45, up: 30 },
  { text: sample('pot/terns.svg'), across: 56, up: 60 },
  { text: sample('canister/ropes.svg'), across: 44.45, up: 30.1625 },
];
export const motifs: Readonly<Record<string, string>> = {
  'dot.svg': dotTile(30, 30),
  'leaf.svg': leafTile(40, 30),
  'two.svg': twoColours,
  'kelp.svg': sample('kelp-mask/kelp.svg'),
};

/** Draws numbers, choices and lengths as they are typed in a file of mm or of inches. */
export class Hand {
  readonly #random: Random;
  readonly #units: 'mm' | 'in';
  constructor(random: Random, units: 'mm' | 'in') {
    this.#random = random;
    this.#units = units;
  }
  chance = (share: number): boolean => this.#random() < share;
  one = <T>(from: readonly T[]): T => pick(this.#random, from);
  whole = (from: number, to: number): number => Math.floor(from + this.#random() * (to - from + 1));
  /** Between two mm, as finely as a maker reads. */
  mm = (from: number, to: number, step = 0.1): number =>
    Number((Math.round((from + this.#random() * (to - from)) / step) * step).toFixed(4));
  /** A length of so many mm as it is typed: bare, with its unit, or in eighths of an inch. */
  typed = (mm: number): number | string => {
    if (this.chance(0.1)) return `${mm}mm`;
    if (this.#units === 'mm') return mm;
    const eighths = Math.round((mm / 25.4) * 8);
    if (eighths > 8 && this.chance(0.3)) return `${Math.floor(eighths / 8)} ${eighths % 8}/8in`;
    return Number((mm / 25.4).toFixed(4));
  };
  length = (from: number, to: number, step?: number): number | string => this.typed(this.mm(from, to, step));
  /** The keys of `keys` that chance keeps. */
  some = (share: number, keys: () => object): object => (this.chance(share) ? keys() : {});
}

/** A vessel with its height and its radii about the middle, mm. */
interface Vessel {
  readonly blank: object;
  readonly height: number;
  readonly across: number;
  readonly bends: boolean;
}

function vesselOf(hand: Hand): Vessel {
  const height = hand.mm(40, 190, 1);
  const across = hand.mm(45, 130, 0.5);
  const kind = hand.one(['cylinder', 'frustum', 'frustum', 'bowl', 'stepped', 'barrel', 'bell'] as const);
  const ends = {
    cylinder: [across, across],
    frustum: [across, across * hand.mm(0.7, 1.4, 0.01)],
    bowl: [across, across + height * hand.mm(0.8, 2.4, 0.1)],
    stepped: [across, across * hand.mm(0.8, 1.3, 0.01)],
    barrel: [across, across],
    bell: [across, across * hand.mm(1.05, 1.3, 0.01)],
  }[kind];
  const [foot = across, lip = across] = ends;
  const at = (share: number, factor: number) => ({
    height: hand.typed(Number((height * share).toFixed(2))),
    across: hand.typed(Number(((foot + (lip - foot) * share) * factor).toFixed(2))),
  });
  const middle =
    kind === 'stepped'
      ? [at(hand.mm(0.2, 0.4, 0.01), 1), at(hand.mm(0.5, 0.7, 0.01), hand.mm(1, 1.12, 0.01))]
      : kind === 'barrel'
        ? [at(0.25, 1.08), at(0.5, 1.11), at(0.75, 1.08)]
        : kind === 'bell'
          ? [at(0.3, 0.97), at(0.65, 0.96)]
          : [];
  const end = (share: number, mm: number) => ({
    height: hand.typed(share * height),
    ...(hand.chance(0.5)
      ? { across: hand.typed(Number(mm.toFixed(1))) }
      : { girth: hand.typed(Number((Math.PI * mm).toFixed(1))) }),
  });
  const wall = kind === 'stepped' ? 'stepped' : kind === 'barrel' || kind === 'bell' ? 'smooth' : undefined;
  const blank = {
    name: `a ${kind}`,
    ...hand.some(0.7, () => ({ use: 'other' })),
    ...(wall ? { wall } : {}),
    stations: [end(0, foot), ...middle, end(1, lip)],
    ...hand.some(0.5, () => ({ footRound: hand.length(1, 8) })),
    ...hand.some(0.4, () => ({ lipRound: hand.length(0.5, 3) })),
    ...hand.some(0.2, () => ({ handle: { spans: hand.length(20, 70), keepOff: hand.length(0, 8) } })),
    ...hand.some(0.1, () => ({
      keepOut: [{ what: 'weld line', turn: { from: 0.98, to: 0.02 } }],
    })),
    ...hand.some(0.1, () => ({ reading: hand.length(0.1, 1) })),
    ...hand.some(0.1, () => ({ tape: hand.length(0.1, 0.3) })),
    ...hand.some(0.1, () => ({ fits: [{ foot: hand.length(-2, 2), lip: hand.length(-2, 2), climb: 0 }] })),
  };
  return { blank, height, across: (foot + lip) / 2, bends: wall !== undefined };
}

function seamOf(hand: Hand): object {
  const style = hand.one(['overlap', 'overlap', 'butt', 'cut-through', 'strip', 'winding']);
  if (style === 'butt') return { style };
  if (style === 'strip') return { style, ...hand.some(0.6, () => ({ strip: hand.length(4, 20) })) };
  return {
    style,
    overlap: hand.length(style === 'cut-through' ? 2 : 0, hand.chance(0.15) ? 40 : 14),
    ...(style === 'overlap' ? hand.some(0.3, () => ({ top: hand.one(['start', 'finish']) })) : {}),
    ...hand.some(0.2, () => ({ hold: hand.length(1, 5) })),
  };
}

function artworkOf(hand: Hand, tile: { readonly across: number; readonly up: number }): object {
  const { across, up } = tile;
  const repeat = hand.one([
    {},
    {},
    { across: hand.typed(across), up: hand.typed(up), drop: hand.typed(up / 2) },
    { across: hand.typed(across), up: hand.typed(up), shift: hand.typed(across / 2) },
    { drop: hand.typed(Number((up / 3).toFixed(3))) },
  ]);
  return {
    ...(Object.keys(repeat).length > 0 ? { repeat } : {}),
    ...hand.some(0.7, () => ({ lay: hand.one(['even', 'conformal', 'rigid']) })),
    ...hand.some(0.4, () => ({ around: hand.whole(1, hand.chance(0.1) ? 60 : 14) })),
    ...hand.some(0.2, () => ({ scale: 'across' })),
    ...hand.some(0.2, () => ({ seamAt: hand.chance(0.5) ? 'gaps' : hand.length(0, across) })),
    ...hand.some(0.1, () => ({ mend: true })),
    ...hand.some(0.1, () => ({ together: hand.length(0.5, 4) })),
  };
}

export const words = ['Pebble', 'Ada', 'Tern & Kelp', '1887', 'to the\nlighthouse', 'fjord', 'Ö'];

function motifsOf(hand: Hand, { height }: Vessel, hasArt: boolean): object {
  const at = () => ({ turn: hand.mm(0, 1, 0.01), along: hand.length(0.1 * height, 0.9 * height, 1) });
  const common = () => ({
    ...hand.some(0.5, () => ({ lay: hand.one(['rigid', 'even', 'conformal']) })),
    ...hand.some(0.2, () => ({ apart: hand.chance(0.5) })),
    ...(hasArt ? hand.some(0.4, () => ({ clear: hand.length(0.5, 4) })) : {}),
  });
  const item = () => ({
    file: hand.one(Object.keys(motifs)),
    across: hand.length(8, 60, 1),
    at: at(),
    ...common(),
  });
  const lettering = () => ({
    text: hand.one(words),
    ...(hand.chance(0.8)
      ? { capHeight: hand.length(4, 22, 0.5), ...hand.some(0.4, () => ({ fit: hand.length(30, 120, 1) })) }
      : { fit: hand.length(30, 120, 1) }),
    at: at(),
    ...hand.some(0.3, () => ({ spacing: hand.length(-0.5, 2) })),
    ...hand.some(0.3, () => ({ backing: { grow: hand.length(1, 4) } })),
    ...common(),
  });
  return {
    ...hand.some(0.7, () => ({ items: Array.from({ length: hand.whole(1, 3) }, item) })),
    ...hand.some(0.6, () => ({ lettering: Array.from({ length: hand.whole(1, 2) }, lettering) })),
  };
}

function layersOf(hand: Hand): object {
  return {
    ...hand.some(0.6, () => ({ style: hand.one(['stacked', 'knocked-out']) })),
    ...hand.some(0.6, () => ({ spread: hand.length(-0.4, 0.6) })),
    ...hand.some(0.2, () => ({ underlay: { choke: hand.length(0, 0.5) } })),
    ...hand.some(0.2, () => ({ backing: { grow: hand.length(0.5, 3), smooth: hand.length(0, 4) } })),
    ...hand.some(0.3, () => ({ files: 'each' })),
  };
}

function filmOf(hand: Hand): object {
  return {
    thickness: hand.typed(hand.one([0, 0.05, 0.08, 0.1, 0.25])),
    ...hand.some(0.4, () => ({ stretch: hand.mm(0, 0.05, 0.001) })),
    ...hand.some(0.2, () => ({ gather: hand.mm(0, 0.02, 0.001) })),
    ...hand.some(0.3, () => ({ minWidth: hand.length(0.3, 2), minPiece: hand.mm(0, 8) })),
    ...hand.some(0.1, () => ({ measured: { laid: hand.typed(hand.mm(198, 203)) } })),
    ...hand.some(0.1, () => ({ use: 'mask' })),
    ...hand.some(0.1, () => ({ grain: hand.one(['across', 'up']) })),
  };
}

const mask = (hand: Hand): object => ({
  covers: hand.one(['foot', 'lip']),
  standOff: hand.length(1, 5),
  smooth: hand.length(0, 6),
  ...hand.some(0.4, () => ({ window: { grow: hand.length(-0.8, 0.5) } })),
});

const sheet = (hand: Hand): object => ({
  across: hand.length(120, 620, 10),
  ...hand.some(0.8, () => ({ up: hand.length(120, 900, 10) })),
  margin: hand.length(0, 10, 1),
  ...hand.some(0.1, () => ({ mirror: true })),
});

const cutter = (hand: Hand): object => ({
  ...hand.some(0.5, () => ({ knifeOffset: '0.25mm', ...hand.some(0.5, () => ({ compensate: true })) })),
  ...hand.some(0.4, () => ({ measured: { across: `${hand.mm(149.2, 150.8)}mm`, up: '150mm' } })),
  ...hand.some(0.3, () => ({ marks: hand.one(['crosses', 'corners']) })),
});

/** A coat by its thickness or by what is poured. */
const coat = (hand: Hand, i: number): object => ({
  name: `coat ${i + 1}`,
  ...(hand.chance(0.7) ? { thickness: hand.typed(hand.mm(0.05, 1.2, 0.05)) } : { volume: hand.whole(2, 25) }),
  ...hand.some(0.3, () => ({ over: true })),
});

/** One job with its vessel and its files. */
export function wholeJob(seed: number): Typed {
  const random = randomFrom(seed);
  const units = random() < 0.25 ? 'in' : 'mm';
  const hand = new Hand(random, units);
  const vessel = vesselOf(hand);
  const { height, bends } = vessel;
  const hasArt = hand.chance(0.7);
  const tile = hand.one(tiles);
  const pieces = hand.chance(bends ? 0.7 : 0.1) ? hand.one(['stacked', 'gores'] as const) : 'one';
  const band = () => {
    const from = hand.mm(2, 0.6 * height, 0.5);
    return {
      from: hand.typed(from),
      to: hand.typed(hand.mm(from + hand.one([1, 5, 20]), Math.max(from + 20, 0.97 * height), 0.5)),
    };
  };
  const hasMotifs = hand.chance(hasArt ? 0.3 : 0.8);
  const motifKeys = hasMotifs ? motifsOf(hand, vessel, hasArt) : {};
  const job = {
    units,
    ...hand.some(0.4, () => ({ band: band() })),
    ...hand.some(0.5, () => ({
      coats: Array.from({ length: hand.whole(1, 3) }, (_, i) => coat(hand, i)),
    })),
    ...hand.some(0.7, () => ({ film: filmOf(hand) })),
    ...(pieces === 'one' ? {} : { pieces }),
    ...(pieces === 'gores' ? hand.some(0.5, () => ({ gores: hand.whole(4, 16) })) : {}),
    ...hand.some(pieces === 'gores' ? 0.3 : 0.7, () => ({ seam: seamOf(hand) })),
    ...hand.some(0.5, () => ({ trim: { lip: hand.length(0, 6), foot: hand.length(0, 6) } })),
    ...(hasArt ? hand.some(0.4, () => ({ edges: hand.one(['straight', 'whole-rows', 'fade']) })) : {}),
    ...(hasArt ? hand.some(0.25, () => ({ layers: layersOf(hand) })) : {}),
    ...motifKeys,
    ...hand.some(hasMotifs ? 0.3 : 0.03, () => ({ mask: mask(hand) })),
    ...hand.some(0.1, () => ({ relief: { every: hand.length(15, 50), clear: hand.length(0.3, 2) } })),
    ...hand.some(0.05, () => ({ stencil: {}, film: { use: 'mask' } })),
    ...(pieces === 'gores' ? {} : hand.some(0.1, () => ({ collars: {} }))),
    ...hand.some(0.25, () => ({
      sheet: sheet(hand),
      ...hand.some(0.3, () => ({ batch: hand.whole(2, 4) })),
    })),
    ...(pieces === 'gores'
      ? {}
      : hand.some(0.08, () => ({ panels: { joints: [0.31, 0.66], overlap: hand.length(0, 8) } }))),
    ...hand.some(0.12, () => ({ cutter: cutter(hand) })),
    ...hand.some(0.05, () => ({ shown: 'upside-down' })),
  };
  const blank = { units, ...vessel.blank };
  return {
    blank,
    job,
    files: motifs,
    ...(hasArt ? { tile: tile.text, artwork: artworkOf(hand, tile) } : {}),
  };
}
