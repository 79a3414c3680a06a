// The words and lines on a collar: quarter turns, plumb lines, where the ends meet, which edge is level.
import type { DrawWords } from '../../drawing/words.ts';
import { type Contour, polyline } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { girthAt, radiusAt, toFlat } from '../../unroll/flat-wall.ts';
import { type SideEdge, turnOfEdge } from '../../unroll/template.ts';
import { bentWords } from '../guide/bent-words.ts';
import { capital, wordSize } from '../guide/marks.ts';
import type { Collar } from './collar.ts';

/** Room that words keep from lines, mm. */
const besideLine = 1.4;

/** Word sizes that a strip is wide: three rows and the room between them. */
const rows = 5;

export interface CollarWords {
  /** Which collar it is, such as `collar 1 of 2`. */
  readonly name: string;
  /** Where the level line runs, such as `6.0 mm up the wall`. */
  readonly place: string;
}

/** Lines up the wall right across the strip at the quarter turns: a pencil along them is plumb. */
export function plumbLines({ template }: Collar): Contour[] {
  const { wall, piece } = template;
  return [0.25, 0.5, 0.75].map((turn) =>
    polyline([toFlat(wall, { turn, along: piece.from }), toFlat(wall, { turn, along: piece.to })]),
  );
}

type Row = 'level' | 'middle' | 'other';

interface Label {
  readonly text: string;
  readonly row: Row;
  /** The line it stands beside. */
  readonly beside: SideEdge;
  /** `right` of the line, or `left` of it. */
  readonly side: 'right' | 'left';
  /** Room it has, mm. */
  readonly room: number;
}

/** All words of a collar, bent along it so that they stand upright on the wall. */
export function collarWords(collar: Collar, said: CollarWords, words: DrawWords): (readonly Contour[])[] {
  return labels(collar, said)
    .map((label) => placed(label, collar, words))
    .filter((contours) => contours.length > 0);
}

function labels(collar: Collar, { name, place }: CollarWords): Label[] {
  const { template, clear, edge } = collar;
  const { wall, piece, seam, overlap } = template;
  const least = 2 * Math.PI * Math.min(radiusAt(wall, piece.from), radiusAt(wall, piece.to));
  const room = least / 4 - (clear ?? 0) - 2 * besideLine;
  const quarter = (turn: number): SideEdge => ({ turn, offset: 0 });
  const right = (text: string, row: Row, beside: SideEdge): Label => ({
    text,
    row,
    beside,
    side: 'right',
    room,
  });
  const meets: Label =
    clear === undefined
      ? { text: 'MEET HERE', row: 'level', beside: seam.finish, side: 'left', room }
      : { text: 'handle', row: 'level', beside: seam.finish, side: 'left', room };
  const tab: Label[] =
    overlap >= 4 * besideLine
      ? [{ text: 'tab', row: 'middle', beside: seam.finish, side: 'right', room: overlap - 2 * besideLine }]
      : [];
  return [
    right(clear === undefined ? 'seam' : 'handle', 'middle', seam.start),
    right('quarter', 'middle', quarter(0.25)),
    right('front', 'middle', quarter(0.5)),
    right('three quarters', 'middle', quarter(0.75)),
    right('this edge level', 'level', seam.start),
    right(place, 'level', quarter(0.25)),
    right(name, 'level', quarter(0.5)),
    right(edge === 'lower' ? 'lip side' : 'foot side', 'other', seam.start),
    right(edge === 'lower' ? 'lip side' : 'foot side', 'other', quarter(0.5)),
    meets,
    ...tab,
  ];
}

function placed({ text, row, beside, side, room }: Label, collar: Collar, words: DrawWords): Contour[] {
  const { wall, piece } = collar.template;
  const most = Math.min(wordSize, (piece.to - piece.from) / rows);
  const full = words(text, most);
  if (full.length === 0) return [];
  const em = most * Math.min(1, room / tightBox(full).maxX);
  const drawn = words(text, em);
  const along = baseline(row, collar, em);
  const from = side === 'right' ? besideLine : -besideLine - tightBox(drawn).maxX;
  const turn = turnOfEdge(wall, { ...beside, offset: beside.offset + from }, along);
  const girth = girthAt(wall, along);
  return bentWords(drawn, (p) => toFlat(wall, { turn: turn + p.x / girth, along: along - p.y }));
}

/** Where the words of a row stand, mm up the wall. */
function baseline(row: Row, { template, edge }: Collar, em: number): number {
  const { from, to } = template.piece;
  const high = capital * em;
  const middle = (from + to - high) / 2;
  const room = (to - from) / 12;
  if (row === 'middle') return middle;
  return (row === 'level') === (edge === 'lower') ? from + room : to - room - high;
}
