// What the job sheet tells of wraps and parts: a row each, and how panels are joined.
import type { Block } from '../deliver/write-page.ts';
import { measuredLength } from '../lengths/length.ts';
import { girthAt } from '../unroll/flat-wall.ts';
import { outline } from '../unroll/template.ts';
import type { Draft } from './draft.ts';
import type { SheetPiece } from './job-sheet.ts';
import type { Part } from './part.ts';

const mm = (value: number): string => measuredLength(value, 'mm');

/** Rows of drafts, `files` being the names of their cut files. */
export const piecesOfDrafts = (drafts: readonly Draft[], files: readonly string[]): readonly SheetPiece[] =>
  drafts.map(({ plan: { template, band }, mark, panel }, i) => {
    const { wall, band: onSheet } = template;
    const [foot, lip] = [girthAt(wall, onSheet.from), girthAt(wall, onSheet.to)];
    return {
      says: pieceName(mark, panel),
      file: files[i] ?? '',
      where: `${mm(band.from)} to ${mm(band.to)}`,
      size: `girth ${mm(foot)} at the foot edge, ${mm(lip)} at the lip edge`,
      film: [{ outline: outline(template), count: 1 }],
    };
  });

export const piecesOfParts = (parts: readonly Part[]): readonly SheetPiece[] =>
  parts.flatMap(({ stem, material, sheet }) => {
    if (!sheet) return [];
    const { outlines, ...told } = sheet;
    const film = outlines.map((border) => ({ outline: border, count: 1 }));
    return [{ ...told, file: `${stem}.cut.svg`, film, ...(material ? { material } : {}) }];
  });

function pieceName(mark: string, panel: Draft['panel']): string {
  if (mark === '') return 'the wrap';
  if (!panel) return `piece ${mark} from the foot`;
  const joints = [
    ...(panel.left === undefined ? [] : [`joint ${panel.left} at its left`]),
    ...(panel.right === undefined ? [] : [`joint ${panel.right} at its right`]),
  ];
  return `panel ${mark}: ${joints.join(', ')}`;
}

/** How panels are joined; common practice, no source. */
export function joiningBlocks(drafts: readonly Draft[]): Block[] {
  const [first] = drafts;
  if (!first?.panel) return [];
  const { overlap } = first.plan.template;
  const along =
    overlap > 0
      ? `let the right side of each lie over the left side of the next by ${mm(overlap)}, up to the line on its guide`
      : 'bring their sides together edge to edge, with neither on top of the other';
  return [
    {
      kind: 'ticks',
      items: [
        'lay the panels in the order of their letters, each joint on the one of the same letter',
        `hold the crosses above the lip and below the foot on one another; ${along}`,
        'lay a joint from its middle to the lip and to the foot, never from one end to the other',
      ],
    },
  ];
}
