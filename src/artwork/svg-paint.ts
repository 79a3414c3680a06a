// The painted areas of a normalised SVG: transforms multiplied out, clip paths gathered, in mm.
import { parsePathData } from '../drawing/path-data.ts';
import { elementName, readXml, type XmlElement } from '../drawing/xml.ts';
import { type Finding, note, stop } from '../finding.ts';
import { type Affine, compose } from '../geometry/affine.ts';
import type { Contour } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Fill } from '../geometry/polygon-clip.ts';

/** One thing painted: path data in its own units with the map to mm, a fill rule, and the clips that apply to it. */
export interface Painted {
  readonly id: string | undefined;
  readonly colour: string;
  readonly fill: Fill;
  readonly data: string;
  readonly toMm: Affine;
  readonly clips: readonly ClipArea[];
}

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

interface Node {
  readonly element: XmlElement;
  readonly children: Node[];
}

/** Read the normalised text as a tree, so that clip paths can be looked up wherever they stand. */
function readTree(text: string): Node | undefined {
  const open: Node[] = [];
  let root: Node | undefined;
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

const referenceOf = (text: string | undefined): string | undefined => /^url\(#(.*)\)$/.exec(text ?? '')?.[1];

const fillRule = (text: string | undefined): Fill => (text === 'evenodd' ? 'evenodd' : 'nonzero');

const refusals: Readonly<Record<string, string>> = {
  mask: 'is faded by a mask, which has no edge to cut; use a clip path or draw the area itself',
  filter: 'uses a filter (a blur or shadow), which has no edge to cut; remove it',
};

const isMixed = (attributes: XmlElement['attributes']): boolean =>
  [attributes.opacity, attributes['fill-opacity']].some(
    (part) => part !== undefined && Number(part) > 0 && Number(part) < 1,
  ) || /mix-blend-mode:(?!normal)/.test(attributes.style ?? '');

class PaintReader {
  readonly painted: Painted[] = [];
  readonly findings: Finding[] = [];
  /** Names of what is partly see-through. */
  readonly mixed: string[] = [];
  readonly #file: string;
  readonly #clipPaths = new Map<string, Node>();

  constructor(root: Node, file: string) {
    this.#file = file;
    this.#index(root);
  }

  #index(node: Node): void {
    const { name, attributes } = node.element;
    if (name === 'clipPath' && attributes.id) this.#clipPaths.set(attributes.id, node);
    for (const child of node.children) this.#index(child);
  }

  #refuse(rule: string, element: XmlElement, says: string): void {
    this.findings.push(stop(rule, { file: this.#file, element: elementName(element) }, says));
  }

  walk(node: Node, toMm: Affine, clips: readonly ClipArea[], id?: string): void {
    const { element, children } = node;
    const { name, attributes } = element;
    if (name === 'defs' || attributes.opacity === '0') return;
    const own = parseMatrix(attributes.transform);
    const here = own ? compose(own, toMm) : toMm;
    for (const [key, says] of Object.entries(refusals))
      if (referenceOf(attributes[key])) this.#refuse(key, element, says);
    const clip = this.#clip(referenceOf(attributes['clip-path']), here, node);
    const inside = clip ? [...clips, clip] : clips;
    if (isMixed(attributes)) this.mixed.push(elementName(element));
    const named = attributes.id ?? id;
    if (name === 'path') this.#paint(element, here, inside, named);
    for (const child of children) this.walk(child, here, inside, named);
  }

  #paint(element: XmlElement, toMm: Affine, clips: readonly ClipArea[], id: string | undefined): void {
    const { attributes } = element;
    if (isHidden(attributes)) return;
    if (
      attributes.stroke !== undefined &&
      attributes.stroke !== 'none' &&
      attributes['stroke-opacity'] !== '0'
    )
      this.#refuse(
        'stroke',
        element,
        'is drawn with a stroke, which is a line without area; turn strokes into outlines in your drawing program',
      );
    const colour = attributes.fill ?? '#000000';
    if (colour === 'none' || attributes['fill-opacity'] === '0') return;
    if (colour.startsWith('url(')) {
      this.#refuse('shaded-fill', element, 'is filled with a gradient or pattern; give it one plain colour');
      return;
    }
    const fill = fillRule(attributes['fill-rule']);
    this.painted.push({ id, colour, fill, data: attributes.d ?? '', toMm, clips });
  }

  #clip(id: string | undefined, toMm: Affine, clipped: Node): ClipArea | undefined {
    const node = id === undefined ? undefined : this.#clipPaths.get(id);
    if (!node) return undefined;
    const { attributes } = node.element;
    const box = attributes.clipPathUnits === 'objectBoundingBox' ? boxMap(clipped) : undefined;
    // Source: SVG 1.1, 'clipPathUnits': the box is mapped first, then the clip path's own transform.
    const steps = [box, parseMatrix(attributes.transform), toMm].filter((m) => m !== undefined);
    const here = steps.reduce((first, second) => compose(first, second));
    const parts = node.children.flatMap((child) => this.#clipParts(child, here, []));
    return { parts, within: this.#clip(referenceOf(attributes['clip-path']), toMm, clipped) };
  }

  #clipParts(node: Node, toMm: Affine, clips: readonly ClipArea[]): ClipPart[] {
    const { name, attributes } = node.element;
    const own = parseMatrix(attributes.transform);
    const here = own ? compose(own, toMm) : toMm;
    const clip = this.#clip(referenceOf(attributes['clip-path']), here, node);
    const inside = clip ? [...clips, clip] : clips;
    if (name !== 'path') return node.children.flatMap((child) => this.#clipParts(child, here, inside));
    if (isHidden(attributes)) return [];
    const contours = parsePathData(attributes.d ?? '', here);
    return [{ contours, fill: fillRule(attributes['clip-rule']), clips: inside }];
  }
}

/** SVG 1.1, 'visibility': outside a table `collapse` is `hidden`. */
export const isHidden = ({ visibility }: XmlElement['attributes']): boolean =>
  visibility === 'hidden' || visibility === 'collapse';

/** The map of the unit square onto the box of what is clipped, in that element's own units. */
function boxMap(node: Node): Affine {
  const local = (child: Node, m: Affine | undefined): Contour[] => {
    const own = parseMatrix(child.element.attributes.transform);
    const here = own && m ? compose(own, m) : (own ?? m);
    const drawn = child.element.name === 'path' ? parsePathData(child.element.attributes.d ?? '', here) : [];
    return [...drawn, ...child.children.flatMap((next) => local(next, here))];
  };
  const self = node.element.name === 'path' ? parsePathData(node.element.attributes.d ?? '') : [];
  const box = tightBox([...self, ...node.children.flatMap((child) => local(child, undefined))]);
  return { a: box.maxX - box.minX, b: 0, c: 0, d: box.maxY - box.minY, e: box.minX, f: box.minY };
}

/** Film is opaque: what shows through in the drawing will not on the vessel. */
function mixedFindings([first, ...rest]: readonly string[], file: string): Finding[] {
  if (first === undefined) return [];
  const more = rest.length === 0 ? '' : `, and ${rest.length} more,`;
  const says = `is drawn partly see-through or blended${more} but is cut as plain film of its own colour`;
  return [note('see-through', { file, element: first }, says)];
}

/** Everything a normalised SVG paints, in painting order, with findings for what has no edge to cut. */
export function readPaint(
  normalised: string,
  toMm: Affine,
  file: string,
): { readonly painted: readonly Painted[]; readonly findings: readonly Finding[] } {
  const root = readTree(normalised);
  if (!root) return { painted: [], findings: [] };
  const reader = new PaintReader(root, file);
  reader.walk(root, toMm, []);
  return { painted: reader.painted, findings: [...reader.findings, ...mixedFindings(reader.mixed, file)] };
}
