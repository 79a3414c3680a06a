// The areas of one painted path after the other, in mm, each path worked out once.
import { parsePathData } from '../drawing/path-data.ts';
import { type Affine, determinant, moveContour, shifted, stretchOf } from '../geometry/affine.ts';
import { contourLength } from '../geometry/arc-length.ts';
import { type Contour, reverseContour, type Shape } from '../geometry/contour.ts';
import { dashCount } from '../geometry/dashes.ts';
import { keptShape, segmentCount } from '../geometry/kept-contour.ts';
import { plainShape } from '../geometry/plain-contour.ts';
import type { Fill } from '../geometry/polygon-clip.ts';
import { clippedShapes, filledShapes } from '../geometry/regions.ts';
import { type Pen, strokedShapes } from '../geometry/stroke.ts';
import { isTangled, mostCrossings } from '../geometry/tangle.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import {
  elementOf,
  farthest,
  mostClipped,
  mostDashes,
  outOfRange,
  refuseOutOfRange,
  tooManyClipped,
  tooManyDashes,
  tooTangled,
} from './art-bounds.ts';
import { ClipWindow } from './clip-window.ts';
import type { ClipArea, Covered, Painted } from './covered.ts';

/** A pen wider than a metre is drawn to this share of its width, which keeps the work in bounds. */
const penShare = 3e-6;

/** Finds the areas of painted paths. The same path used in many places, as motifs are, is worked out once. */
export class AreaReader {
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

export const contoursIn = (shapes: readonly Shape[]): readonly Contour[] =>
  shapes.flatMap(({ contours }) => contours);

export const pointsOf = (shapes: readonly Shape[]): number =>
  contoursIn(shapes).reduce((sum, contour) => sum + segmentCount(contour), 0);

/** A shape moved into place; turned round where the map mirrors, so that outer contours all run one way. */
function placed(shape: Shape, m: Affine): Shape {
  const moved = shape.contours.map((contour) => moveContour(m, contour));
  return { contours: determinant(m) < 0 ? moved.map(reverseContour) : moved };
}
