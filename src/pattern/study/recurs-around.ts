// Whether a tile that joins its copies recurs by a step all around: its copies show what it has no room to show twice by itself.
import type { Box } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { type End, endsOf, type LinedLayer, likeOf, linedLayers, type Way } from '../film/film-ends.ts';
import { type Lattice, stepsIn } from '../lattice/lattice.ts';
import { isInside, type Size } from '../tile/cut-shapes.ts';

interface Layers {
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
}

/** A line that film is looked at along. */
interface Place {
  readonly way: Way;
  readonly at: number;
}

/** Lines each way over all of the tile; and lines through contours: of many, so many of them, those that a border cuts first. */
const linesOver = 16;
const mostThrough = 60;

/** Lines along each border, so many slacks in: they meet all that it cuts, and no node of what was drawn on a grid. */
const besideBorders = [2.137, 6.291];

/** Lines over all stand at steps of the golden section, so that none keeps to a rhythm of the drawing. */
const golden = (Math.sqrt(5) - 1) / 2;

/** An outline that crosses a line at a flatter angle than this says little of where it is, as a sine. */
const leastSine = 0.15;

/** Of all ends of film so many have to recur, and of each contour more than half: what traces edges misses a few. */
const leastShare = 0.985;

/** A line along which more ends miss than this tells at once that a step is none. */
const mostMissing = 3;

/** Fewer ends than this tell nothing; as many halve the doubt. */
const leastTelling = 8;

/** An end of film on a line of the plane, and the contour that ends there; none where the tile's border ends it. */
type PlaneEnd = Pick<End, 'at' | 'sine' | 'begins' | 'contour'>;

/**
 * Tells of steps how surely all film recurs by them, over a whole tile that joins and its copies: 0 to 1, 0 where it does not. `slack`:
 * edges stand within so much of where they were drawn, mm. The cost of a step grows with the ends of lines, that of the first with n log n
 * in the curves.
 */
export function recurrenceAround({ layers, width, height }: Layers & Size, lattice: Lattice, slack: number) {
  const lined = linedLayers(layers);
  const places = [
    ...linesOverAll({ width, height }),
    ...alongBorders({ width, height }, slack),
    ...throughContours(layers, { width, height }),
  ];
  const plane = new CopiesInPlane({ width, height }, lattice);
  const beyond = margin(slack);
  // Every step is held against the same lines.
  const known = new Map<Place, readonly (readonly PlaneEnd[])[]>();
  const ownOn = (place: Place): readonly (readonly PlaneEnd[])[] => {
    const length = place.way === 'level' ? width : height;
    const own =
      known.get(place) ?? lined.map((layer) => plane.endsOn(layer, place, -beyond, length + beyond));
    known.set(place, own);
    return own;
  };
  return (step: Point): number => {
    const balance = new Map<number, number>();
    let [expected, found] = [0, 0];
    for (const place of places) {
      const { way, at } = place;
      let missing = 0;
      const isLevel = way === 'level';
      const [length, along, across] = isLevel ? [width, step.x, step.y] : [height, step.y, step.x];
      const owns = ownOn(place);
      for (const [i, layer] of lined.entries()) {
        const own = owns[i] ?? [];
        const moved = plane.endsOn(layer, { way, at: at + across }, along - beyond, along + length + beyond);
        for (const [ends, others, by, from] of [
          [own, moved, along, 0],
          [moved, own, -along, along],
        ] as const)
          for (const { end, isFound } of matched(
            telling(ends, slack, from, from + length),
            others,
            by,
            slack,
          )) {
            expected++;
            if (isFound) found++;
            else missing++;
            balance.set(end.contour, (balance.get(end.contour) ?? 0) + (isFound ? 1 : -1));
          }
      }
      if (missing > mostMissing && found < leastShare * expected) return 0;
    }
    if (expected < leastTelling || found < leastShare * expected) return 0;
    return [...balance.values()].every((sum) => sum >= 0) ? 1 - 2 ** -(found / leastTelling) : 0;
  };
}

/** What stands so far past the ends of a line may be the like of what stands just within. */
const margin = (slack: number): number => slack / leastSine;

/** Ends that stand between two places, at no flat angle and not so near to another that the two may be none elsewhere. */
const telling = (ends: readonly PlaneEnd[], slack: number, from: number, to: number): readonly PlaneEnd[] =>
  ends.filter(({ at, sine }, i) => {
    if (sine < leastSine || at < from || at >= to) return false;
    const least = (2 * slack) / sine;
    return at - (ends[i - 1]?.at ?? -Infinity) > least && (ends[i + 1]?.at ?? Infinity) - at > least;
  });

/** Of each end whether others, in order, hold its like so far along their line. */
function* matched(ends: readonly PlaneEnd[], others: readonly PlaneEnd[], by: number, slack: number) {
  let next = 0;
  for (const end of ends) {
    while ((others[next]?.at ?? Infinity) < end.at + by - margin(slack)) next++;
    yield { end, isFound: likeOf(others, next, end.at + by, end.begins, slack / end.sine) !== undefined };
  }
}

/** Lines at steps of the golden section. */
const linesOverAll = ({ width, height }: Size): readonly Place[] =>
  Array.from({ length: linesOver }, (_, i): readonly Place[] => [
    { way: 'level', at: (((i + 1) * golden) % 1) * height },
    { way: 'upright', at: (((i + 1) * golden) % 1) * width },
  ]).flat();

const alongBorders = ({ width, height }: Size, slack: number): readonly Place[] =>
  besideBorders.flatMap((times): readonly Place[] => {
    const [x, y] = [Math.min(times * slack, width / 4), Math.min(times * slack, height / 4)];
    return [
      { way: 'level', at: y },
      { way: 'level', at: height - y },
      { way: 'upright', at: x },
      { way: 'upright', at: width - x },
    ];
  });

/** So far over a contour, as a share of it, a line meets no node of others that were drawn on one grid with it. */
const beforeMiddle = 0.4537;

/** Lines through contours, level and upright: what is small is met by no others. */
function throughContours(layers: Layers['layers'], tile: Size): readonly Place[] {
  const boxes = layers.flatMap(({ shapes }) =>
    shapes.flatMap(({ contours }) => contours.map((contour) => tightBox([contour]))),
  );
  const isCut = (box: Box): boolean => !isInside(box, tile);
  const cutFirst = [...boxes.filter(isCut), ...boxes.filter((box) => !isCut(box))];
  return cutFirst.slice(0, mostThrough).flatMap(({ minX, minY, maxX, maxY }): readonly Place[] => [
    { way: 'level', at: minY + beforeMiddle * (maxY - minY) },
    { way: 'upright', at: minX + beforeMiddle * (maxX - minX) },
  ]);
}

/** The copies of a tile all around it, each held to the tile's own frame. */
class CopiesInPlane {
  readonly #frame: Size;
  readonly #lattice: Lattice;

  constructor(frame: Size, lattice: Lattice) {
    this.#frame = frame;
    this.#lattice = lattice;
  }

  /** Where film begins and ends along a line of the plane between two places, in order. */
  endsOn(layer: LinedLayer, { way, at }: Place, from: number, to: number): readonly PlaneEnd[] {
    const { width, height } = this.#frame;
    const isLevel = way === 'level';
    const [length, depth] = isLevel ? [width, height] : [height, width];
    const [near, far] = [
      { along: from - length, across: at - depth },
      { along: to, across: at },
    ];
    const found = stepsIn(
      this.#lattice,
      isLevel
        ? { minX: near.along, maxX: far.along, minY: near.across, maxY: far.across }
        : { minX: near.across, maxX: far.across, minY: near.along, maxY: far.along },
    ).flatMap(({ at: by }) => {
      const [along, across] = isLevel ? [by.x, by.y] : [by.y, by.x];
      // The far border is the near one of the next copy.
      if (at - across < 0 || at - across >= depth) return [];
      return clipped(endsOf(layer, way, at - across), length).map((end) => ({ ...end, at: end.at + along }));
    });
    return joined(found.sort((p, q) => p.at - q.at)).filter((end) => end.at >= from && end.at <= to);
  }
}

const noContour = -1;

/** Of a line's ends those in the frame, and its borders where film crosses them. */
function clipped(ends: readonly End[], length: number): readonly PlaneEnd[] {
  const found: PlaneEnd[] = [];
  const add = (end: PlaneEnd): void => {
    found.push(end);
  };
  for (let i = 0; i + 1 < ends.length; i += 2) {
    const [begin, end] = [ends[i], ends[i + 1]];
    if (!begin || !end || end.at <= 0 || begin.at >= length) continue;
    const { sine, contour } = begin;
    add(begin.at > 0 ? { at: begin.at, sine, contour, begins: true } : { ...border, at: 0, begins: true });
    add(end.at < length ? end : { ...border, at: length, begins: false });
  }
  return found;
}

const border = { sine: 1, contour: noContour };

/** Ends in order, without those where film of one copy goes on in the next. */
function joined(ends: readonly PlaneEnd[]): readonly PlaneEnd[] {
  const left: PlaneEnd[] = [];
  for (const end of ends) {
    const last = left.at(-1);
    if (last && last.begins !== end.begins && Math.abs(end.at - last.at) <= joinTolerance) left.pop();
    else left.push(end);
  }
  return left;
}
