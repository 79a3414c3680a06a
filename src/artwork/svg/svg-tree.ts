// A normalised SVG as a tree, so that what is referred to can be looked up wherever it stands.
import { readXml, type XmlElement } from '../../drawing/xml.ts';
import type { Affine } from '../../geometry/affine.ts';

export interface SvgNode {
  readonly element: XmlElement;
  readonly children: SvgNode[];
}

/** The root of the text; undefined where it holds nothing. */
export function readTree(text: string): SvgNode | undefined {
  const open: SvgNode[] = [];
  let root: SvgNode | undefined;
  readXml(text, {
    open: (element) => {
      const node = { element, children: [] };
      open.at(-1)?.children.push(node);
      root ??= node;
      open.push(node);
    },
    close: () => {
      open.pop();
    },
  });
  return root;
}

/** Everything with an id, by it. */
export function nodesById(root: SvgNode): ReadonlyMap<string, SvgNode> {
  const nodes = new Map<string, SvgNode>();
  const walk = (node: SvgNode): void => {
    const { id } = node.element.attributes;
    if (id) nodes.set(id, node);
    for (const child of node.children) walk(child);
  };
  walk(root);
  return nodes;
}

export function parseMatrix(text: string | undefined): Affine | undefined {
  const numbers = /matrix\(([^)]*)\)/
    .exec(text ?? '')?.[1]
    ?.trim()
    .split(/[\s,]+/)
    .map(Number);
  const [a, b, c, d, e, f] = numbers ?? [];
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  return e === undefined || f === undefined ? undefined : { a, b, c, d, e, f };
}

/** The id that `url(#id)` names. */
export const referenceOf = (text: string | undefined): string | undefined =>
  /^url\(#(.*)\)$/.exec(text ?? '')?.[1];

/** SVG 1.1, 'visibility': outside a table `collapse` is `hidden`. */
export const isHidden = ({ visibility }: XmlElement['attributes']): boolean =>
  visibility === 'hidden' || visibility === 'collapse';
