// The areas that painted paths cover, in mm.
import { parsePathData } from '../drawing/path-data.ts';
import { elementName } from '../drawing/xml.ts';
import { Refused, stop, type Where } from '../finding.ts';
import { type Affine, determinant, moveContour, shifted, stretchOf } from '../geometry/affine.ts';
import { contourLength } from '../geometry/arc-length.ts';
import { hullBox } from '../geometry/box.ts';
import { type Contour, reverseContour, type Shape } from '../geometry/contour.ts';
import { crowdedSquares, mostPairsOfLines, mostToSquareMm } from '../geometry/crowded.ts';
import { dashCount } from '../geometry/dashes.ts';
import { keptShape } from '../geometry/kept-contour.ts';
import { directed, shapeArea, tightBox } from '../geometry/measure.ts';
import { plainShape } from '../geometry/plain-contour.ts';
import { distance } from '../geometry/point.ts';
import type { Fill } from '../geometry/polygon-clip.ts';
import { clippedShapes, filledShapes } from '../geometry/regions.ts';
import { type Pen, strokedShapes } from '../geometry/stroke.ts';
import { isTangled, mostCrossings } from '../geometry/tangle.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import { ClipWindow } from './clip-window.ts';
import type { ClipArea, Covered, Painted } from './covered.ts';

/**
 * mm: the reader's single-precision numbers are rounded by 6e-8 of themselves, here by 0.006 mm, less than the hundredth that is
 * cut to. Lines of hundreds of metres would also be looked at for minutes.
 */
const farthest = 1e5;

/** mm: more edges than five kilometres no blade cuts; lines of tens of metres that lie about each other took minutes. */
const mostEdges = 5e6;

/** More dashes than this in one file are a pattern of lines shorter than any blade can follow, or a slip. */
const mostDashes = 20_000;

/** Most points of what is clipped, and ten times those of what clips it, each as often as it is: as many take ten seconds at most. */
const mostClipped = 1_200_000;

/** A pen wider than a metre is drawn to this share of its width, which keeps the work in bounds. */
const penShare = 3e-6;

/** What one painted thing shows. */
export interface SeenArea {
  readonly colour: string;
  readonly shapes: readonly Shape[];
}

/** More areas than this no cutter cuts in a day: a lift of the blade and a second of cutting each. Common practice, no source. */
export const mostAreas = 60_000;

/** More colours than this are films that nobody lays over one another: each is merged, cut and registered by itself. */
const mostColours = 1000;

/** The areas that show within a drawing of a size, in painting order. @throws Refused where they are past all bounds. */
export function seenAreas(painted: readonly Painted[], frame: Size, file: string): SeenArea[] {
  const looking = new Looking(frame, file);
  const seen = new Map<Painted, SeenArea>();
  const look = (isFilled: boolean): void => {
    for (const item of painted) {
      if ((typeof item.by === 'string') !== isFilled) continue;
      const shapes = looking.seenOf(item);
      if (shapes.length > 0) seen.set(item, { colour: item.colour, shapes });
    }
  };
  // What is filled takes little, and is looked over before all that is drawn by a pen is worked out.
  look(true);
  looking.refuseScribble(fewPoints);
  look(false);
  const all = painted.flatMap((item) => seen.get(item) ?? []);
  const edges = all.flatMap(({ shapes }) => shapes.flatMap(({ contours }) => contours));
  if (isTangled(edges, mostCrossings)) throw tooTangled({ file });
  // What is painted over itself many times, as blends are, becomes one.
  const crowded = crowdedSquares(edges) > 0 ? crowdedSquares(unitedEdges(all)) : 0;
  if (crowded > 0) throw tooFine(crowded, file);
  return all;
}

/** @throws Refused where lines as they are drawn, with an area or none, lie too thickly to be held against one another. */
export function refuseCrowded(
  lines: readonly { readonly contours: readonly Contour[] }[],
  file: string,
): void {
  const crowded = crowdedSquares(
    lines.flatMap(({ contours }) => contours),
    mostPairsOfLines,
  );
  if (crowded > 0) throw tooFine(crowded, file);
}

/** As many points take half a second to look over for crossings; most drawings have fewer. */
const earlyPoints = 50_000;

/** Fewer points than this are not looked over by themselves: they take no time. */
const fewPoints = 10_000;

/** Looks at one painted thing after the other, and holds what is seen against all bounds as it goes. */
class Looking {
  readonly #frame: Size;
  readonly #file: string;
  readonly #areas: AreaReader;
  readonly #edges: Contour[] = [];
  readonly #colours = new Set<string>();
  #length = 0;
  #count = 0;
  /** Of what comes first of a large drawing, until it was looked over for a scribble. */
  #points = 0;

  constructor(frame: Size, file: string) {
    this.#frame = frame;
    this.#file = file;
    this.#areas = new AreaReader(file);
  }

  /** @throws Refused where this, with what was seen before it, is past a bound. */
  seenOf(item: Painted): readonly Shape[] {
    const file = this.#file;
    const shapes = this.#areas.areasOf(item).filter((shape) => shapeArea(shape) > 0);
    this.#length += shapes.reduce((sum, { contours }) => sum + straightLength(contours), 0);
    if (this.#length > mostEdges) throw tooLong(item, file);
    refuseOutOfRange(item, contoursIn(shapes), file);
    const seen = shapes.filter((shape) => isSeen(shape, this.#frame)).map(keptShape);
    this.#count += seen.length;
    if (this.#count > mostAreas) throw tooMany(file);
    if (seen.length > 0) this.#colours.add(item.colour);
    if (this.#colours.size > mostColours) throw tooColourful(file);
    if (this.#points < earlyPoints) {
      for (const contour of contoursIn(seen)) this.#edges.push(contour);
      this.#points += pointsOf(seen);
      if (this.#points >= earlyPoints) this.refuseScribble(0);
    }
    return seen;
  }

  /** @throws Refused where what came first, of more points than `least`, is a scribble. */
  refuseScribble(least: number): void {
    if (this.#points > least && isTangled(this.#edges, mostCrossings)) throw tooTangled({ file: this.#file });
  }
}

/** The edges of the areas of each colour, made one. */
function unitedEdges(areas: readonly SeenArea[]): Contour[] {
  const colours = new Map<string, Contour[]>();
  for (const { colour, shapes } of areas) {
    const edges = colours.get(colour) ?? [];
    colours.set(colour, edges);
    for (const shape of shapes) edges.push(...directed(shape));
  }
  return [...colours.values()].flatMap((edges) => contoursIn(filledShapes(edges, 'nonzero', chordTolerance)));
}

/** Finds the areas of painted paths. The same path used in many places, as motifs are, is worked out once. */
class AreaReader {
  /** By how a path covers, and by its data. */
  readonly #known = new Map<string, Map<string, readonly Shape[]>>();
  /** By the clip, which a group gives to all in it. */
  readonly #windows = new Map<ClipArea, ClipWindow>();
  readonly #file: string;
  #dashes = 0;
  #clippedPoints = 0;

  constructor(file: string) {
    this.#file = file;
  }

  /** @throws Refused where the path reaches too far, or has too many dashes. */
  areasOf(item: Painted): Shape[] {
    return item.copies.reduce<Shape[]>(
      (areas, { steps, clips }) => {
        const copied = steps.flatMap((step) =>
          areas.map(({ contours }): Shape => ({ contours: shifted(contours, step) })),
        );
        return this.#clipped(clips, copied, item);
      },
      this.#shown(item, item),
    );
  }

  #shown(covered: Covered, item: Painted): Shape[] {
    const { toMm, clips } = covered;
    const areas = this.#ownAreas(covered, item).map((shape) => placed(shape, toMm));
    return this.#clipped(clips, areas, item);
  }

  #clipped(clips: readonly ClipArea[], shapes: Shape[], item: Painted): Shape[] {
    return clips.reduce((left, clip) => {
      const window = this.#windowOf(clip, item);
      const [whole, cut]: [Shape[], Shape[]] = [[], []];
      for (const shape of left) {
        const leaves = window.leavesOf(shape);
        if (leaves !== 'none') (leaves === 'all' ? whole : cut).push(shape);
      }
      if (cut.length === 0) return whole;
      this.#countClipped(pointsOf(cut) + 10 * pointsOf(window.shapes), item);
      return [...whole, ...clippedShapes(cut, window.shapes, 'intersection', chordTolerance)];
    }, shapes);
  }

  #windowOf(clip: ClipArea, item: Painted): ClipWindow {
    const known = this.#windows.get(clip);
    if (known) return known;
    const window = new ClipWindow(this.#clipShapes(clip, item));
    this.#countClipped(pointsOf(window.shapes), item);
    this.#windows.set(clip, window);
    return window;
  }

  #countClipped(points: number, item: Painted): void {
    this.#clippedPoints += points;
    if (this.#clippedPoints > mostClipped) throw tooManyClipped(item, this.#file);
  }

  #clipShapes({ parts, within }: ClipArea, item: Painted): Shape[] {
    let shapes: Shape[] = [];
    for (const part of parts) {
      const own = this.#shown(part, item);
      if (part.hides) shapes = clippedShapes(shapes, own, 'difference', chordTolerance);
      else for (const shape of own) shapes.push(shape);
    }
    if (parts.length > 1 && isTangled(contoursIn(shapes), mostCrossings))
      throw tooTangled({ file: this.#file, element: elementOf(item) });
    return within ? this.#clipped([within], shapes, item) : shapes;
  }

  /** Areas in the path's own units. */
  #ownAreas({ data, by, toMm }: Covered, item: Painted): readonly Shape[] {
    // Chords and offsets are made in the path's own units, which the map makes so much larger at most.
    const tolerance = chordTolerance / Math.max(stretchOf(toMm), 1e-9);
    const how = `${JSON.stringify(by)} ${tolerance.toPrecision(3)}`;
    const covered = this.#known.get(how) ?? new Map<string, readonly Shape[]>();
    this.#known.set(how, covered);
    const known = covered.get(data);
    if (known) return known;
    const contours = parsePathData(data);
    // Before the areas are worked out: what reaches too far would be worked out in chords without end.
    const moved = contours.map((contour) => moveContour(toMm, contour));
    refuseOutOfRange(item, moved, this.#file);
    if (typeof by !== 'string' && by.width * stretchOf(toMm) > 2 * farthest)
      throw outOfRange(item, this.#file);
    if (isTangled(contours, mostCrossings)) throw tooTangled({ file: this.#file, element: elementOf(item) });
    const areas =
      typeof by === 'string' ? filled(contours, by, tolerance) : this.#stroked(contours, by, tolerance, item);
    covered.set(data, areas.map(keptShape));
    return areas;
  }

  #stroked(contours: readonly Contour[], pen: Pen, tolerance: number, item: Painted): Shape[] {
    const { dashes, width, cap } = pen;
    if (dashes) {
      const caps = cap === 'butt' ? 0 : width;
      this.#dashes += contours.reduce(
        (sum, one) => sum + dashCount(contourLength(one, width), dashes, caps),
        0,
      );
      if (!(this.#dashes <= mostDashes)) throw tooManyDashes(item, this.#file);
    }
    return strokedShapes(contours, pen, Math.max(tolerance, width * penShare));
  }
}

/** What a path fills, most paths being one contour that crosses nothing. */
function filled(contours: readonly Contour[], fill: Fill, tolerance: number): readonly Shape[] {
  const plain = plainShape(contours, tolerance);
  return plain ? [plain] : filledShapes(contours, fill, tolerance);
}

const elementOf = ({ id }: Painted): string =>
  elementName({ name: 'path', attributes: id === undefined ? {} : { id } });

const contoursIn = (shapes: readonly Shape[]): readonly Contour[] =>
  shapes.flatMap(({ contours }) => contours);

const pointsOf = (shapes: readonly Shape[]): number =>
  shapes.reduce(
    (sum, { contours }) => contours.reduce((part, { segments }) => part + segments.length, sum),
    0,
  );

/** Of segments each taken straight. */
const straightLength = (contours: readonly Contour[]): number =>
  contours.reduce(
    (sum, { segments }) => sum + segments.reduce((part, { from, to }) => part + distance(from, to), 0),
    0,
  );

function tooLong(item: Painted, file: string): Refused {
  const says = `has more than ${mostEdges / 1e6} km of edges, with what is painted before it; draw it smaller, or cut away what lies far outside`;
  return new Refused([stop('too-long', { file, element: elementOf(item) }, says)]);
}

function tooMany(file: string): Refused {
  const says = `has more than ${mostAreas} areas, which no cutter cuts in a day; leave out the smallest, or unite those of one colour in your drawing program`;
  return new Refused([stop('too-many-areas', { file }, says)]);
}

function tooColourful(file: string): Refused {
  const says = `has more than ${mostColours} colours, each of which would be a film of its own; draw it in the colours of your films`;
  return new Refused([stop('too-many-colours', { file }, says)]);
}

function tooTangled(where: Where): Refused {
  const says = `has lines that cross more than ${mostCrossings} times, or lie over or beside each other as thickly, as a scribble or dots that overlap do; take them out, unite them in your drawing program, or give each colour a drawing of its own`;
  return new Refused([stop('too-tangled', where, says)]);
}

function tooFine(squares: number, file: string): Refused {
  const says = `has more than ${mostToSquareMm} edges to the square mm on ${squares} of them, finer than any blade follows; give the drawing the size it is to have, or draw fewer and larger shapes there`;
  return new Refused([stop('too-fine', { file }, says)]);
}

function tooManyClipped(item: Painted, file: string): Refused {
  const says = `is clipped by shapes of too many points, with what is clipped before it; simplify its clip path or mask, or cut it in your drawing program`;
  return new Refused([stop('too-many-clipped', { file, element: elementOf(item) }, says)]);
}

function tooManyDashes(item: Painted, file: string): Refused {
  const says = `is dashed into more than ${mostDashes} pieces, with those before it; make its dashes longer, or draw it solid`;
  return new Refused([stop('too-many-dashes', { file, element: elementOf(item) }, says)]);
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
function refuseOutOfRange(item: Painted, contours: readonly Contour[], file: string): void {
  const { minX, minY, maxX, maxY } = hullBox(contours);
  if (contours.length === 0 || [minX, minY, maxX, maxY].every((n) => Math.abs(n) <= farthest)) return;
  throw outOfRange(item, file);
}

function outOfRange(item: Painted, file: string): Refused {
  const says = `reaches more than ${farthest / 1e3} m away; draw it smaller`;
  return new Refused([stop('out-of-range', { file, element: elementOf(item) }, says)]);
}
