// A tile: the artwork of one period, as layers of areas in mm.
import type { DrawnLine } from '../drawing/drawn-line.ts';
import { type Finding, Refused, stop } from '../finding.ts';
import type { Shape } from '../geometry/contour.ts';
import { drawnLines } from './drawn-lines.ts';
import { type SeenArea, seenAreas } from './painted-areas.ts';
import { paintingOrderFindings } from './painting-order.ts';
import { checkSvg } from './svg-check.ts';
import type { Normalise } from './svg-normalise.ts';
import { readPaint } from './svg-paint.ts';

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
export const uncutRules: ReadonlySet<string> = new Set(['text', 'raster', 'foreign', 'mask', 'filter']);

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
  const paint = readPaint(normalised(text, file, normalise), frame, file);
  const areas = seenAreas(paint.painted, frame, file);
  return {
    width: frame.width,
    height: frame.height,
    sized: frame.sized,
    layers: layersOf(areas),
    lines: drawnLines(paint.painted),
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
  const paint = readPaint(normalised(text, file, normalise), frame, file);
  const refused = paint.findings.filter(({ level }) => level === 'stop');
  if (refused.length > 0) throw new Refused(refused);
  const areas = seenAreas(paint.painted, frame, file);
  const layers = layersOf(areas);
  if (layers.length === 0)
    throw new Refused([
      stop(
        'no-area',
        { file },
        'shows no area, so there is nothing to cut; fill or stroke the shapes that are to be film',
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
