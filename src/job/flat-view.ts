// A written guide as lines to be shown on a screen: what it draws, group by group, and where the wall lies on it.
import { edgePoint, templateBox } from '../unroll/template.ts';
import type { Draft } from './draft.ts';
import type { FlatPlace } from './flat-place.ts';

/** One group of a guide. */
export interface FlatGroup {
  readonly role: string;
  /** The layer's name, for artwork. */
  readonly layer?: string;
  readonly colour: string;
  /** Whether its areas are filled; lines are drawn all the same, but for words. */
  readonly filled: boolean;
  readonly isWords: boolean;
  /** Dash and gap, mm; empty for a whole line. */
  readonly dash: readonly number[];
  /** The path data of all its paths. */
  readonly d: string;
}

/** One piece as it is written. */
export interface FlatPiece extends FlatPlace {
  readonly groups: readonly FlatGroup[];
  /** The cut piece's own box in the file, mm. */
  readonly box: {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  };
}

export interface FlatView {
  /** From the foot up. */
  readonly pieces: readonly FlatPiece[];
}

/** Groups as `writeSvg` writes them: their curves are handed on as they stand, for reading them takes longer than all else. */
const groupPattern = /<g ([^>]*)>\n([\s\S]*?)<\/g>/g;

const attribute = (text: string, name: string): string | undefined =>
  new RegExp(`(?:^| )${name}="([^"]*)"`).exec(text)?.[1];

function groupOf(attributes: string, content: string): FlatGroup | undefined {
  const role = attribute(attributes, 'data-role');
  // Words and squares beside the piece are for paper; on a screen the page tells what they tell.
  if (role === undefined || attribute(attributes, 'data-apart') !== undefined) return undefined;
  const layer = attribute(attributes, 'data-layer');
  const fill = attribute(attributes, 'fill') ?? 'none';
  const stroke = attribute(attributes, 'stroke');
  const dash = attribute(attributes, 'stroke-dasharray');
  return {
    role,
    ...(layer === undefined ? {} : { layer }),
    colour: stroke ?? fill,
    filled: fill !== 'none',
    isWords: stroke === undefined,
    dash: dash === undefined ? [] : dash.split(' ').map(Number),
    d: [...content.matchAll(/ d="([^"]*)"/g)].map(([, d = '']) => d).join(''),
  };
}

/** Where the seam starts at the foot of the finished band, as the guide says. */
function seamStart(guide: string): { readonly x: number; readonly y: number } {
  const [, x, y] = /id="seam-start" d="M(\S+) ([^LZ\s]+)/.exec(guide) ?? [];
  if (x === undefined || y === undefined) throw new Error('a guide without seam-start');
  return { x: Number(x), y: Number(y) };
}

function pieceOf({ guide, plan: { template } }: Pick<Draft, 'guide' | 'plan'>): FlatPiece {
  const start = seamStart(guide);
  const there = edgePoint(template.wall, template.seam.start, template.band.from);
  const origin = { x: start.x - there.x, y: start.y - there.y };
  const box = templateBox(template);
  return {
    wall: template.wall,
    origin,
    band: template.band,
    piece: template.piece,
    box: {
      minX: box.minX + origin.x,
      minY: box.minY + origin.y,
      maxX: box.maxX + origin.x,
      maxY: box.maxY + origin.y,
    },
    groups: [...guide.matchAll(groupPattern)].flatMap(([, attributes = '', content = '']) => {
      const group = groupOf(attributes, content);
      return group ? [group] : [];
    }),
  };
}

/** What the guides of drafts show. */
export const flatViewOf = (drafts: readonly Pick<Draft, 'guide' | 'plan'>[]): FlatView => ({
  pieces: drafts.map(pieceOf),
});
