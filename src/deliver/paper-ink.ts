// What stands on paper: units that can't be parted, and the ink they are made of.
import type { Setting } from '../drawing/broken-lines.ts';
import type { DrawnGroup } from '../drawing/drawing.ts';
import type { DrawWords } from '../drawing/words.ts';
import { shifted } from '../geometry/affine.ts';
import { boxCorners } from '../geometry/box.ts';
import { polygon, polyline } from '../geometry/contour.ts';
import type { FlatPicture } from './flat-picture.ts';
import type { PlacedPicture } from './placed-picture.ts';

/** What is drawn, mm from the top left corner of its own place. */
export interface Ink {
  readonly groups: readonly DrawnGroup[];
  readonly pictures: readonly PlacedPicture[];
}

/** What stays whole on a page. */
export interface Unit {
  /** mm, what is clear below it too. */
  readonly height: number;
  readonly ink: Ink;
  /** Whether the next one has to stand on the same page. */
  readonly keepsNext?: boolean;
  /** What stands above it again where it begins a page: the head of its table. */
  readonly head?: Unit;
}

export interface BlockOptions {
  readonly words: DrawWords;
  /** For headings, the heads of tables and names. */
  readonly bold: DrawWords;
  /** Width there is, mm. */
  readonly width: number;
  /** Tallest picture, mm. */
  readonly tallest: number;
  /** A picture by its file's name; undefined where there is none. */
  readonly pictureOf: (file: string) => FlatPicture | undefined;
}

/** Heights of words, mm, and of a line over them. */
export const sizes = { title: 7.4, heading: 4.3, text: 3.3, small: 2.9, label: 2.5 } as const;
export const lineFor = (em: number): number => em * 1.42;

export const colours = {
  ink: '#1c1c1c',
  quiet: '#5a6167',
  rule: '#c4c7c9',
  caution: '#b3541e',
  work: '#3a5a8c',
} as const;

export const wordsAt = (
  text: string,
  { words, em }: Setting,
  x: number,
  y: number,
  colour: string = colours.ink,
): DrawnGroup => ({
  role: 'note',
  colour,
  paths: [{ contours: shifted(words(text, em), { x, y }) }].filter(({ contours }) => contours.length > 0),
});

/** `outline` is drawn without dashes. */
export const lineFrom = (x1: number, y1: number, x2: number, y2: number, colour: string): DrawnGroup => ({
  role: 'outline',
  colour,
  paths: [
    {
      contours: [
        polyline([
          { x: x1, y: y1 },
          { x: x2, y: y2 },
        ]),
      ],
    },
  ],
});

export const boxAt = (x: number, y: number, width: number, height: number) =>
  polygon(boxCorners({ minX: x, minY: y, maxX: x + width, maxY: y + height }));

export const inked = (...groups: readonly DrawnGroup[]): Ink => ({ groups, pictures: [] });

/** A filled box: the role is one that is filled, not drawn around. */
export const filledBox = (
  x: number,
  y: number,
  width: number,
  height: number,
  colour: string,
): DrawnGroup => ({
  role: 'note',
  colour,
  paths: [{ contours: [boxAt(x, y, width, height)] }],
});

export const space = (height: number): Unit => ({ height, ink: inked() });
