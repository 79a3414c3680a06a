// A tile: the artwork of one period, as layers of areas in mm.
import type { DrawnLine } from '../drawing/drawn-line.ts';
import { parsePathData } from '../drawing/path-data.ts';
import { type Finding, Refused, stop } from '../finding.ts';
import { type Affine, determinant, moveContour } from '../geometry/affine.ts';
import { hullBox } from '../geometry/box.ts';
import { type Contour, reverseContour, type Shape } from '../geometry/contour.ts';
import { shapeArea, tightBox } from '../geometry/measure.ts';
import { clippedShapes, filledShapes } from '../geometry/regions.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import { drawnLines } from './drawn-lines.ts';
import { paintingOrderFindings } from './painting-order.ts';
import { checkSvg } from './svg-check.ts';
import type { Normalise } from './svg-normalise.ts';
import { type ClipArea, type Painted, readPaint } from './svg-paint.ts';

/** mm: a millionth of it is the rounding of the reader's single-precision numbers. */
const farthest = 1e6;

export interface TileLayer {
  /** The layer's name in files: its colour. */
  readonly name: string;
  /** `#rrggbb` */
  readonly colour: string;
  readonly shapes: readonly Shape[];
}

/** Drawn mm, y down, the top left corner of what a renderer would show at the origin. Shapes may reach past the edges. */
export interface Tile {
  readonly width: number;
  readonly height: number;
  readonly layers: readonly TileLayer[];
}

/** Rules of what can be seen in a drawing but has no edge to cut; all else that is refused keeps it from being read. */
export const uncutRules: ReadonlySet<string> = new Set([
  'text',
  'raster',
  'foreign',
  'stroke',
  'shaded-fill',
  'mask',
  'filter',
]);

/** A drawing as it is, whether it can be cut or not: its areas, its lines, and what stands against cutting it. */
export interface DrawnArt extends Tile {
  readonly lines: readonly DrawnLine[];
  /** Whether the file gives a real-world size. */
  readonly sized: boolean;
  readonly findings: readonly Finding[];
}

/** Read an SVG text as it is drawn, to be looked at. @throws Refused only where it can't be read, or has no size. */
export function readArt(text: string, file: string, normalise: Normalise): DrawnArt {
  const { frame, findings } = checkSvg(text, file);
  const stops = findings.filter(({ level, rule }) => level === 'stop' && !uncutRules.has(rule));
  if (!frame || stops.length > 0) throw new Refused(stops);
  const plain = normalised(text, file, normalise);
  const paint = readPaint(plain, frame.toMm, file);
  const areas = seenAreas(paint.painted, frame, file);
  return {
    width: frame.width,
    height: frame.height,
    sized: frame.sized,
    layers: layersOf(areas),
    lines: drawnLines(plain, frame.toMm),
    findings: [...findings, ...paint.findings, ...orderFindings(areas, file)],
  };
}

/** Read an SVG text as a tile. @throws Refused with everything that keeps it from being cut. */
export function readTile(
  text: string,
  file: string,
  normalise: Normalise,
): { readonly tile: Tile; readonly findings: readonly Finding[] } {
  const { frame, findings } = checkSvg(text, file);
  const stops = findings.filter(({ level }) => level === 'stop');
  if (!frame || stops.length > 0) throw new Refused(stops);
  const paint = readPaint(normalised(text, file, normalise), frame.toMm, file);
  const refused = paint.findings.filter(({ level }) => level === 'stop');
  if (refused.length > 0) throw new Refused(refused);
  const areas = seenAreas(paint.painted, frame, file);
  const layers = layersOf(areas);
  if (layers.length === 0)
    throw new Refused([
      stop(
        'no-area',
        { file },
        'shows no filled area, so there is nothing to cut; fill the shapes that are to be film',
      ),
    ]);
  return {
    tile: { width: frame.width, height: frame.height, layers },
    findings: [...findings, ...paint.findings, ...orderFindings(areas, file)],
  };
}

function normalised(text: string, file: string, normalise: Normalise): string {
  try {
    return normalise(text);
  } catch (fault) {
    const words = String(fault).replace(/^Error: (?:SVG data parsing failed cause )?/, '');
    const [, says = words, line, column] = /^(.*) at (\d+):(\d+)$/s.exec(words) ?? [];
    const where = { file, ...(line === undefined ? {} : { line: Number(line), column: Number(column) }) };
    throw new Refused([
      stop('unreadable', where, `can't be read as SVG: ${says}; save it again as plain SVG`),
    ]);
  }
}

/** What one painted thing shows. */
interface SeenArea {
  readonly colour: string;
  readonly shapes: readonly Shape[];
}

/** The areas that show, in painting order. */
function seenAreas(painted: readonly Painted[], frame: Size, file: string): SeenArea[] {
  const areas = new AreaReader(file);
  return painted.flatMap((item) => {
    const shapes = areas.areasOf(item).filter((shape) => shapeArea(shape) > 0);
    if (shapes.length > 0)
      refuseOutOfRange(
        item,
        shapes.flatMap(({ contours }) => contours),
        file,
      );
    const seen = shapes.filter((shape) => isSeen(shape, frame));
    return seen.length === 0 ? [] : [{ colour: item.colour, shapes: seen }];
  });
}

/** One layer a colour, in the order the colours first appear. */
function layersOf(areas: readonly SeenArea[]): TileLayer[] {
  const byColour = new Map<string, Shape[]>();
  for (const { colour, shapes } of areas) {
    const layer = byColour.get(colour) ?? [];
    layer.push(...shapes);
    byColour.set(colour, layer);
  }
  return [...byColour].map(([colour, shapes]) => ({ name: colour, colour, shapes }));
}

const orderFindings = (areas: readonly SeenArea[], file: string): Finding[] =>
  paintingOrderFindings(
    areas.flatMap(({ colour, shapes }) => shapes.map((shape) => ({ colour, shape }))),
    file,
  );

/** Finds the areas of painted paths. The same path used in many places, as motifs are, is worked out once. */
class AreaReader {
  readonly #known = new Map<string, readonly Shape[]>();
  readonly #file: string;

  constructor(file: string) {
    this.#file = file;
  }

  /** @throws Refused where the path reaches too far. */
  areasOf(item: Painted): Shape[] {
    const { toMm, clips } = item;
    const areas = this.#ownAreas(item).map((shape) => placed(shape, toMm));
    return clippedBy(clips, areas);
  }

  /** Areas in the path's own units. */
  #ownAreas(item: Painted): readonly Shape[] {
    const { data, fill, toMm } = item;
    const scale = Math.sqrt(Math.abs(determinant(toMm)));
    // Stretched use (a matrix that is no similarity) may need finer chords than its mean scale tells: a factor of 2.
    const tolerance = chordTolerance / (2 * Math.max(scale, 1e-9));
    const key = `${fill} ${tolerance.toPrecision(3)} ${data}`;
    const areas = this.#known.get(key) ?? this.#filled(item, tolerance);
    this.#known.set(key, areas);
    return areas;
  }

  #filled(item: Painted, tolerance: number): readonly Shape[] {
    const contours = parsePathData(item.data);
    // Before the areas are worked out: what reaches too far would be worked out in chords without end.
    const moved = contours.map((contour) => moveContour(item.toMm, contour));
    if (moved.length > 0) refuseOutOfRange(item, moved, this.#file);
    return filledShapes(contours, item.fill, tolerance);
  }
}

/** A shape moved into place; turned round where the map mirrors, so that outer contours all run one way. */
function placed(shape: Shape, m: Affine): Shape {
  const moved = shape.contours.map((contour) => moveContour(m, contour));
  return { contours: determinant(m) < 0 ? moved.map(reverseContour) : moved };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The tile's own edges clip: what stands beside them is not shown. */
function isSeen({ contours }: Shape, { width, height }: Size): boolean {
  const { minX, minY, maxX, maxY } = tightBox(contours);
  return maxX > 0 && maxY > 0 && minX < width && minY < height;
}

/** Shapes may reach far past the tile, but not so far that rounding shows inside it. */
function refuseOutOfRange({ id }: Painted, contours: readonly Contour[], file: string): void {
  const { minX, minY, maxX, maxY } = hullBox(contours);
  if ([minX, minY, maxX, maxY].every((n) => Math.abs(n) <= farthest)) return;
  const element = id === undefined ? 'path' : `path#${id}`;
  throw new Refused([
    stop('out-of-range', { file, element }, `reaches more than ${farthest / 1e6} km away; draw it smaller`),
  ]);
}

function clipShapes({ parts, within }: ClipArea): Shape[] {
  const shapes = parts.flatMap(({ contours, fill, clips }) =>
    clippedBy(clips, filledShapes(contours, fill, chordTolerance)),
  );
  return within ? clippedBy([within], shapes) : shapes;
}

const clippedBy = (clips: readonly ClipArea[], shapes: readonly Shape[]): Shape[] =>
  clips.reduce<Shape[]>(
    (left, clip) => clippedShapes(left, clipShapes(clip), 'intersection', chordTolerance),
    [...shapes],
  );
