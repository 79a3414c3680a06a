// Clip paths of a normalised SVG, as they apply where they are used, in mm.
import { parsePathData } from '../../drawing/path-data.ts';
import { type Affine, compose } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Fill } from '../../geometry/polygon-clip.ts';
import type { ClipArea, Covered } from '../covered.ts';
import { isHidden, parseMatrix, referenceOf, type SvgNode } from './svg-tree.ts';

export const fillRule = (text: string | undefined): Fill => (text === 'evenodd' ? 'evenodd' : 'nonzero');

/** The clip path that an element names, if it names one; `toMm` is the map of the element's own units. */
export const clipOf = (
  nodes: ReadonlyMap<string, SvgNode>,
  clipped: SvgNode,
  toMm: Affine,
): ClipArea | undefined =>
  clipNamed(nodes, referenceOf(clipped.element.attributes['clip-path']), toMm, clipped);

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
  above: Affine,
  clips: readonly ClipArea[],
): Covered[] {
  const { name, attributes } = node.element;
  const own = parseMatrix(attributes.transform);
  const toMm = own ? compose(own, above) : above;
  const clip = clipOf(nodes, node, toMm);
  const inside = clip ? [...clips, clip] : clips;
  if (name !== 'path') return node.children.flatMap((child) => clipParts(nodes, child, toMm, inside));
  if (isHidden(attributes)) return [];
  return [{ data: attributes.d ?? '', by: fillRule(attributes['clip-rule']), toMm, clips: inside }];
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
