// The motifs of a laid pattern: groups of film that hang together, each found once, and what hangs together for ever.
import { type Box, boxAround, movedBox } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import { signedArea } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { type Lattice, step, stepsIn } from '../lattice/lattice.ts';
import type { LaidPeriod } from '../tile/cell.ts';
import { ChordedEdge, edgesApart } from './contour-touch.ts';
import { StepSets, type Steps } from './step-sets.ts';

/** A copy of an edge of the period: whose layer, which of its contours, and how many steps from where it was drawn. */
export interface MotifEdge extends Steps {
  readonly layer: number;
  readonly family: number;
}

/** A group of film that hangs together, in the laid pattern; its copies stand at every step of the lattice. */
export interface Motif {
  readonly edges: readonly MotifEdge[];
  readonly box: Box;
}

export interface Motifs {
  readonly motifs: readonly Motif[];
  /** For each layer the contours of what hangs together with its own copies, and so goes on for ever. */
  readonly nets: readonly ReadonlySet<number>[];
  /** Pieces no further apart than this are one motif, mm; 0 where only what touches is. */
  readonly together: number;
}

/** An edge of the period as it was drawn. */
interface Item {
  readonly layer: number;
  readonly family: number;
  readonly edge: ChordedEdge;
  /** 1 where it runs as outer edges of its layer do, -1 where it runs as holes do. */
  readonly way: number;
  readonly area: number;
}

const itemsOf = (layers: readonly LaidPeriod[]): readonly Item[] =>
  layers.flatMap(({ contours }, layer) =>
    contours.map(({ chords, box }, family) => {
      const area = signedArea(chords.contour);
      return {
        layer,
        family,
        edge: new ChordedEdge(chords, box),
        way: Math.sign(area),
        area: Math.abs(area),
      };
    }),
  );

/** A copy of an item that is near the period as it was drawn. */
interface Copy {
  readonly item: number;
  readonly steps: Steps;
  readonly at: Point;
}

/** All copies that meet the box of the period, in an index of their boxes. */
class Copies {
  readonly #all: Copy[] = [];
  readonly #index: BoxIndex;

  constructor(items: readonly Item[], lattice: Lattice, near: number) {
    const whole = boxAround(items.map(({ edge }) => edge.box));
    const boxes: Box[] = [];
    items.forEach(({ edge: { box } }, item) => {
      const reach = {
        minX: whole.minX - box.maxX - near,
        minY: whole.minY - box.maxY - near,
        maxX: whole.maxX - box.minX + near,
        maxY: whole.maxY - box.minY + near,
      };
      for (const { i, j, at } of stepsIn(lattice, reach)) {
        this.#all.push({ item, steps: { i, j }, at });
        boxes.push(movedBox(box, at));
      }
    });
    this.#index = new BoxIndex(boxes.length, (add) => {
      for (const { minX, minY, maxX, maxY } of boxes) add(minX, minY, maxX, maxY);
    });
  }

  meeting({ minX, minY, maxX, maxY }: Box, reach: number): readonly Copy[] {
    return this.#index
      .meeting(minX - reach, minY - reach, maxX + reach, maxY + reach)
      .flatMap((k) => this.#all[k] ?? []);
  }
}

const isSelf = (item: number, copy: Copy): boolean =>
  copy.item === item && copy.steps.i === 0 && copy.steps.j === 0;

/**
 * The copy whose film an edge lies in, where it touches none: the nearest around it, if what is just outside the edge
 * is film of any layer. A hole lies in the film around it; a dot in a hole lies in none.
 */
function lyingIn(items: readonly Item[], around: readonly Copy[]): Copy | undefined {
  const winding = new Map<number, number>();
  for (const { item } of around) {
    const { layer, way } = items[item] ?? { layer: 0, way: 0 };
    winding.set(layer, (winding.get(layer) ?? 0) + way);
  }
  if ([...winding.values()].every((count) => count === 0)) return undefined;
  const areaOf = ({ item }: Copy) => items[item]?.area ?? Infinity;
  return around.reduce<Copy | undefined>(
    (nearest, copy) => (nearest && areaOf(nearest) <= areaOf(copy) ? nearest : copy),
    undefined,
  );
}

/** Two edges that come near one another: the second's copy so many steps away, and how far they stay apart, mm. */
interface Pair {
  readonly item: number;
  readonly other: number;
  readonly steps: Steps;
  readonly apart: number;
}

/** Join every edge with those that it touches, and with the one whose film it lies in; gives the pairs that only come near. */
function joinTouching(
  items: readonly Item[],
  copies: Copies,
  sets: StepSets,
  reach: number,
): readonly Pair[] {
  const near: Pair[] = [];
  items.forEach(({ edge }, item) => {
    const start = { x: edge.x(0), y: edge.y(0) };
    const around: Copy[] = [];
    for (const copy of copies.meeting(edge.box, reach)) {
      if (isSelf(item, copy)) continue;
      const other = items[copy.item];
      if (!other) continue;
      const { steps } = copy;
      // Each pair is met from both sides: once is enough.
      const isFirst =
        item < copy.item || (item === copy.item && (steps.i > 0 || (steps.i === 0 && steps.j > 0)));
      const apart = isFirst ? edgesApart(edge, other.edge, copy.at, reach) : Infinity;
      if (apart <= joinTolerance) sets.join(item, copy.item, steps);
      else {
        if (apart < Infinity) near.push({ item, other: copy.item, steps, apart });
        if (other.edge.holds({ x: start.x - copy.at.x, y: start.y - copy.at.y })) around.push(copy);
      }
    }
    const film = lyingIn(items, around);
    if (film) sets.join(item, film.item, film.steps);
  });
  return near;
}

/** Pieces of one motif stand at most this share of a piece's size apart, and at most so far, mm. */
const widestGap = { share: 0.5, mm: 6 };

/** What stands at least so many times further apart than all that is joined is another motif. */
const clearJump = 2;

/** How far apart pieces are looked at that may be one motif: half the size of the middle one. */
function reachOf(items: readonly Item[]): number {
  const sizes = items
    .map(({ edge: { box } }) => Math.max(box.maxX - box.minX, box.maxY - box.minY))
    .sort((a, b) => a - b);
  const middle = sizes[Math.floor(sizes.length / 2)] ?? 0;
  return Math.max(joinTolerance, Math.min(widestGap.mm, widestGap.share * middle));
}

/**
 * The gaps within motifs, as against those between them: pieces no further apart than this are one. The steps up to it
 * are small beside the next one, and joining them makes no net; where there is no such clear jump it is 0.
 */
function gapWithin(near: readonly Pair[], count: number, touching: StepSets, reach: number): number {
  const sets = new StepSets(count);
  for (let item = 0; item < count; item++) {
    const { root, at } = touching.find(item);
    sets.join(root, item, at);
  }
  const isFree = (item: number) => !touching.isNet(touching.find(item).root);
  const steps: number[] = [joinTolerance];
  let next = reach;
  for (const { item, other, steps: away, apart } of near) {
    if (!isFree(item) || !isFree(other)) continue;
    const isNew = sets.find(item).root !== sets.find(other).root;
    sets.join(item, other, away);
    if (sets.isNet(sets.find(item).root)) {
      next = apart;
      break;
    }
    if (isNew) steps.push(apart);
  }
  for (let k = steps.length - 1; k > 0; k--)
    if ((steps[k + 1] ?? next) >= clearJump * (steps[k] ?? 0)) return steps[k] ?? 0;
  return 0;
}

/**
 * The motifs of all layers together: what touches is one, whatever its colours, and so are pieces no further apart than
 * `together`, mm; left out, those that stand clearly nearer to one another than to all else. Needs layers of one lattice.
 */
export function motifsOf(layers: readonly LaidPeriod[], together?: number): Motifs {
  const [first] = layers;
  const items = itemsOf(layers);
  const nets = layers.map(() => new Set<number>());
  if (!first || items.length === 0) return { motifs: [], nets, together: 0 };
  const { lattice } = first;
  const sets = new StepSets(items.length);
  const reach = together ?? reachOf(items);
  const near = [...joinTouching(items, new Copies(items, lattice, reach), sets, reach)].sort(
    (a, b) => a.apart - b.apart,
  );
  const gap = together ?? gapWithin(near, items.length, sets, reach);
  const isFree = items.map((_, item) => !sets.isNet(sets.find(item).root));
  for (const { item, other, steps, apart } of near)
    if (apart <= gap && isFree[item] && isFree[other]) sets.join(item, other, steps);
  const groups = new Map<number, { edges: MotifEdge[]; boxes: Box[] }>();
  items.forEach(({ layer, family, edge: { box } }, item) => {
    const { root, at: steps } = sets.find(item);
    if (sets.isNet(root)) {
      nets[layer]?.add(family);
      return;
    }
    const group = groups.get(root) ?? { edges: [], boxes: [] };
    group.edges.push({ layer, family, ...steps });
    group.boxes.push(movedBox(box, step(lattice, steps.i, steps.j)));
    groups.set(root, group);
  });
  const motifs = [...groups.values()].map(({ edges, boxes }) => ({ edges, box: boxAround(boxes) }));
  return { motifs, nets, together: gap };
}
