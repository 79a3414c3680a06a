// What the job sheet tells of wraps and parts: a row each, and how panels are joined.
import type { Block } from '../../deliver/write-page.ts';
import { measuredLength, type Units } from '../../lengths/length.ts';
import { girthAt } from '../../unroll/flat-wall.ts';
import { outline, type Template, turnOfEdge } from '../../unroll/template.ts';
import type { Draft } from '../draft.ts';
import type { Part } from '../parts/part.ts';
import type { Levels } from '../plan/panel-places.ts';
import { type LevelPlace, levelLetters } from '../plan/panel-places.ts';
import type { SheetPiece } from './film-piece.ts';

/** Rows of drafts, `files` being the names of their cut files; a wrap that is not laid is a template of paper. */
export function piecesOfDrafts(
  drafts: readonly Draft[],
  files: readonly string[],
  units: Units,
  isLaid: boolean,
): readonly SheetPiece[] {
  const shown = (mm: number) => measuredLength(mm, units);
  return drafts.map(({ plan: { template, band }, mark, panel, level }, i) => {
    const { wall, band: onSheet } = template;
    const around = (along: number) => (panel ? widthAt(template, along) : girthAt(wall, along));
    const [foot, lip] = [around(onSheet.from), around(onSheet.to)];
    return {
      says: isLaid
        ? pieceName(mark, panel, level)
        : `${plainName(mark, panel, level)}, of paper, to try and to lay by`,
      ...(isLaid ? {} : { material: 'paper' as const }),
      file: files[i] ?? '',
      where: `${shown(band.from)} to ${shown(band.to)}`,
      size: panel
        ? `${shown(foot)} around at the foot edge, ${shown(lip)} at the lip edge, without overlap`
        : `girth ${shown(foot)} at the foot edge, ${shown(lip)} at the lip edge`,
      film: [{ outline: outline(template), count: 1 }],
    };
  });
}

/** How far a panel goes around at a height, without what lies past its joint, mm. */
function widthAt({ wall, seam }: Template, along: number): number {
  const [start, finish] = [turnOfEdge(wall, seam.start, along), turnOfEdge(wall, seam.finish, along)];
  return (finish - start) * girthAt(wall, along);
}

/** Rows of parts, `files` being the names of their cut files. */
export const piecesOfParts = (parts: readonly Part[], files: readonly string[]): readonly SheetPiece[] =>
  parts.flatMap(({ material, sheet }, i) => {
    if (!sheet) return [];
    const { outlines, ...told } = sheet;
    const film = outlines.map((border) => ({ outline: border, count: 1 }));
    return [{ ...told, file: files[i] ?? '', film, ...(material ? { material } : {}) }];
  });

const plainName = (mark: string, panel: Draft['panel'], level: LevelPlace): string =>
  mark === '' ? 'the plain wrap' : pieceName(mark, panel, level);

function pieceName(mark: string, panel: Draft['panel'], level: LevelPlace): string {
  if (mark === '') return 'the wrap';
  const { foot, lip } = levelLetters(level);
  const joints = [
    ...(panel?.left === undefined ? [] : [`joint ${panel.left} at its left`]),
    ...(panel?.right === undefined ? [] : [`joint ${panel.right} at its right`]),
    ...(foot === undefined ? [] : [`level joint ${foot} at its foot edge`]),
    ...(lip === undefined ? [] : [`level joint ${lip} at its lip edge`]),
  ];
  const name = panel ? `panel ${mark}` : `piece ${mark} from the foot`;
  return joints.length === 0 ? name : `${name}: ${joints.join(', ')}`;
}

/** How panels and levels are joined; common practice, no source. */
export function joiningBlocks(drafts: readonly Draft[], units: Units): Block[] {
  const [first] = drafts;
  if (!first) return [];
  const items = [
    ...(first.panel ? panelSteps(first.plan.template.overlap, units) : []),
    ...levelSteps(first.level.levels, units),
  ];
  return items.length === 0 ? [] : [{ kind: 'ticks', items }];
}

const panelSteps = (overlap: number, units: Units): readonly string[] => {
  const along =
    overlap > 0
      ? `let the right side of each lie over the left side of the next by ${measuredLength(overlap, units)}, up to the line on its guide`
      : 'bring their sides together edge to edge, with neither on top of the other';
  return [
    'lay the panels in the order of their letters, each joint on the one of the same letter',
    `hold the crosses above the lip and below the foot on one another; ${along}`,
    'lay a joint from its middle to the lip and to the foot, never from one end to the other',
  ];
};

function levelSteps({ at, overlap }: Levels, units: Units): readonly string[] {
  if (at.length === 0) return [];
  const how =
    overlap > 0
      ? `let the foot edge of each lie over the lip edge of the one below by ${measuredLength(overlap, units)}, down to the level joint of the same letter`
      : 'bring the foot edge of each down to the lip edge of the one below, at the level joint of the same letter';
  return [
    `lay the levels from the foot up, all the way around each before the next; ${how}`,
    'hold the crosses beside the level joint on one another, and lay it from its middle outwards',
  ];
}
