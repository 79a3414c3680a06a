// The waist of the house: what every maker of lines hands over, and all that a writer may know.
import { type Affine, moveContour, translation } from '../geometry/affine.ts';
import type { Contour } from '../geometry/contour.ts';
import { keptContour } from '../geometry/kept-contour.ts';
import type { Point } from '../geometry/point.ts';

/** What a group of lines is for; the words of the files. */
export const roles = [
  'outline',
  'artwork',
  'relief',
  'seam',
  'trim',
  'flat-limit',
  'register',
  'note',
] as const;
export type Role = (typeof roles)[number];

/** One `path` of a file: a shape with its holes, or one open line. */
export interface DrawnPath {
  readonly id?: string;
  readonly contours: readonly Contour[];
}

export interface DrawnGroup {
  readonly role: Role;
  /** The layer's name, for artwork. */
  readonly layer?: string;
  /** The layer's colour as `#rrggbb`, for artwork. */
  readonly colour?: string;
  /** Of notes: lines that outline a place, where other notes are words, which are filled. */
  readonly lines?: true;
  /** Of such lines: the role whose lines they are drawn like, for they are samples of it. */
  readonly like?: Role;
  /** Words, squares and samples that stand apart from the pieces: on paper they may stand elsewhere. */
  readonly apart?: true;
  readonly paths: readonly DrawnPath[];
}

/** A flat drawing: mm, y down, the sheet's top left corner at the origin. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly groups: readonly DrawnGroup[];
}

/** Without what stands apart from the pieces. */
export const withoutApart = (drawing: Drawing): Drawing => ({
  ...drawing,
  groups: drawing.groups.filter(({ apart }) => !apart),
});

export const shiftedGroups = (groups: readonly DrawnGroup[], { x, y }: Point): DrawnGroup[] =>
  movedGroups(groups, translation(x, y));

export const movedGroups = (groups: readonly DrawnGroup[], move: Affine): DrawnGroup[] =>
  groups.map((group) => ({
    ...group,
    paths: group.paths.map((path) => ({
      ...path,
      contours: path.contours.map((contour) => keptContour(moveContour(move, contour))),
    })),
  }));
