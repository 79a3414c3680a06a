// Clip paths of a normalised SVG, as they apply where they are used, in mm.
import { parsePathData } from '../drawing/path-data.ts';
import { type Affine, compose } from '../geometry/affine.ts';
import type { Contour, Shape } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Fill } from '../geometry/polygon-clip.ts';
import { clippedShapes, filledShapes } from '../geometry/regions.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import { isHidden, parseMatrix, referenceOf, type SvgNode } from './svg-tree.ts';

/** A clip path as it applies here: the union of its parts, themselves clipped by `within`. */
export interface ClipArea {
  readonly parts: readonly ClipPart[];
  readonly within: ClipArea | undefined;
}

export interface ClipPart {
  readonly contours: readonly Contour[];
  readonly fill: Fill;
  /** Clips of this part alone. */
  readonly clips: readonly ClipArea[];
}

export const fillRule = (text: string | undefined): Fill => (text === 'evenodd' ? 'evenodd' : 'nonzero');

/** The clip path that an element names, if it names one; `toMm` is the map of the element's own units. */
export function clipOf(
  nodes: ReadonlyMap<string, SvgNode>,
  clipped: SvgNode,
  toMm: Affine,
): ClipArea | undefined {
  return clipNamed(nodes, referenceOf(clipped.element.attributes['clip-path']), toMm, clipped);
}

function clipNamed(
  nodes: ReadonlyMap<string, SvgNode>,
  id: string | undefined,
  toMm: Affine,
  clipped: SvgNode,
): ClipArea | undefined {
  const node = id === undefined ? undefined : nodes.get(id);
  if (node?.element.name !== 'clipPath') return undefined;
  const { attributes } = node.element;
  const box = attributes.clipPathUnits === 'objectBoundingBox' ? boxMap(clipped) : undefined;
  // Source: SVG 1.1, 'clipPathUnits': the box is mapped first, then the clip path's own transform.
  const steps = [box, parseMatrix(attributes.transform), toMm].filter((m) => m !== undefined);
  const here = steps.reduce((first, second) => compose(first, second));
  const parts = node.children.flatMap((child) => clipParts(nodes, child, here, []));
  return { parts, within: clipNamed(nodes, referenceOf(attributes['clip-path']), toMm, clipped) };
}

function clipParts(
  nodes: ReadonlyMap<string, SvgNode>,
  node: SvgNode,
  toMm: Affine,
  clips: readonly ClipArea[],
): ClipPart[] {
  const { name, attributes } = node.element;
  const own = parseMatrix(attributes.transform);
  const here = own ? compose(own, toMm) : toMm;
  const clip = clipOf(nodes, node, here);
  const inside = clip ? [...clips, clip] : clips;
  if (name !== 'path') return node.children.flatMap((child) => clipParts(nodes, child, here, inside));
  if (isHidden(attributes)) return [];
  const contours = parsePathData(attributes.d ?? '', here);
  return [{ contours, fill: fillRule(attributes['clip-rule']), clips: inside }];
}

/** The map of the unit square onto the box of an element's areas, strokes left aside, in that element's own units. */
export function boxMap(node: SvgNode): Affine {
  const local = (child: SvgNode, m: Affine | undefined): Contour[] => {
    const own = parseMatrix(child.element.attributes.transform);
    const here = own && m ? compose(own, m) : (own ?? m);
    const drawn = child.element.name === 'path' ? parsePathData(child.element.attributes.d ?? '', here) : [];
    return [...drawn, ...child.children.flatMap((next) => local(next, here))];
  };
  const self = node.element.name === 'path' ? parsePathData(node.element.attributes.d ?? '') : [];
  const box = tightBox([...self, ...node.children.flatMap((child) => local(child, undefined))]);
  return { a: box.maxX - box.minX, b: 0, c: 0, d: box.maxY - box.minY, e: box.minX, f: box.minY };
}

function clipShapes({ parts, within }: ClipArea): Shape[] {
  const shapes = parts.flatMap(({ contours, fill, clips }) =>
    clippedBy(clips, filledShapes(contours, fill, chordTolerance)),
  );
  return within ? clippedBy([within], shapes) : shapes;
}

/** What of some shapes shows through clips. */
export const clippedBy = (clips: readonly ClipArea[], shapes: readonly Shape[]): Shape[] =>
  clips.reduce<Shape[]>(
    (left, clip) => clippedShapes(left, clipShapes(clip), 'intersection', chordTolerance),
    [...shapes],
  );
