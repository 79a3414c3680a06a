// Pattern fills of a normalised SVG: where their content goes, and where its copies go, in mm.
import { type Affine, compose, determinant, inverse, movePoint, translation } from '../../geometry/affine.ts';
import { type Box, boxCorners, boxOfPoints } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';
import { fitted, parseViewBox } from './svg-size.ts';
import { parseMatrix, type SvgNode } from './svg-tree.ts';

export interface PatternPlace {
  /** The map of the content's units to mm, for the first copy. */
  readonly content: Affine;
  /** The cell that cuts every copy: a unit square under this map to mm, for the first copy. */
  readonly cell: Affine;
  readonly count: number;
  /** How far, mm, every copy is from the first. */
  readonly steps: () => readonly Point[];
}

export interface PatternUse {
  /** The map of the unit square onto the filled path's box, in the path's own units. */
  readonly box: () => Affine;
  /** Of the path's own units. */
  readonly toMm: Affine;
  /** What is to be covered, mm. */
  readonly covering: Box;
}

const identity = translation(0, 0);

/**
 * Where a pattern puts its copies so that they cover a box; undefined where it shows nothing.
 * Source: SVG 1.1, 13.3, with the content's origin in the corner of its cell, as renderers have it.
 */
export function patternPlace(
  pattern: SvgNode,
  { box, toMm, covering }: PatternUse,
): PatternPlace | undefined {
  const { attributes } = pattern.element;
  const read = (key: string): number => Number(attributes[key] ?? 0);
  const byBox = attributes.patternUnits === 'userSpaceOnUse' ? identity : box();
  const at = movePoint(byBox, { x: read('x'), y: read('y') });
  const [width, height] = [read('width') * byBox.a, read('height') * byBox.d];
  if (!(width > 0 && height > 0)) return undefined;
  const own = parseMatrix(attributes.patternTransform) ?? identity;
  const corner = compose(compose(translation(at.x, at.y), own), toMm);
  if (!(Math.abs(determinant(corner)) > 0)) return undefined;
  const cell = compose({ a: width, b: 0, c: 0, d: height, e: 0, f: 0 }, corner);
  const content = compose(contentMap(pattern, box, width, height), corner);
  return { content, cell, ...stepsOver(cell, covering) };
}

function contentMap(
  { element: { attributes } }: SvgNode,
  box: () => Affine,
  width: number,
  height: number,
): Affine {
  const viewBox = parseViewBox(attributes.viewBox);
  if (viewBox) return fitted(viewBox, width, height, attributes.preserveAspectRatio ?? '');
  if (attributes.patternContentUnits !== 'objectBoundingBox') return identity;
  return { ...box(), e: 0, f: 0 };
}

/** The steps from the first cell to every cell that meets a box. */
function stepsOver(cell: Affine, covering: Box): Pick<PatternPlace, 'count' | 'steps'> {
  const back = inverse(cell);
  const { minX, minY, maxX, maxY } = boxOfPoints(boxCorners(covering).map((p) => movePoint(back, p)));
  const [left, top] = [Math.floor(minX), Math.floor(minY)];
  const [across, up] = [Math.floor(maxX) - left + 1, Math.floor(maxY) - top + 1];
  const stepTo = (i: number, j: number): Point => ({
    x: cell.a * i + cell.c * j,
    y: cell.b * i + cell.d * j,
  });
  return {
    count: across * up,
    steps: () =>
      Array.from({ length: across * up }, (_, k) =>
        stepTo(left + (k % across), top + Math.floor(k / across)),
      ),
  };
}
