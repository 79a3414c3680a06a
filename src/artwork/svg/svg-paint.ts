// The painted areas of a normalised SVG: transforms multiplied out, clip paths and patterns gathered, in mm.
import { parsePathData } from '../../drawing/path-data.ts';
import { elementName, type XmlElement } from '../../drawing/xml.ts';
import { type Finding, look, note, Refused, stop } from '../../finding.ts';
import { type Affine, compose, stretchOf } from '../../geometry/affine.ts';
import { type Box, grow } from '../../geometry/box.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { ClipArea, Copies, Covered, Painted } from '../covered.ts';
import { boxMap, clipOf, fillRule } from './svg-clip.ts';
import { meanShade } from './svg-gradient.ts';
import { fades, maskOf } from './svg-mask.ts';
import { patternPlace } from './svg-pattern.ts';
import { penOf } from './svg-pen.ts';
import { isHidden, nodesById, parseMatrix, readTree, referenceOf, type SvgNode } from './svg-tree.ts';

const refusals: Readonly<Record<string, string>> = {
  filter: 'uses a filter (a blur or shadow), which has no edge to cut; remove it',
};

const fading =
  'is faded by a mask of greys, shades or see-through paint, which has no edge to cut; give the mask plain black and white shapes, or use a clip path';

/** Most copies that the patterns of one file may make: they are cut one by one. */
const mostCopies = 20_000;

/** Most shapes that all copies of its patterns may come to. */
const mostCopied = 40_000;

/** Patterns within patterns, at most. */
const deepest = 4;

/** What an element hands down to those in it. */
interface Inherited {
  readonly toMm: Affine;
  readonly clips: readonly ClipArea[];
  /** How much of it covers, 0 to 1. */
  readonly opacity: number;
  readonly id: string | undefined;
  readonly copies: readonly Copies[];
}

/** What a drawing shows and where: its size, mm, and the map of its units to mm. */
interface Frame {
  readonly width: number;
  readonly height: number;
  readonly toMm: Affine;
}

class PaintReader {
  readonly painted: Painted[] = [];
  readonly findings: Finding[] = [];
  /** Names of what is partly see-through, and of what is shaded. */
  readonly mixed: string[] = [];
  readonly shaded: string[] = [];
  readonly #file: string;
  readonly #nodes: ReadonlyMap<string, SvgNode>;
  readonly #frame: Frame;
  #copies = 0;
  #copied = 0;

  constructor(root: SvgNode, frame: Frame, file: string) {
    this.#file = file;
    this.#frame = frame;
    this.#nodes = nodesById(root);
    this.#walk(root, { toMm: frame.toMm, clips: [], opacity: 1, id: undefined, copies: [] });
  }

  #refuse(rule: string, element: XmlElement, says: string): void {
    this.findings.push(stop(rule, { file: this.#file, element: elementName(element) }, says));
  }

  #walk(node: SvgNode, inherited: Inherited): void {
    const { element, children } = node;
    const { name, attributes } = element;
    const opacity = shareOf(attributes.opacity);
    if (name === 'defs' || opacity === 0) return;
    const own = parseMatrix(attributes.transform);
    const toMm = own ? compose(own, inherited.toMm) : inherited.toMm;
    for (const [key, says] of Object.entries(refusals))
      if (referenceOf(attributes[key])) this.#refuse(key, element, says);
    const clip = clipOf(this.#nodes, node, toMm);
    const mask = maskOf(this.#nodes, node, toMm);
    if (mask === fades) this.#refuse('mask', element, fading);
    const clips = [clip, mask].filter((area) => area !== undefined && area !== fades);
    if (isMixed(attributes)) this.mixed.push(elementName(element));
    const here = {
      ...inherited,
      toMm,
      clips: clips.length > 0 ? [...inherited.clips, ...clips] : inherited.clips,
      opacity: opacity * inherited.opacity,
      id: attributes.id ?? inherited.id,
    };
    if (name === 'path' && !isHidden(attributes)) this.#paint(node, here);
    for (const child of children) this.#walk(child, here);
  }

  #paint(node: SvgNode, here: Inherited): void {
    const { attributes } = node.element;
    const pen = penOf(attributes);
    const fill = () => this.#put(node, 'fill', fillRule(attributes['fill-rule']), here);
    const stroke = () => pen && this.#put(node, 'stroke', pen, here);
    // Source: SVG 2, 'paint-order': the stroke covers the fill unless it is named first.
    const order = /^\s*(?:markers\s+)?stroke/.test(attributes['paint-order'] ?? '')
      ? [stroke, fill]
      : [fill, stroke];
    for (const put of order) put();
  }

  #put(node: SvgNode, what: 'fill' | 'stroke', by: Covered['by'], here: Inherited): void {
    const { attributes } = node.element;
    const paint = attributes[what] ?? '#000000';
    const share = shareOf(attributes[`${what}-opacity`]);
    if (paint === 'none' || share === 0) return;
    this.#count(here.copies);
    // A point without a way to go is a dot for a round or square pen; as path data it would be nothing.
    const data = (attributes.d ?? '').replace(/M (\S+ \S+) Z/g, 'M $1 L $1 Z');
    const { toMm, clips, id, copies } = here;
    const covered = { by, data, toMm, clips };
    const opacity = here.opacity * share;
    if (!paint.startsWith('url(')) {
      this.painted.push({ ...covered, id, colour: onWhite(paint, opacity), copies });
      return;
    }
    const server = this.#nodes.get(referenceOf(paint) ?? '');
    if (server?.element.name === 'pattern') this.#spread(server, node, covered, { ...here, opacity });
    else if (server) this.#shade(server, node, covered, { ...here, opacity });
  }

  /** Counts the copies of something painted. @throws Refused where they are too many with those before. */
  #count(copies: readonly Copies[]): void {
    if (copies.length > 0) this.#copied += timesIn(copies);
    if (this.#copied <= mostCopied) return;
    const says = `has patterns whose copies come to more than ${mostCopied} shapes; make them larger or simpler, or fill plainly`;
    throw new Refused([stop('too-many-copies', { file: this.#file }, says)]);
  }

  #shade(gradient: SvgNode, node: SvgNode, covered: Covered, { opacity, id, copies }: Inherited): void {
    const shade = meanShade(gradient, covered.data, covered.by, () => boxMap(node));
    if (!shade) return;
    this.shaded.push(elementName(node.element));
    this.painted.push({ ...covered, id, colour: onWhite(shade.colour, opacity * shade.share), copies });
  }

  /** The content of a pattern, copied over what it fills. */
  #spread(pattern: SvgNode, node: SvgNode, covered: Covered, here: Inherited): void {
    const box = this.#reach(covered, here.copies.length > 0);
    const place = box && patternPlace(pattern, { box: () => boxMap(node), toMm: here.toMm, covering: box });
    if (!place) return;
    this.#copies += place.count * timesIn(here.copies);
    if (!(this.#copies <= mostCopies) || here.copies.length >= deepest) {
      const says = `is filled with more than ${mostCopies} copies of a pattern, with those before it; make the pattern larger, or fill it plainly`;
      this.#refuse('too-many-copies', node.element, says);
      return;
    }
    const area = { parts: [covered], within: undefined };
    const cell = { data: 'M0 0H1V1H0Z', by: 'nonzero' as const, toMm: place.cell, clips: [] };
    const content = {
      toMm: place.content,
      clips: [{ parts: [cell], within: undefined }],
      opacity: here.opacity,
      id: here.id,
      copies: [{ steps: place.steps(), clips: [area] }, ...here.copies],
    };
    for (const child of pattern.children) this.#walk(child, content);
  }

  /** The box of what is covered, mm, no larger than the drawing unless it is copied; undefined where they don't meet. */
  #reach({ data, by, toMm }: Covered, isCopied: boolean): Box | undefined {
    const contours = parsePathData(data, toMm);
    if (contours.length === 0) return undefined;
    const edge = typeof by === 'string' ? 0 : (by.width / 2) * Math.max(by.miterLimit, 2) * stretchOf(toMm);
    const { minX, minY, maxX, maxY } = grow(tightBox(contours), edge);
    if (isCopied) return { minX, minY, maxX, maxY };
    const { width, height } = this.#frame;
    const box = {
      minX: Math.max(minX, 0),
      minY: Math.max(minY, 0),
      maxX: Math.min(maxX, width),
      maxY: Math.min(maxY, height),
    };
    return box.minX < box.maxX && box.minY < box.maxY ? box : undefined;
  }
}

/** How often copies of copies show something. */
const timesIn = (copies: readonly Copies[]): number =>
  copies.reduce((times, { steps }) => times * steps.length, 1);

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
function onWhite(colour: string, share: number): string {
  if (share === 1) return colour;
  const channels = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  const mixed = channels.map((channel) => Math.round(255 + share * (channel - 255)));
  return `#${mixed.map((channel) => channel.toString(16).padStart(2, '0')).join('')}`;
}

/** Once for a file, by its first element. */
function told(
  [first, ...rest]: readonly string[],
  file: string,
  rule: string,
  make: (rule: string, where: { file: string; element: string }, says: string) => Finding,
  says: (more: string) => string,
): Finding[] {
  if (first === undefined) return [];
  return [make(rule, { file, element: first }, says(rest.length === 0 ? '' : `, and ${rest.length} more,`))];
}

/** Everything a normalised SVG paints, in painting order, with findings for what has no edge to cut. */
export function readPaint(
  normalised: string,
  frame: Frame,
  file: string,
): { readonly painted: readonly Painted[]; readonly findings: readonly Finding[] } {
  const root = readTree(normalised);
  if (!root) return { painted: [], findings: [] };
  const { painted, findings, mixed, shaded } = new PaintReader(root, frame, file);
  return {
    painted,
    findings: [
      ...findings,
      // Film is opaque: what shows through in the drawing will not on the vessel.
      ...told(
        mixed,
        file,
        'see-through',
        note,
        (more) =>
          `is drawn partly see-through or blended${more} but film is opaque: it is cut in the colour that it has on white`,
      ),
      ...told(
        shaded,
        file,
        'mean-colour',
        look,
        (more) =>
          `is shaded by a gradient${more} but film has one colour: it is cut in the mean of its shades`,
      ),
    ],
  };
}
