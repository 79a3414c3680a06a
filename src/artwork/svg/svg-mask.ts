// Masks of a normalised SVG that hide or show and never fade: the same as a clip path, in mm.
import { type Affine, compose } from '../../geometry/affine.ts';
import type { ClipArea, Covered, MaskPart } from '../covered.ts';
import { boxMap, clipOf, fillRule } from './svg-clip.ts';
import { penOf } from './svg-pen.ts';
import { isHidden, parseMatrix, referenceOf, type SvgNode } from './svg-tree.ts';

/** A mask that fades: a shade, or what is see-through, has no edge to cut. */
export const fades = 'fades';

/**
 * The text of an SVG whose masks say by an attribute what counts of them, their paint's light or its cover alone: drawing
 * programs write it as a style, which the reader passes over.
 */
export const withMaskTypes = (text: string): string =>
  // No `<` stands in a tag, nor in its values: each start is read to the next one at most, whatever a comment holds.
  text.replace(/<(?:[\w-]+:)?mask\b(?:[^<>"']|"[^<"]*"|'[^<']*')*>/g, (tag) => {
    const type = /\bstyle\s*=\s*["'][^"']*?\bmask-type\s*:\s*(alpha|luminance)\b/.exec(tag)?.[1];
    if (!type || /\smask-type\s*=/.test(tag)) return tag;
    return tag.replace(/mask\b/, `mask mask-type="${type}"`);
  });

/** The mask that an element names, if it names one; `toMm` is the map of the element's own units. */
export const maskOf = (
  nodes: ReadonlyMap<string, SvgNode>,
  masked: SvgNode,
  toMm: Affine,
): ClipArea | typeof fades | undefined =>
  maskNamed(nodes, referenceOf(masked.element.attributes.mask), toMm, masked, 0);

/** Masks within masks, at most. */
const deepest = 8;

function maskNamed(
  nodes: ReadonlyMap<string, SvgNode>,
  id: string | undefined,
  toMm: Affine,
  masked: SvgNode,
  depth: number,
): ClipArea | typeof fades | undefined {
  const node = id === undefined ? undefined : nodes.get(id);
  if (node?.element.name !== 'mask') return undefined;
  if (depth > deepest) return fades;
  const { attributes } = node.element;
  const box = attributes.maskContentUnits === 'objectBoundingBox' ? boxMap(masked) : undefined;
  const content = new MaskContent(nodes, attributes['mask-type'] === 'alpha', depth);
  const here = box ? compose(box, toMm) : toMm;
  const within = maskNamed(nodes, referenceOf(attributes.mask), toMm, masked, depth + 1);
  if (!node.children.every((child) => content.add(child, here, [])) || within === fades) return fades;
  // Outside its own rectangle a mask hides everything.
  const area = attributes.maskUnits === 'userSpaceOnUse' ? rectangle(attributes, toMm) : undefined;
  const kept = area ? { parts: [area], within } : within;
  return { parts: content.parts, within: kept };
}

function rectangle(
  { x = '0', y = '0', width = '0', height = '0' }: SvgNode['element']['attributes'],
  toMm: Affine,
): Covered {
  const data = `M${x} ${y}h${width}v${height}h-${width}Z`;
  return { data, by: 'nonzero', toMm, clips: [] };
}

/** What a mask paints, in its order: white shows, black hides again; where only its cover counts, whatever is painted shows. */
class MaskContent {
  readonly parts: MaskPart[] = [];
  readonly #nodes: ReadonlyMap<string, SvgNode>;
  readonly #byCover: boolean;
  readonly #depth: number;

  constructor(nodes: ReadonlyMap<string, SvgNode>, byCover: boolean, depth: number) {
    this.#nodes = nodes;
    this.#byCover = byCover;
    this.#depth = depth;
  }

  /** Whether an element and all in it hides or shows, and never fades. */
  add(node: SvgNode, above: Affine, clips: readonly ClipArea[]): boolean {
    const { name, attributes } = node.element;
    const own = parseMatrix(attributes.transform);
    const toMm = own ? compose(own, above) : above;
    const clip = clipOf(this.#nodes, node, toMm);
    const mask = maskNamed(this.#nodes, referenceOf(attributes.mask), toMm, node, this.#depth + 1);
    if (mask === fades || referenceOf(attributes.filter) || !isWhole(attributes.opacity)) return false;
    const inside = [...clips, ...(clip ? [clip] : []), ...(mask ? [mask] : [])];
    if (name !== 'path') return node.children.every((child) => this.add(child, toMm, inside));
    if (isHidden(attributes)) return true;
    const pen = penOf(attributes);
    const covered = { data: attributes.d ?? '', toMm, clips: inside };
    const fill = { ...covered, by: fillRule(attributes['fill-rule']) };
    return (
      this.#paint(fill, attributes.fill ?? '#000000', attributes['fill-opacity']) &&
      (!pen ||
        this.#paint({ ...covered, by: pen }, attributes.stroke ?? 'none', attributes['stroke-opacity']))
    );
  }

  #paint(covered: Covered, paint: string, opacity: string | undefined): boolean {
    if (paint === 'none') return true;
    const shows = this.#byCover ? true : showsBy(paint);
    if (shows === undefined || paint.startsWith('url(') || !isWhole(opacity)) return false;
    this.parts.push(shows ? covered : { ...covered, hides: true });
    return true;
  }
}

const isWhole = (opacity: string | undefined): boolean => opacity === undefined || Number(opacity) === 1;

/** Shades nearer than this to white or black are that, 0 to 255: no film shows them. */
const nearly = 5;

/** Whether a colour shows what is masked: white does, black hides it; undefined for any between. */
function showsBy(colour: string): boolean | undefined {
  const channels = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  if (channels.every((channel) => channel >= 255 - nearly)) return true;
  return channels.every((channel) => channel <= nearly) ? false : undefined;
}
