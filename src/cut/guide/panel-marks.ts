// The marks by which panels are joined: crosses on the joint, its letter on both sides, and where the panel before ends.
import type { DrawnPath } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { compose, moveContour, rotation, translation } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { levelAngle, toFlat } from '../../unroll/flat-wall.ts';
import { edgeLine, finishedEdge, type SideEdge, type Template, turnOfEdge } from '../../unroll/template.ts';
import { crossArm, crossMark, tick, wordSize } from './marks.ts';

/**
 * The joints of a panel, by the letter that both of its sides carry; none at the outer ends of the template. What lies
 * at the left goes on over the panel by its overlap, and what lies at the foot edge goes on under it.
 */
export interface PanelJoints {
  readonly left?: { readonly letter: string; readonly overlap: number };
  readonly right?: { readonly letter: string };
  readonly foot?: { readonly letter: string; readonly overlap: number };
  readonly lip?: { readonly letter: string };
}

/** Size of the letters on the film, mm, and what is clear between them and the joint. */
const letterSize = 8;
const besideJoint = 3;

export interface PanelMarks {
  /** Beside the film. */
  readonly crosses: readonly Contour[];
  /** Lines across it: where what lies over or under it ends. */
  readonly landings: readonly DrawnPath[];
  readonly words: readonly (readonly Contour[])[];
}

/** The marks of a panel, in the sheet's own frame; `runOff`: what the blade takes beyond the piece, mm. */
export function panelMarks(
  template: Template,
  joints: PanelJoints,
  runOff: number,
  words: DrawWords,
): PanelMarks {
  const [upright, level] = [uprightMarks, levelMarks].map((marks) => marks(template, joints, runOff, words));
  return {
    crosses: [...(upright?.crosses ?? []), ...(level?.crosses ?? [])],
    landings: [...(upright?.landings ?? []), ...(level?.landings ?? [])],
    words: [...(upright?.words ?? []), ...(level?.words ?? [])],
  };
}

type DrawMarks = typeof panelMarks;

/** Of cuts at a level: crosses beside both sides of the piece, letters beside them and on the film, and where the piece below ends. */
const levelMarks: DrawMarks = (template, { foot, lip }, runOff, words) => {
  const { band } = template;
  const edges = [
    ...(foot ? [{ ...foot, along: band.from, up: 1, clear: foot.overlap }] : []),
    ...(lip ? [{ ...lip, along: band.to, up: -1, clear: 0 }] : []),
  ];
  const away = runOff + tick.clear + crossArm;
  const landing = foot && foot.overlap > 0 ? [finishedEdge(template, band.from + foot.overlap)] : [];
  return {
    crosses: edges.flatMap(({ along }) =>
      besides(template, along, away).flatMap((turn) => upright(crossMark, template, turn, along)),
    ),
    landings: landing.map((line) => ({ id: 'below-ends', contours: [line] })),
    words: edges.flatMap(({ letter, along, up, clear }) => {
      const beside = { template, letter, inward: 1, words };
      const middle = (template.left.turn + template.right.turn) / 2;
      const inside = along + up * (clear + besideJoint + letterSize / 2);
      return [
        ...besides(template, along, away).map((turn) =>
          letterAt({
            ...beside,
            turn,
            along: along + up * (crossArm + wordSize / 2 + 1),
            size: wordSize,
            clear: 0,
          }),
        ),
        letterAt({ ...beside, turn: middle, along: inside, size: letterSize, clear: crossArm }),
      ].filter((contours) => contours.length > 0);
    }),
  };
};

/** Turns of the places this far beside both sides of a piece, at a height. */
const besides = ({ wall, left, right }: Template, along: number, away: number): readonly number[] => [
  turnOfEdge(wall, { ...left, offset: left.offset - away }, along),
  turnOfEdge(wall, { ...right, offset: right.offset + away }, along),
];

/** Of joints up the wall. */
const uprightMarks: DrawMarks = (template, { left, right }, runOff, words) => {
  const { wall, piece, seam } = template;
  const sides = [
    ...(left ? [{ ...left, edge: seam.start, inward: 1 }] : []),
    ...(right ? [{ ...right, edge: seam.finish, inward: -1 }] : []),
  ];
  const landing: readonly SideEdge[] =
    left && left.overlap > 0 ? [{ turn: seam.start.turn, offset: left.overlap }] : [];
  const away = runOff + tick.clear + crossArm;
  const middle = (piece.from + piece.to) / 2;
  return {
    crosses: sides.flatMap(({ edge: { turn } }) =>
      [piece.from - away, piece.to + away].flatMap((along) => upright(crossMark, template, turn, along)),
    ),
    landings: landing.map((edge) => ({
      id: 'left-ends',
      contours: [edgeLine(wall, edge, piece.from, piece.to)],
    })),
    words: sides.flatMap(({ letter, edge: { turn }, inward }) => {
      const beside = { template, turn, letter, inward, words };
      return [
        ...[piece.from - away, piece.to + away].map((along) =>
          letterAt({ ...beside, along, size: wordSize, clear: crossArm + 1 }),
        ),
        letterAt({
          ...beside,
          along: middle,
          size: letterSize,
          clear: besideJoint + (inward > 0 ? (left?.overlap ?? 0) : 0),
        }),
      ].filter((contours) => contours.length > 0);
    }),
  };
};

/** What is drawn about an origin, set upright at a place of the wall. */
function upright(
  draw: (origin: { x: number; y: number }) => readonly Contour[],
  { wall }: Template,
  turn: number,
  along: number,
): Contour[] {
  const { x, y } = toFlat(wall, { turn, along });
  const move = compose(rotation(levelAngle(wall, turn)), translation(x, y));
  return draw({ x: 0, y: 0 }).map((contour) => moveContour(move, contour));
}

interface LetterPlace {
  readonly template: Template;
  readonly turn: number;
  readonly along: number;
  readonly letter: string;
  /** 1: to the right of the joint; -1: to its left. */
  readonly inward: number;
  readonly size: number;
  readonly clear: number;
  readonly words: DrawWords;
}

function letterAt({ template, turn, along, letter, inward, size, clear, words }: LetterPlace): Contour[] {
  const drawn = words(letter, size);
  if (drawn.length === 0) return [];
  const x = inward > 0 ? clear : -clear - tightBox(drawn).maxX;
  const placed = drawn.map((contour) => moveContour(translation(x, size / 3), contour));
  return upright(() => placed, template, turn, along);
}
