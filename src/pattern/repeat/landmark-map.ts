// A drawing's landmarks by kind and place, and what recurs in it a step away.

import { boxOfPoints } from '../../geometry/box.ts';
import { add, norm, type Point } from '../../geometry/point.ts';
import type { Lattice } from '../lattice/lattice.ts';
import type { CopiedTogether } from './evidence.ts';
import type { Landmark, Landmarks } from './landmarks.ts';
import { cellNumber, StepVotes } from './step-votes.ts';

/** Steps that are tried, and landmarks that each is tried on: more would not be surer. */
const most = {
  steps: 600,
  tried: 500,
  votes: 80_000,
  members: 40,
  far: 400,
  neighbours: 60,
  kinds: 3000,
} as const;

/** Width of the cells that places are found by, in tolerances. */
const cellTolerances = 4;

export interface Recurring {
  /** Landmarks that the crop should show again, and those of them that it does. */
  readonly expected: number;
  readonly found: number;
  /** Contours that recur. */
  readonly contours: number;
  /** By how much the copies stand off where they should, on average, mm. */
  readonly meanMiss: Point;
}

export class LandmarkMap {
  /** So many of the landmarks, from all over the drawing. */
  readonly #spread: readonly Landmark[];
  /** Of the kinds among those, by kind, then by place. */
  readonly #cells = new Map<number, Map<number, Landmark[]>>();
  /** The members of kinds that have several: of those with fewest. */
  readonly #kinds: readonly (readonly Landmark[])[];
  readonly #tolerance: number;
  readonly #crop: { readonly width: number; readonly height: number };

  /**
   * Landmarks that the crop's edge may have touched tell nothing and are left out. Of the others only those are kept that may be asked
   * for: a large drawing has hundreds of thousands, most of them like no other.
   */
  constructor(
    landmarks: Landmarks,
    crop: { readonly width: number; readonly height: number },
    tolerance: number,
  ) {
    this.#tolerance = tolerance;
    this.#crop = crop;
    const whole: number[] = [];
    const counts = new Map<number, number>();
    for (let i = 0; i < landmarks.length; i++) {
      const landmark = landmarks.at(i);
      if (!this.#isWhole(landmark, landmark)) continue;
      whole.push(i);
      counts.set(landmark.kind, (counts.get(landmark.kind) ?? 0) + 1);
    }
    this.#spread = spreadOver(whole).map((i) => landmarks.at(i));
    for (const { kind } of this.#spread) this.#cells.set(kind, new Map());
    const members = new Map(smallKinds(counts).map((kind): [number, Landmark[]] => [kind, []]));
    for (const i of whole) {
      const landmark = landmarks.at(i);
      const { kind, x, y } = landmark;
      members.get(kind)?.push(landmark);
      const cells = this.#cells.get(kind);
      if (cells) push(cells, cellNumber(this.#column(x), this.#column(y)), landmark);
    }
    this.#kinds = [...members.values()];
  }

  /** Whether a landmark put at a place would show whole in the crop. */
  #isWhole({ reach }: Landmark, { x, y }: Point): boolean {
    const edge = this.#tolerance;
    const { width, height } = this.#crop;
    return (
      x + reach.minX > edge &&
      y + reach.minY > edge &&
      x + reach.maxX < width - edge &&
      y + reach.maxY < height - edge
    );
  }

  #column(mm: number): number {
    return Math.floor(mm / (cellTolerances * this.#tolerance));
  }

  /** The landmark of a kind nearest to a place, within the tolerance. */
  #at(kind: number, { x, y }: Point): Landmark | undefined {
    const cells = this.#cells.get(kind);
    let best: Landmark | undefined;
    let least = this.#tolerance;
    const [fromX, toX] = [this.#column(x - least), this.#column(x + least)];
    const [fromY, toY] = [this.#column(y - least), this.#column(y + least)];
    for (let column = fromX; column <= toX; column++)
      for (let row = fromY; row <= toY; row++)
        for (const other of cells?.get(cellNumber(column, row)) ?? []) {
          const away = norm(other.x - x, other.y - y);
          if (away > least) continue;
          least = away;
          best = other;
        }
    return best;
  }

  /** Steps between landmarks of one kind: those that most landmarks agree on, and the shortest. */
  candidateSteps(): readonly Point[] {
    const votes = new StepVotes(2 * this.#tolerance);
    for (const members of this.#kinds) {
      if (votes.cast >= most.votes) break;
      eachStepAmong(members, (x, y) => votes.add(x, y));
    }
    return votes.chosen(most.steps / 2, most.steps / 2);
  }

  /** What recurs a step away. */
  recurring(step: Point): Recurring {
    let [expected, found, x, y] = [0, 0, 0, 0];
    const contours = new Set<number>();
    for (const landmark of this.#spread) {
      const there = { x: landmark.x + step.x, y: landmark.y + step.y };
      if (!this.#isWhole(landmark, there)) continue;
      expected++;
      const copy = this.#at(landmark.kind, there);
      if (!copy) continue;
      found++;
      contours.add(landmark.contour);
      x += copy.x - there.x;
      y += copy.y - there.y;
    }
    const meanMiss = found === 0 ? { x: 0, y: 0 } : { x: x / found, y: y / found };
    return { expected, found, contours: contours.size, meanMiss };
  }

  /** Contours of which landmarks recur together by one of the candidate steps, step by step. */
  copiedTogether(): readonly CopiedTogether[] {
    return this.candidateSteps().flatMap((step): CopiedTogether[] => {
      const copied = this.#spread.flatMap((landmark) => {
        const copy = this.#at(landmark.kind, add(landmark, step));
        return copy ? [{ landmark, copy }] : [];
      });
      const from = [...new Set(copied.map(({ landmark }) => landmark.contour))];
      const to = [...new Set(copied.map(({ copy }) => copy.contour))];
      const box = boxOfPoints(copied.map(({ landmark }) => landmark));
      return from.length > 1 ? [{ step, from, to, box }] : [];
    });
  }

  /** Landmarks and their copies up to so many steps of a lattice away. */
  pairs(
    lattice: Lattice,
    reach: number,
  ): readonly { readonly i: number; readonly j: number; readonly by: Point }[] {
    const steps = [...stepsUpTo(reach)];
    return this.#spread.flatMap((landmark) =>
      steps.flatMap(({ i, j }) => {
        const there = {
          x: landmark.x + i * lattice.a.x + j * lattice.b.x,
          y: landmark.y + i * lattice.a.y + j * lattice.b.y,
        };
        const copy = this.#isWhole(landmark, there) ? this.#at(landmark.kind, there) : undefined;
        return copy ? [{ i, j, by: { x: copy.x - landmark.x, y: copy.y - landmark.y } }] : [];
      }),
    );
  }
}

/** So many of the landmarks, by their numbers. */
function spreadOver(whole: readonly number[]): readonly number[] {
  const every = Math.max(1, whole.length / most.tried);
  return Array.from(
    { length: Math.min(whole.length, most.tried) },
    (_, i) => whole[Math.floor(i * every)] ?? 0,
  );
}

/** Kinds that have several members, those with fewest first. */
const smallKinds = (counts: ReadonlyMap<number, number>): readonly number[] =>
  [...counts]
    .filter(([, count]) => count > 1)
    .sort(([, a], [, b]) => a - b)
    .slice(0, most.kinds)
    .map(([kind]) => kind);

function push<K, V>(into: Map<K, V[]>, key: K, value: V): void {
  const list = into.get(key);
  if (list) list.push(value);
  else into.set(key, [value]);
}

/** Nearest neighbours, and a few far ones, so that the count stays small. */
function* stepsUpTo(reach: number): Generator<{ readonly i: number; readonly j: number }> {
  for (const [i, j] of [
    [1, 0],
    [0, 1],
    [1, 1],
    [1, -1],
  ] as const)
    for (let times = 1; times <= reach; times = times < 3 ? times + 1 : times * 3)
      yield { i: i * times, j: j * times };
}

/** Steps from some of the members of one kind, to the right (or straight down): to all others of few, the nearest of many. */
function eachStepAmong(members: readonly Landmark[], take: (x: number, y: number) => void): void {
  const every = Math.max(1, members.length / most.members);
  const near = members.length <= most.far ? Infinity : reachOfNeighbours(members);
  for (let at = 0; at < members.length; at += every) {
    const from = members[Math.floor(at)];
    if (!from) continue;
    for (const to of members) {
      const [x, y] = [to.x - from.x, to.y - from.y];
      if (Math.abs(x) > near || Math.abs(y) > near) continue;
      if (x > 1e-6 || (Math.abs(x) <= 1e-6 && y > 1e-6)) take(x, y);
    }
  }
}

/** Half the side of a square that holds about so many neighbours, were the members spread evenly. */
function reachOfNeighbours(members: readonly Landmark[]): number {
  const { minX, minY, maxX, maxY } = boxOfPoints(members);
  const area = Math.max(maxX - minX, 1e-3) * Math.max(maxY - minY, 1e-3);
  return Math.max(Math.sqrt((most.neighbours * area) / members.length) / 2, (maxX - minX) / members.length);
}
