// Artwork read: an SVG drawing or a picture made of pixels, as layers of areas in mm.
import type { DrawnLine } from '../drawing/drawn-line.ts';
import { PathFault } from '../drawing/path-data.ts';
import { XmlFault } from '../drawing/xml.ts';
import { type Finding, Refused, stop } from '../finding.ts';
import { compose } from '../geometry/affine.ts';
import type { Shape } from '../geometry/contour.ts';
import { withLinesCarried } from './carried-lines.ts';
import { drawnLines } from './drawn-lines.ts';
import { refuseCrowded, type SeenArea, seenAreas } from './painted-areas.ts';
import { inOrder, layeredAreas } from './painting-order.ts';
import { isPicture } from './picture/picture-head.ts';
import { type TraceOptions, tracedPicture } from './picture/traced-picture.ts';
import { withPlainEntities } from './svg/plain-entities.ts';
import { type CheckedSvg, checkSvg } from './svg/svg-check.ts';
import { withMaskTypes } from './svg/svg-mask.ts';
import type { Normalise } from './svg/svg-normalise.ts';
import { readPaint } from './svg/svg-paint.ts';
import type { SvgFrame } from './svg/svg-size.ts';
import { isTextElement, textFindings } from './svg/svg-text.ts';
import { svgTextOf } from './svg/svg-text-of.ts';
import { namedByFamily } from './text/font-names.ts';
import type { Tile, TileLayer } from './tile-layer.ts';

export type { Tile, TileLayer };

/** Rules of what can be seen in a drawing but has no edge to cut; all else that is refused keeps it from being read. */
export const uncutRules: ReadonlySet<string> = new Set(['text', 'raster', 'foreign', 'mask', 'filter']);

/** A file of artwork: its text, or its bytes where it may be a picture made of pixels. */
export type ArtContent = string | Uint8Array;

/** A drawing as it is, whether it can be cut or not: its areas, its lines, and what stands against cutting it. */
export interface DrawnArt extends Tile {
  readonly lines: readonly DrawnLine[];
  /** Size over the size that its file gives; 1 where the file gives none. */
  readonly scale: number;
  /** Colours that were left out as the ground: those named that it has, and what of a picture is so light. */
  readonly grounds: readonly string[];
  readonly findings: readonly Finding[];
}

/** How artwork is read. `order`: colours from the lowest layer up; others come over them as they first appear. */
export interface ArtOptions extends TraceOptions {
  /** Plain fonts that texts may be set in. */
  readonly fonts?: readonly Uint8Array[];
  readonly order?: readonly string[];
  /** Whether copies will lie beside it: lines are then carried over its borders where they go on. */
  readonly isRepeated?: boolean;
}

/** What was read, and what was left out because it has no edge to cut. */
interface Reading {
  readonly art: DrawnArt;
  readonly stops: readonly Finding[];
}

/** Read artwork as it is drawn, to be looked at. @throws Refused only where it can't be read, or has no size. */
export function readArt(
  content: ArtContent,
  file: string,
  normalise: Normalise,
  options: ArtOptions = {},
): DrawnArt {
  return read(content, file, normalise, options, (rule) => !uncutRules.has(rule)).art;
}

/** Read artwork as a tile. @throws Refused with everything that keeps it from being cut. */
export function readTile(
  content: ArtContent,
  file: string,
  normalise: Normalise,
  options: ArtOptions = {},
): Pick<DrawnArt, 'lines' | 'scale' | 'grounds' | 'findings'> & { readonly tile: Tile } {
  const { art, stops } = read(content, file, normalise, options, () => true);
  if (stops.length > 0) throw new Refused(stops);
  const { lines, scale, grounds, findings, ...tile } = art;
  if (tile.layers.length > 0) return { tile, lines, scale, grounds, findings };
  throw new Refused([grounds.length > 0 ? onlyGround(file) : noArea(file)]);
}

/** Of art that shows nothing that could be film. */
export const noArea = (file: string): Finding =>
  stop(
    'no-area',
    { file },
    'shows no area, so there is nothing to cut; fill or stroke the shapes that are to be film',
  );

const onlyGround = (file: string): Finding =>
  stop('no-area', { file }, 'shows nothing but its ground, so there is nothing to cut');

function read(
  content: ArtContent,
  file: string,
  normalise: Normalise,
  options: ArtOptions,
  isFatal: (rule: string) => boolean,
): Reading {
  if (typeof content !== 'string' && isPicture(content)) {
    const traced = tracedPicture(content, file, options);
    const art = { ...traced, layers: stackedBy(traced.layers, options.order), lines: [] };
    return { art, stops: [] };
  }
  const { fonts = [] } = options;
  const typed = withPlainEntities(typeof content === 'string' ? content : svgTextOf(content, file));
  const text = namedByFamily(typed, fonts);
  const { frame: drawn, findings } = withTextsSet(checkSvg(text, file), text, file, fonts, normalise);
  const stops = findings.filter(({ level, rule }) => level === 'stop' && isFatal(rule));
  if (!drawn || stops.length > 0) throw new Refused(stops);
  const { across } = options;
  const frame = across === undefined ? drawn : framed(drawn, across / drawn.width);
  // Where a text's own font is not there no letters stand in for its: what is then inspected is the drawing without its texts.
  const set = findings.some(isUnset) ? [] : fonts;
  const plain = normalised(withMaskTypes(text), file, (svg) => normalise(svg, set));
  try {
    return painted(plain, { frame, drawn, findings }, file, options);
  } catch (fault) {
    // What was typed was looked at: only a size or a transform makes plain numbers past all.
    throw fault instanceof PathFault ? new Refused([pastNumbers(file)]) : fault;
  }
}

const pastNumbers = (file: string): Finding =>
  stop('out-of-range', { file }, 'has a shape whose numbers are past all that is read; draw it smaller');

/** What stands in a drawing's plain text. `drawn`: its size as its file gives it. */
function painted(
  plain: string,
  { frame, drawn, findings }: { frame: SvgFrame; drawn: SvgFrame; findings: readonly Finding[] },
  file: string,
  options: ArtOptions,
): Reading {
  const { across, ground = [], order = [] } = options;
  const paint = paintOf(plain, frame, file);
  const carried = options.isRepeated ? withLinesCarried(paint.painted, frame, file) : undefined;
  const shown = (carried ?? paint).painted;
  // Stacked below all else, the ground cuts away whatever it is painted over.
  const { areas, findings: cut } = layeredAreas(seenAreas(shown, frame, file), file, { order, ground });
  const layers = stackedBy(layersOf(areas), order);
  const isGround = ({ colour }: { readonly colour: string }): boolean => ground.includes(colour);
  const lines = drawnLines(paint.painted).filter((line) => !isGround(line));
  refuseCrowded(lines, file);
  const asked = across === undefined ? findings : findings.filter(({ rule }) => rule !== 'no-size');
  return {
    art: {
      width: frame.width,
      height: frame.height,
      scale: drawn.sized ? frame.width / drawn.width : 1,
      layers: layers.filter((layer) => !isGround(layer)),
      lines,
      grounds: layers.filter(isGround).map(({ colour }) => colour),
      findings: [...asked, ...paint.findings, ...(carried?.findings ?? []), ...cut],
    },
    stops: paint.findings.filter(({ level }) => level === 'stop'),
  };
}

const isUnset = ({ rule, level }: Finding): boolean => rule === 'text' && level === 'stop';

/** What was found of a drawing, its texts looked at with the fonts that were given. */
function withTextsSet(
  checked: CheckedSvg,
  text: string,
  file: string,
  fonts: readonly Uint8Array[],
  normalise: Normalise,
): CheckedSvg {
  const isText = ({ rule, where }: Finding): boolean => rule === 'text' && isTextElement(where.element);
  if (fonts.length === 0 || !checked.frame || !checked.findings.some(isText)) return checked;
  const others = checked.findings.filter((finding) => !isText(finding));
  return { ...checked, findings: [...others, ...textFindings(text, file, fonts, normalise)] };
}

/** A frame made so many times as large. */
const framed = ({ width, height, toMm, sized }: SvgFrame, by: number): SvgFrame => ({
  width: width * by,
  height: height * by,
  toMm: compose(toMm, { a: by, b: 0, c: 0, d: by, e: 0, f: 0 }),
  sized,
});

/** @throws Refused where copies of copies, spelt out, are too many to read. */
function paintOf(plain: string, frame: SvgFrame, file: string): ReturnType<typeof readPaint> {
  try {
    return readPaint(plain, frame, file);
  } catch (fault) {
    if (!(fault instanceof XmlFault)) throw fault;
    const says = `can't be read as SVG: with all its copies drawn it ${fault.message}; simplify it`;
    throw new Refused([stop('unreadable', { file }, says)]);
  }
}

/** What to say where the reader of drawings came to nothing, and had no words for it. */
const brokeOff = (fault: unknown): string | undefined =>
  String(fault).startsWith('RuntimeError')
    ? 'something in it, a filter say, is past what is read'
    : undefined;

function normalised(text: string, file: string, normalise: Normalise): string {
  try {
    return normalise(text);
  } catch (fault) {
    const words = brokeOff(fault) ?? String(fault).replace(/^Error: (?:SVG data parsing failed cause )?/, '');
    const [, says = words, line, column] = /^(.*) at (\d+):(\d+)$/s.exec(words) ?? [];
    const where = { file, ...(line === undefined ? {} : { line: Number(line), column: Number(column) }) };
    throw new Refused([
      stop('unreadable', where, `can't be read as SVG: ${says}; save it again as plain SVG`),
    ]);
  }
}

/** Layers from the lowest up. */
function stackedBy(layers: readonly TileLayer[], order?: readonly string[]): readonly TileLayer[] {
  const colours = inOrder(
    layers.map(({ colour }) => colour),
    order,
  );
  return [...layers].sort((one, other) => colours.indexOf(one.colour) - colours.indexOf(other.colour));
}

/** One layer a colour, in the order the colours first appear. */
function layersOf(areas: readonly SeenArea[]): TileLayer[] {
  const byColour = new Map<string, Shape[]>();
  for (const { colour, shapes } of areas) {
    const layer = byColour.get(colour) ?? [];
    for (const shape of shapes) layer.push(shape);
    byColour.set(colour, layer);
  }
  return [...byColour].map(([colour, shapes]) => ({ name: colour, colour, shapes }));
}
