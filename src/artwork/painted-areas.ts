// The areas that painted paths show, in mm, held against the bounds of what can be cut.
import type { Contour, Shape } from '../geometry/contour.ts';
import { crowdedSquares, mostPairsOfLines } from '../geometry/crowded.ts';
import { keptShape } from '../geometry/kept-contour.ts';
import { directed, shapeArea, tightBox } from '../geometry/measure.ts';
import { distance } from '../geometry/point.ts';
import { filledShapes } from '../geometry/regions.ts';
import { isTangled, mostCrossings } from '../geometry/tangle.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import { AreaReader, contoursIn, pointsOf } from './area-reader.ts';
import {
  mostAreas,
  mostColours,
  mostEdges,
  refuseOutOfRange,
  tooColourful,
  tooFine,
  tooLong,
  tooMany,
  tooTangled,
} from './art-bounds.ts';
import type { Painted } from './covered.ts';

/** What one painted thing shows. */
export interface SeenArea {
  readonly colour: string;
  readonly shapes: readonly Shape[];
}

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

/** Of segments each taken straight. */
const straightLength = (contours: readonly Contour[]): number =>
  contours.reduce(
    (sum, { segments }) => sum + segments.reduce((part, { from, to }) => part + distance(from, to), 0),
    0,
  );

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The tile's own edges clip: what stands beside them is not shown. */
function isSeen({ contours }: Shape, { width, height }: Size): boolean {
  const { minX, minY, maxX, maxY } = tightBox(contours);
  return maxX > 0 && maxY > 0 && minX < width && minY < height;
}
