// The painted areas of a normalised SVG: transforms multiplied out, clip paths gathered, in mm.
import { elementName, type XmlElement } from '../drawing/xml.ts';
import { type Finding, note, stop } from '../finding.ts';
import { type Affine, compose } from '../geometry/affine.ts';
import type { Fill } from '../geometry/polygon-clip.ts';
import type { Pen } from '../geometry/stroke.ts';
import { type ClipArea, clipOf, fillRule } from './svg-clip.ts';
import { penOf } from './svg-pen.ts';
import { isHidden, nodesById, parseMatrix, readTree, referenceOf, type SvgNode } from './svg-tree.ts';

/** One thing painted: path data in its own units with the map to mm, how it covers areas, and the clips that apply to it. */
export interface Painted {
  readonly id: string | undefined;
  readonly colour: string;
  /** The rule by which the path is filled, or the pen that it is drawn with. */
  readonly by: Fill | Pen;
  readonly data: string;
  readonly toMm: Affine;
  readonly clips: readonly ClipArea[];
}

const refusals: Readonly<Record<string, string>> = {
  mask: 'is faded by a mask, which has no edge to cut; use a clip path or draw the area itself',
  filter: 'uses a filter (a blur or shadow), which has no edge to cut; remove it',
};

/** What an element hands down to those in it. */
interface Inherited {
  readonly toMm: Affine;
  readonly clips: readonly ClipArea[];
  /** How much of it covers, 0 to 1. */
  readonly opacity: number;
  readonly id: string | undefined;
}

class PaintReader {
  readonly painted: Painted[] = [];
  readonly findings: Finding[] = [];
  /** Names of what is partly see-through. */
  readonly mixed: string[] = [];
  readonly #file: string;
  readonly #nodes: ReadonlyMap<string, SvgNode>;

  constructor(root: SvgNode, file: string) {
    this.#file = file;
    this.#nodes = nodesById(root);
  }

  #refuse(rule: string, element: XmlElement, says: string): void {
    this.findings.push(stop(rule, { file: this.#file, element: elementName(element) }, says));
  }

  walk(node: SvgNode, inherited: Inherited): void {
    const { element, children } = node;
    const { name, attributes } = element;
    const opacity = shareOf(attributes.opacity);
    if (name === 'defs' || opacity === 0) return;
    const own = parseMatrix(attributes.transform);
    const toMm = own ? compose(own, inherited.toMm) : inherited.toMm;
    for (const [key, says] of Object.entries(refusals))
      if (referenceOf(attributes[key])) this.#refuse(key, element, says);
    const clip = clipOf(this.#nodes, node, toMm);
    if (isMixed(attributes)) this.mixed.push(elementName(element));
    const here = {
      toMm,
      clips: clip ? [...inherited.clips, clip] : inherited.clips,
      opacity: opacity * inherited.opacity,
      id: attributes.id ?? inherited.id,
    };
    if (name === 'path' && !isHidden(attributes)) this.#paint(element, here);
    for (const child of children) this.walk(child, here);
  }

  #paint(element: XmlElement, here: Inherited): void {
    const { attributes } = element;
    const pen = penOf(attributes);
    const fill = () => this.#put(element, 'fill', fillRule(attributes['fill-rule']), here);
    const stroke = () => pen && this.#put(element, 'stroke', pen, here);
    // Source: SVG 2, 'paint-order': the stroke covers the fill unless it is named first.
    const order = /^\s*(?:markers\s+)?stroke/.test(attributes['paint-order'] ?? '')
      ? [stroke, fill]
      : [fill, stroke];
    for (const put of order) put();
  }

  #put(element: XmlElement, what: 'fill' | 'stroke', by: Fill | Pen, here: Inherited): void {
    const { attributes } = element;
    const paint = attributes[what] ?? '#000000';
    const share = shareOf(attributes[`${what}-opacity`]);
    if (paint === 'none' || share === 0) return;
    if (paint.startsWith('url(')) {
      const says = `has a gradient or pattern for its ${what}; give it one plain colour`;
      this.#refuse('shaded-fill', element, says);
      return;
    }
    // A point without a way to go is a dot for a round or square pen; as path data it would be nothing.
    const data = (attributes.d ?? '').replace(/M (\S+ \S+) Z/g, 'M $1 L $1 Z');
    const { toMm, clips, opacity, id } = here;
    this.painted.push({ id, colour: onWhite(paint, opacity * share), by, data, toMm, clips });
  }
}

/** An opacity as written, 0 to 1. */
const shareOf = (text: string | undefined): number =>
  text === undefined ? 1 : Math.max(0, Math.min(1, Number(text)));

const isPartly = (text: string | undefined): boolean => shareOf(text) > 0 && shareOf(text) < 1;

function isMixed({ opacity, style, ...attributes }: XmlElement['attributes']): boolean {
  const fades = attributes.fill !== 'none' && isPartly(attributes['fill-opacity']);
  const strokeFades = penOf(attributes) !== undefined && isPartly(attributes['stroke-opacity']);
  return isPartly(opacity) || fades || strokeFades || /mix-blend-mode:(?!normal)/.test(style ?? '');
}

/** The colour that a share of another makes on white, as `#rrggbb`. */
export function onWhite(colour: string, share: number): string {
  if (share === 1) return colour;
  const channels = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  return `#${channels
    .map((c) =>
      Math.round(255 + share * (c - 255))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}

/** Film is opaque: what shows through in the drawing will not on the vessel. */
function mixedFindings([first, ...rest]: readonly string[], file: string): Finding[] {
  if (first === undefined) return [];
  const more = rest.length === 0 ? '' : `, and ${rest.length} more,`;
  const says = `is drawn partly see-through or blended${more} but film is opaque: it is cut in the colour that it has on white`;
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
  reader.walk(root, { toMm, clips: [], opacity: 1, id: undefined });
  return { painted: reader.painted, findings: [...reader.findings, ...mixedFindings(reader.mixed, file)] };
}
