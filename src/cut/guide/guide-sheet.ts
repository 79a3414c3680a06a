// The sheet that a cut drawing and its guide share: pieces and marks on it, squares and words under them on the guide.
import { type Drawing, type DrawnGroup, shiftedGroups } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import type { Box } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';
import { type LineMeaning, noteStrip } from './note-strip.ts';

export interface GuideSheetOptions {
  /** What the blade follows. All groups are in one frame of the caller's, mm, y down. */
  readonly blade: readonly DrawnGroup[];
  /** What the guide shows beside it. */
  readonly guide: readonly DrawnGroup[];
  /** The part of that frame which is the sheet, room for marks in it. */
  readonly room: Box;
  /** Bare border beside and below the strip of words, mm. */
  readonly margin: number;
  readonly notes: readonly string[];
  /** What each kind of line means here; those of which there are none are left out. */
  readonly meanings: readonly LineMeaning[];
  readonly words: DrawWords;
}

export interface GuideSheet {
  readonly cut: Drawing;
  readonly guide: Drawing;
  /** Where the caller's origin lies in both, mm. */
  readonly origin: Point;
}

/** Both drawings of a sheet: the cut one as large as its room, the guide with the strip of words below. */
export function guideSheet({ blade, guide, room, margin, words, ...said }: GuideSheetOptions): GuideSheet {
  const [width, height] = [room.maxX - room.minX, room.maxY - room.minY];
  const origin = { x: -room.minX, y: -room.minY };
  const lines = [...blade, ...guide].filter(({ paths }) => paths.length > 0);
  const strip = noteStrip({
    notes: said.notes,
    meanings: said.meanings.filter(({ role }) => lines.some((group) => role === meaningRole(group))),
    words,
    room: width - 2 * margin,
  });
  const cut = shiftedGroups(blade, origin);
  return {
    cut: { width, height, groups: cut },
    guide: {
      width: Math.max(width, strip.width + 2 * margin),
      height: height + strip.height + margin,
      groups: [
        ...cut,
        ...shiftedGroups(guide, origin),
        ...shiftedGroups(strip.groups, { x: margin, y: height }),
      ],
    },
    origin,
  };
}

/** Notes that are words need no meaning told. */
const meaningRole = ({ role, lines }: DrawnGroup): DrawnGroup['role'] | undefined =>
  role === 'note' && !lines ? undefined : role;
