// Marks of the guide: register crosses, ticks at the finished edges and at quarter turns, the scale check, the words.
import type { DrawWords } from '../drawing/words.ts';
import { shifted } from '../geometry/affine.ts';
import { boxCorners } from '../geometry/box.ts';
import { type Contour, polygon, polyline, type Shape } from '../geometry/contour.ts';
import { shapeArea, tightBox } from '../geometry/measure.ts';
import { add, type Point, scale } from '../geometry/point.ts';
import { levelAngle, toFlat } from '../unroll/flat-wall.ts';
import { edgePoint, type SideEdge, type Template, turnOfEdge } from '../unroll/template.ts';

/** Half the width of a register cross, mm. */
const crossArm = 3;

/** A tick's length, mm, and the clear space between it and what the blade cuts. */
export const tick = { length: 4, clear: 0.75 };

/** Size of the words, mm, and the distance of their lines. */
export const wordSize = 3.6;
const lineStep = 5.6;

/** Side of the two scale squares, mm: 25 mm and 1 in. */
const squares = [25, 25.4] as const;
const squareGap = 6;

/** The two strokes of a register cross. */
export const crossMark = ({ x, y }: Point): Contour[] => [
  polyline([
    { x: x - crossArm, y },
    { x: x + crossArm, y },
  ]),
  polyline([
    { x, y: y - crossArm },
    { x, y: y + crossArm },
  ]),
];

const upDirection = (template: Template, turn: number): Point => {
  const angle = levelAngle(template.wall, turn);
  return { x: Math.sin(angle), y: -Math.cos(angle) };
};

const ray = (from: Point, direction: Point, near: number, far: number): Contour =>
  polyline([add(from, scale(direction, near)), add(from, scale(direction, far))]);

/** Ticks outside the lip and foot edges of the piece at the quarter turns it covers. */
export function quarterTicks(template: Template, runOff: number): Contour[] {
  const { wall, piece } = template;
  const near = runOff + tick.clear;
  const covers = (turn: number, along: number) =>
    turn >= turnOfEdge(wall, template.left, along) - 1e-9 &&
    turn <= turnOfEdge(wall, template.right, along) + 1e-9;
  return [0, 0.25, 0.5, 0.75, 1].flatMap((turn) =>
    [
      { along: piece.to, sign: 1 },
      { along: piece.from, sign: -1 },
    ]
      .filter(({ along }) => covers(turn, along))
      .map(({ along, sign }) =>
        ray(
          toFlat(wall, { turn, along }),
          scale(upDirection(template, turn), sign),
          near,
          near + tick.length,
        ),
      ),
  );
}

/** The words `lip` and `foot`, each beside the middle tick of its edge. */
export function edgeWords(template: Template, runOff: number, words: DrawWords): (readonly Contour[])[] {
  const { wall, piece } = template;
  const away = runOff + tick.clear + tick.length / 2;
  return [
    { text: 'lip', along: piece.to + away },
    { text: 'foot', along: piece.from - away },
  ].map(({ text, along }) => {
    const { x, y } = toFlat(wall, { turn: 0.5, along });
    return shifted(words(text, wordSize), { x: x + 1.2, y: y + wordSize / 3 });
  });
}

/** The word of a place on the guide, in the middle of each of its outlines that has room for it. */
export function placeWords(
  { says, shapes }: { readonly says: string; readonly shapes: readonly Shape[] },
  words: DrawWords,
): (readonly Contour[])[] {
  const drawn = words(says, wordSize);
  const width = drawn.length > 0 ? tightBox(drawn).maxX : Infinity;
  return shapes.flatMap((shape) => {
    const box = tightBox(shape.contours);
    const height = box.maxY - box.minY;
    // A slanting strip fills little of its box: its mean width has to hold the word.
    if (height < wordSize || shapeArea(shape) / height < width) return [];
    const middle = { x: (box.minX + box.maxX - width) / 2, y: (box.minY + box.maxY) / 2 + wordSize / 3 };
    return [shifted(drawn, middle)];
  });
}

/** Ticks beside the piece where the finished edges leave it. */
export function edgeTicks(template: Template, runOff: number): Contour[] {
  const { wall, band } = template;
  const near = runOff + tick.clear;
  const sides: readonly { edge: SideEdge; sign: number }[] = [
    { edge: template.left, sign: -1 },
    { edge: template.right, sign: 1 },
  ];
  return [band.from, band.to].flatMap((along) =>
    sides.map(({ edge, sign }) => {
      const angle = levelAngle(wall, turnOfEdge(wall, edge, along));
      const level = { x: sign * Math.cos(angle), y: sign * Math.sin(angle) };
      return ray(edgePoint(wall, edge, along), level, near, near + tick.length);
    }),
  );
}

/** The two squares to measure before anything is cut: 25 mm, then 1 in. From the top left corner at the origin. */
export function scaleSquares(): Contour[] {
  let x = 0;
  return squares.map((side) => {
    const left = x;
    x += side + squareGap;
    return polygon(boxCorners({ minX: left, minY: 0, maxX: left + side, maxY: side }));
  });
}

const widthOf = (text: string, words: DrawWords): number => {
  const drawn = words(text, wordSize);
  return drawn.length > 0 ? tightBox(drawn).maxX : 0;
};

/** A line of words broken between words so that each part fits the width; a single long word stays whole. */
function brokenLines(text: string, words: DrawWords, width: number): string[] {
  if (widthOf(text, words) <= width) return [text];
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last === undefined || widthOf(longer, words) > width) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

/** The strip under the piece: scale squares with their sizes written in them, and the lines of words beside or below. */
export function noteStrip(
  notes: readonly string[],
  words: DrawWords,
  width: number,
): { readonly lines: readonly (readonly Contour[])[]; readonly height: number } {
  const labels = ['25 mm', '1 in'].map((text, i) =>
    shifted(words(text, wordSize), {
      x: 3 + i * (squares[0] + squareGap),
      y: squares[0] / 2 + wordSize / 3,
    }),
  );
  const besideX = squares[0] + squares[1] + 2 * squareGap;
  const longest = Math.max(0, ...notes.map((text) => widthOf(text, words)));
  const beside = besideX + longest <= width;
  const left = beside ? besideX : 0;
  const fitting = notes.flatMap((text) => brokenLines(text, words, width - left));
  const drawn = fitting.map((text) => words(text, wordSize));
  const top = (beside ? 0 : squares[1] + 2) + wordSize;
  const lines = drawn.map((line, i) => shifted(line, { x: left, y: top + i * lineStep }));
  const below = top + drawn.length * lineStep;
  return {
    lines: [...labels, ...lines].filter((line) => line.length > 0),
    height: Math.max(squares[1], below),
  };
}
