// Marks of the guide: register crosses, ticks at the finished edges and at quarter turns, the words beside them.
import type { DrawWords } from '../../drawing/words.ts';
import { compose, moveContour, rotation, shifted, translation } from '../../geometry/affine.ts';
import { type Contour, polyline, type Shape } from '../../geometry/contour.ts';
import { shapeArea, tightBox } from '../../geometry/measure.ts';
import { add, type Point, scale } from '../../geometry/point.ts';
import { levelAngle, toFlat } from '../../unroll/flat-wall.ts';
import { edgePoint, type SideEdge, type Template, turnOfEdge } from '../../unroll/template.ts';

/** Half the width of a register cross, mm. */
export const crossArm = 3;

/** A tick's length, mm, and the clear space between it and what the blade cuts. */
export const tick = { length: 4, clear: 0.75 };

/** Size of the words, mm. */
export const wordSize = 3.6;

/** Height of a capital as a share of the word size: fonts are near 0.7. */
export const capital = 0.7;

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
  const { wall, piece, left, right } = template;
  const away = runOff + tick.clear + tick.length / 2;
  return [
    { text: 'lip', along: piece.to + away },
    { text: 'foot', along: piece.from - away },
  ].map(({ text, along }) => {
    const { x, y } = toFlat(wall, { turn: (left.turn + right.turn) / 2, along });
    return shifted(words(text, wordSize), { x: x + 1.2, y: y + wordSize / 3 });
  });
}

/** Words up the wall beside the middle of a side of the piece; none where the side is shorter than they are. */
export function besideWords(
  template: Template,
  side: 'left' | 'right',
  text: string,
  runOff: number,
  words: DrawWords,
): readonly Contour[] {
  const { wall, piece } = template;
  const drawn = words(text, wordSize);
  if (drawn.length === 0) return [];
  const width = tightBox(drawn).maxX;
  if (width > piece.to - piece.from) return [];
  const away = (side === 'left' ? -1 : 1) * (runOff + tick.clear + tick.length / 2 + wordSize / 2);
  const edge = template[side];
  const along = (piece.from + piece.to) / 2;
  const at = { ...edge, offset: edge.offset + away };
  const { x, y } = edgePoint(wall, at, along);
  const angle = levelAngle(wall, turnOfEdge(wall, at, along)) - Math.PI / 2;
  return shifted(drawn, { x: -width / 2, y: wordSize / 3 }).map((contour) =>
    moveContour(compose(rotation(angle), translation(x, y)), contour),
  );
}

/** The middle of a word, and by how much it is turned, radians, y down. */
export interface PlaceOfWord extends Point {
  readonly angle: number;
}

/** A place outlined on the guide, with the word to write in it, in the sheet's own frame. */
export interface NotedPlace {
  readonly says: string;
  readonly shapes: readonly (Shape & { readonly id?: string })[];
  /** Where the middle of the word is, if anywhere; left out, the middle of each outline that has room for it. */
  readonly wordsAt?: readonly PlaceOfWord[];
}

/** More names than this make the list of line meanings too long. */
const mostNames = 2;

/** What the outline of noted places means: their own names, for a word may have no room at the outline itself. */
export function notedMeaning(noted: readonly Pick<NotedPlace, 'says'>[]): string {
  const names = [...new Set(noted.map(({ says }) => says))];
  return names.length <= mostNames ? names.join(', ') : 'places to mind';
}

/** The words of a place on the guide. */
export function placeWords({ says, shapes, wordsAt }: NotedPlace, words: DrawWords): (readonly Contour[])[] {
  const drawn = words(says, wordSize);
  if (drawn.length === 0) return [];
  const width = tightBox(drawn).maxX;
  const middles = wordsAt ?? shapes.flatMap((shape) => middleWithRoom(shape, width));
  const centred = shifted(drawn, { x: -width / 2, y: wordSize / 3 });
  return middles.map(({ x, y, angle }) =>
    centred.map((contour) => moveContour(compose(rotation(angle), translation(x, y)), contour)),
  );
}

function middleWithRoom(shape: Shape, width: number): readonly PlaceOfWord[] {
  const { minX, minY, maxX, maxY } = tightBox(shape.contours);
  const height = maxY - minY;
  // A slanting strip fills little of its box: its mean width has to hold the word.
  if (height < wordSize || shapeArea(shape) / height < width) return [];
  return [{ x: (minX + maxX) / 2, y: (minY + maxY) / 2, angle: 0 }];
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
