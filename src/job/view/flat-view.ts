// A written guide as lines to be shown on a screen: what it draws, group by group, and where the wall lies on it.
import { parsePathData } from '../../drawing/path-data.ts';
import { moveContour } from '../../geometry/affine.ts';
import { tightBox } from '../../geometry/measure.ts';
import { outline } from '../../unroll/template.ts';
import type { Written, WrittenPiece } from '../deliverables.ts';
import type { Draft } from '../draft.ts';
import type { Plan } from '../plan/plan.ts';
import type { FlatPlace } from './flat-place.ts';
import { betweenShapes } from './ink.ts';

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
  /** The path data of all its paths, parted by `betweenShapes`: none covers another. */
  readonly d: string;
}

/** One piece as it is written, or one panel of it. */
export interface FlatPiece {
  /** What its files' names have after the stem; empty for the only wrap. */
  readonly mark: string;
  /** Its place among the panels of its piece, from 0. */
  readonly beside: number;
  /** Where it lies on the wall; left out where places are not followed: on gores, and on what is cut apart. */
  readonly place?: FlatPlace;
  /** Whether it begins at turn 0 and whether it ends at turn 1, or at a line that winds about there; left out where no two ends meet. */
  readonly ends?: { readonly starts: boolean; readonly finishes: boolean; readonly winds?: true };
  readonly groups: readonly FlatGroup[];
  /** Of a job with a mask, on its only piece: the mask's edge as path data, and the colour of what is sprayed past it. */
  readonly around?: { readonly d: string; readonly sprayed: string };
  /** The cut piece's own box in the file, mm. */
  readonly box: {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  };
}

export interface FlatView {
  /** From the foot up; panels of one piece in the order of turns. */
  readonly pieces: readonly FlatPiece[];
}

type ViewedDraft = Pick<Draft, 'guide' | 'mark' | 'panel' | 'toFile' | 'plan'>;

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
    d: [...content.matchAll(/ d="([^"]*)"/g)].map(([, d = '']) => d).join(betweenShapes),
  };
}

/** How close together the heights are that lengths are known at, mm. */
const lengthStep = 0.5;

/** Heights of the bare wall and of the sheet; none where they are the same. */
function lengthsOf({ wall, band: { from, to }, lengths }: Plan): Pick<FlatPlace, 'lengths'> {
  if (wall.kind === 'straight') return {};
  const count = Math.ceil((to - from) / lengthStep);
  const places = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  return { lengths: places.map((along) => ({ along, on: lengths.toGrown(along) })) };
}

const pieceOf = ({ guide, mark, panel, toFile, plan }: ViewedDraft): FlatPiece => ({
  mark,
  beside: panel?.index ?? 0,
  place: {
    wall: plan.template.wall,
    toFile,
    band: plan.band,
    ...lengthsOf(plan),
    piece: plan.template.piece,
    left: plan.template.left,
    right: plan.template.right,
  },
  ...((panel?.whole ?? plan.template).seam.start.offset === 0
    ? {
        ends: {
          starts: !panel || panel.index === 0,
          finishes: !panel || panel.index === panel.count - 1,
          ...(plan.template.winding ? { winds: true as const } : {}),
        },
      }
    : {}),
  box: tightBox([moveContour(toFile, outline(plan.template))]),
  groups: groupsOf(guide),
});

const groupsOf = (guide: string): readonly FlatGroup[] =>
  [...guide.matchAll(groupPattern)].flatMap(([, attributes = '', content = '']) => {
    const group = groupOf(attributes, content);
    return group ? [group] : [];
  });

/** A written piece whose places on the wall are not followed. */
export function looseFlatPiece({ guide }: Pick<Written, 'guide'>, mark: string): FlatPiece {
  const groups = groupsOf(guide);
  const outlines = groups.filter(({ role }) => role === 'outline');
  const drawn = outlines.length > 0 ? outlines : groups;
  return { mark, beside: 0, box: tightBox(drawn.flatMap(({ d }) => parsePathData(d))), groups };
}

/** What is cut besides, with all that its guide draws in its box: others are put beside that, and a mask's own outline is only half of it. */
function partPiece(part: Pick<WrittenPiece, 'guide' | 'stem'>): FlatPiece {
  const piece = looseFlatPiece(part, part.stem);
  const drawn = piece.groups.filter(({ role }) => role !== 'register');
  return { ...piece, box: tightBox(drawn.flatMap(({ d }) => parsePathData(d))) };
}

/** What the guides of drafts show, and of what is cut besides. */
export const flatViewOf = (
  drafts: readonly ViewedDraft[],
  parts: readonly Pick<WrittenPiece, 'guide' | 'stem'>[] = [],
): FlatView => ({
  pieces: [...drafts.map(pieceOf), ...parts.map(partPiece)],
});
