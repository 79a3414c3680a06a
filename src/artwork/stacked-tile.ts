// Several drawings as one tile: each laid over those before it, in register by their corners.
import type { DrawnLine } from '../drawing/drawn-line.ts';
import { type Finding, Refused, stop } from '../finding.ts';
import { filledShapes } from '../geometry/regions.ts';
import { chordTolerance, precision } from '../geometry/tolerance.ts';
import { inMm } from '../lengths/length.ts';
import { inOrder } from './painting-order.ts';
import type { DrawnArt, Tile, TileLayer } from './tile.ts';

/** One of the drawings, as read. */
export interface Sheet {
  readonly file: string;
  readonly art: DrawnArt;
  /** Makes it one layer of this colour, whatever colours it is drawn in. */
  readonly colour?: string;
}

/** A drawing's lines, to be looked at in its own file. */
export interface SheetLines {
  readonly file: string;
  readonly lines: readonly DrawnLine[];
  /** Size over the size that its file gives. */
  readonly scale: number;
}

export interface StackedArt {
  readonly tile: Tile;
  readonly sheets: readonly SheetLines[];
  /** Colours that were left out as the ground of one or another. */
  readonly grounds: readonly string[];
  readonly findings: readonly Finding[];
}

/** The drawing as one layer. */
function inOneColour(art: DrawnArt, colour: string): DrawnArt {
  const shapes = art.layers.flatMap((layer) => layer.shapes);
  const all = shapes.flatMap(({ contours }) => contours);
  return {
    ...art,
    layers: [{ name: colour, colour, shapes: filledShapes(all, 'nonzero', chordTolerance) }],
    lines: art.lines.map((line) => ({ ...line, colour })),
  };
}

const sizeOf = ({ width, height }: Tile): string => `${inMm(width)} by ${inMm(height)}`;

/** Drawings of other sizes have no place on one another. */
function sizeFaults([first, ...others]: readonly Sheet[]): Finding[] {
  return others.flatMap(({ file, art }) => {
    const off =
      first && Math.max(Math.abs(art.width - first.art.width), Math.abs(art.height - first.art.height));
    if (!first || off === undefined || off <= precision) return [];
    const says = `is ${sizeOf(art)}, and ${first.file} is ${sizeOf(first.art)}; drawings laid over one another are one tile, so give both the same size`;
    return [stop('other-size', { file }, says)];
  });
}

/** Colours of ours that tell films apart. */
const palette = ['#17566b', '#d8b26a', '#d4532f', '#6a7f2a', '#8a2f6b', '#3a5a8c'];

/** Those of them that none of the drawings has. */
const freeColours = (sheets: readonly Sheet[]): readonly string[] => {
  const taken = sheets.flatMap(({ art, colour }) => [colour, ...art.layers.map((layer) => layer.colour)]);
  return palette.filter((colour) => !taken.includes(colour));
};

/** The drawings, each that has a colour of one before it in a colour of its own: for whoever only looks at them. */
export function toldApart(sheets: readonly Sheet[]): readonly Sheet[] {
  const free = [...freeColours(sheets)];
  const taken = new Set<string>();
  return sheets.map((sheet) => {
    const colours =
      sheet.colour === undefined ? sheet.art.layers.map(({ colour }) => colour) : [sheet.colour];
    const colour = colours.some((one) => taken.has(one)) ? free.shift() : undefined;
    for (const one of colours) taken.add(one);
    return colour === undefined ? sheet : { ...sheet, colour };
  });
}

/** A colour is one layer: of two drawings that share one it could not be told which film is which. */
function colourFaults(sheets: readonly Sheet[]): Finding[] {
  const known = new Map<string, string>();
  const free = freeColours(sheets)[0] ?? '#17566b';
  return sheets.flatMap(({ file, art: { layers } }) =>
    layers.flatMap(({ colour }) => {
      const other = known.get(colour);
      known.set(colour, other ?? file);
      if (other === undefined || other === file) return [];
      const says = `has ${colour}, as ${other} has; each drawing is films of its own, so give it another colour: { "file": "${file}", "colour": "${free}" }`;
      return [stop('same-colour', { file }, says)];
    }),
  );
}

/**
 * Drawings as one tile, the first lowest: its own layers, then those of the next. `order` goes before that. A picture made of pixels
 * is taken as it was traced: no repeat is looked for in it.
 * @throws Refused where their sizes differ, or two have a colour in common.
 */
export function stackedTile(drawings: readonly Sheet[], order?: readonly string[]): StackedArt {
  const sheets = drawings.map((sheet) =>
    sheet.colour === undefined ? sheet : { ...sheet, art: inOneColour(sheet.art, sheet.colour) },
  );
  const faults = [...sizeFaults(sheets), ...colourFaults(sheets)];
  const [first] = sheets;
  if (!first || faults.length > 0) throw new Refused(faults);
  const layers: readonly TileLayer[] = sheets.flatMap(({ art }) => art.layers);
  const colours = inOrder(
    layers.map(({ colour }) => colour),
    order,
  );
  const { width, height } = first.art;
  const { pixels, goesOn } = sheets.length === 1 ? first.art : { pixels: undefined, goesOn: undefined };
  const grain = Math.max(0, ...sheets.map(({ art }) => art.grain ?? 0));
  return {
    tile: {
      width,
      height,
      layers: [...layers].sort((a, b) => colours.indexOf(a.colour) - colours.indexOf(b.colour)),
      ...(pixels ? { pixels } : {}),
      ...(goesOn ? { goesOn } : {}),
      ...(grain > 0 ? { grain } : {}),
    },
    sheets: sheets.map(({ file, art: { lines, scale } }) => ({ file, lines, scale })),
    grounds: sheets.flatMap(({ art }) => art.grounds),
    findings: sheets.flatMap(({ art }) => art.findings),
  };
}
