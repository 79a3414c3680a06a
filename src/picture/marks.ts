// Numbered marks on a picture: each rule has a shape of its own, so that colour is never the only sign.
import type { Box } from '../geometry/box.ts';
import { boxesMeet, grow } from '../geometry/box.ts';
import type { Point } from '../geometry/point.ts';
import type { PutWords } from './profile-ink.ts';
import { millimetres } from './rolled-path.ts';

/** A numbered place. */
export interface Mark {
  readonly number: number;
  readonly at: Point;
  readonly rule: string;
  /** Where the same is once more: marked smaller, without a number. */
  readonly again?: readonly Point[];
}

interface Look {
  readonly colour: string;
  /** Corners of the mark; 0 for a circle. */
  readonly corners: number;
  /** Turn of its first corner, as a share of a whole turn. */
  readonly turn: number;
}

const looks: Readonly<Record<string, Look>> = {
  'thin-film': { colour: '#b3402e', corners: 0, turn: 0 },
  'thin-gap': { colour: '#2f5f8c', corners: 4, turn: 0.125 },
  'small-piece': { colour: '#2a6f4e', corners: 4, turn: 0 },
  sharp: { colour: '#8a2f6b', corners: 3, turn: 0.75 },
  'does-not-meet': { colour: '#b3402e', corners: 0, turn: 0 },
  bends: { colour: '#8a2f6b', corners: 3, turn: 0.75 },
  // What was mended, by what it was.
  thickened: { colour: '#b3402e', corners: 0, turn: 0 },
  'gap-closed': { colour: '#2f5f8c', corners: 4, turn: 0.125 },
  'speck-dropped': { colour: '#2a6f4e', corners: 4, turn: 0 },
  'point-rounded': { colour: '#8a2f6b', corners: 3, turn: 0.75 },
};

/** All other rules: those of lines. */
const otherwise: Look = { colour: '#38434a', corners: 6, turn: 0 };

const lookOf = (rule: string): Look => looks[rule] ?? otherwise;

/** The outline of a rule's mark around a place. */
export function markText(rule: string, { x, y }: Point, radius: number, width: number): string {
  const { colour, corners, turn } = lookOf(rule);
  const pen = `fill="none" stroke="${colour}" stroke-width="${millimetres(width)}"`;
  if (corners === 0)
    return `<circle ${pen} cx="${millimetres(x)}" cy="${millimetres(y)}" r="${millimetres(radius)}"/>\n`;
  const points = Array.from({ length: corners }, (_, i) => {
    const angle = 2 * Math.PI * (turn + i / corners);
    return `${millimetres(x + radius * Math.cos(angle))} ${millimetres(y + radius * Math.sin(angle))}`;
  });
  return `<path ${pen} stroke-linejoin="round" d="M${points.join('L')}Z"/>\n`;
}

/** Eight ways from a mark to its number, the upper right first. */
const ways = [-0.125, -0.375, 0.125, 0.375, -0.25, 0, 0.25, 0.5].map((turn) => 2 * Math.PI * turn);

/** Most smaller marks of one number, and in all: past them a picture only grows. */
const mostAgain = 400;
const mostSmall = 3000;

/** Most marks that have a number: past them numbers only cover the art, and one another. */
export const mostNumbered = 120;

const againText = ({ again = [], rule }: Mark, em: number): readonly string[] =>
  again.slice(0, mostAgain).map((at) => markText(rule, at, 0.45 * em, 0.08 * em));

/**
 * Marks with their numbers beside them, each number where it covers no other, as near as there is room. Those past the
 * most that are numbered are small ones, as the copies of all are.
 */
export function marksText(marks: readonly Mark[], put: PutWords, em: number): string {
  const taken: Box[] = [];
  const small = marks
    .map((mark, i) => (i < mostNumbered ? mark : { ...mark, again: [mark.at, ...(mark.again ?? [])] }))
    .flatMap((mark) => againText(mark, em))
    .slice(0, mostSmall);
  const numbered = marks.slice(0, mostNumbered).map(({ number, at, rule }) => {
    const radius = 0.8 * em;
    const { colour } = lookOf(rule);
    const placed = placeNumber(String(number), at, radius, put, em, taken, colour);
    // Two side by side would be read as one number.
    taken.push(grow(placed.box, 0.5 * em));
    const middle = {
      x: (placed.box.minX + placed.box.maxX) / 2,
      y: (placed.box.minY + placed.box.maxY) / 2,
    };
    const far = Math.hypot(middle.x - at.x, middle.y - at.y);
    const leader =
      far > 2.5 * em
        ? `<path fill="none" stroke="${colour}" stroke-width="${millimetres(0.06 * em)}" d="M${millimetres(at.x)} ${millimetres(at.y)}L${millimetres(middle.x)} ${millimetres(middle.y)}"/>\n`
        : '';
    const { minX, minY, maxX, maxY } = placed.box;
    const room = 0.15 * em;
    const plate = `<path fill="#fff" fill-opacity=".8" d="M${millimetres(minX - room)} ${millimetres(minY - room)}H${millimetres(maxX + room)}V${millimetres(maxY + room)}H${millimetres(minX - room)}Z"/>\n`;
    return leader + markText(rule, at, radius, 0.12 * em) + plate + placed.text;
  });
  return small.join('') + numbered.join('');
}

function placeNumber(
  text: string,
  at: Point,
  radius: number,
  put: PutWords,
  em: number,
  taken: readonly Box[],
  fill: string,
): { readonly text: string; readonly box: Box } {
  const style = { size: em, fill, anchor: 'middle' as const };
  const try1 = (far: number, way: number) =>
    put(text, { x: at.x + far * Math.cos(way), y: at.y + far * Math.sin(way) + 0.35 * em }, style);
  for (let ring = 0; ring < 6; ring++) {
    const far = radius + (0.7 + 1.2 * ring) * em;
    for (const way of ways) {
      const placed = try1(far, way);
      if (!taken.some((box) => boxesMeet(box, placed.box))) return placed;
    }
  }
  return try1(radius + 0.7 * em, ways[0] ?? 0);
}
