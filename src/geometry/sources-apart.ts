// Which sources can be combined by themselves: sets whose boxes come near no other source, and no edge of what clips them.
import { type Box, grow } from './box.ts';
import { BoxIndex } from './box-index.ts';
import type { Source } from './chords.ts';
import type { Point } from './point.ts';
import { boxesSideBySide } from './rings-apart.ts';

/** Subjects by their numbers, lowest first, and how often the clip goes around all of them, counter-clockwise. */
interface ApartSet {
  readonly members: readonly number[];
  readonly around: number;
}

export interface SourcesApart {
  readonly sets: readonly ApartSet[];
  /** Subjects that come near the clip's edge, lowest first. */
  readonly others: readonly number[];
}

/** A clip of more chords than this share of the subject's is no window: to look for what lies clear of it would take as long. */
const mostOfClip = 0.25;

/** Subjects in sets, each no nearer than `near` to another or to an edge of the clip; both in the sources' own units. */
export function sourcesApart(
  subject: readonly Source[],
  clip: readonly Source[],
  near: number,
): SourcesApart {
  const all = subject.map((_, i) => i);
  if (subject.length < 2 || chordsIn(clip) > mostOfClip * chordsIn(subject)) return { sets: [], others: all };
  const boxes = subject.map((source) => grow(chordBox(source), near));
  const edges = new ClipEdges(clip);
  const sets: ApartSet[] = [];
  const others: (readonly number[])[] = [];
  for (const members of boxesSideBySide(boxes)) {
    const at = firstCorner(subject[members[0] ?? 0]);
    if (!at || members.some((i) => edges.meet(boxes[i]))) others.push(members);
    else sets.push({ members, around: edges.around(at) });
  }
  return { sets, others: others.flat().sort((a, b) => a - b) };
}

const chordsIn = (sources: readonly Source[]): number =>
  sources.reduce((sum, { chords }) => sum + chords.x.length, 0);

function firstCorner(source: Source | undefined): Point | undefined {
  if (!source || source.chords.x.length === 0) return undefined;
  const { chords, by } = source;
  return { x: (chords.x[0] ?? 0) + by.x, y: (chords.y[0] ?? 0) + by.y };
}

function chordBox({ chords: { x, y }, by }: Source): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let k = 0; k < x.length; k++) {
    minX = Math.min(minX, x[k] ?? 0);
    maxX = Math.max(maxX, x[k] ?? 0);
    minY = Math.min(minY, y[k] ?? 0);
    maxY = Math.max(maxY, y[k] ?? 0);
  }
  return { minX: minX + by.x, minY: minY + by.y, maxX: maxX + by.x, maxY: maxY + by.y };
}

/** The chords of a clip in columns, by their boxes. */
class ClipEdges {
  readonly #x: number[] = [];
  readonly #y: number[] = [];
  readonly #toX: number[] = [];
  readonly #toY: number[] = [];
  readonly #index: BoxIndex;

  constructor(clip: readonly Source[]) {
    for (const { chords, by } of clip)
      chords.x.forEach((x, k) => {
        const next = k + 1 === chords.x.length ? 0 : k + 1;
        this.#x.push(x + by.x);
        this.#y.push((chords.y[k] ?? 0) + by.y);
        this.#toX.push((chords.x[next] ?? 0) + by.x);
        this.#toY.push((chords.y[next] ?? 0) + by.y);
      });
    this.#index = new BoxIndex(this.#x.length, (add) => {
      this.#x.forEach((x, k) => {
        const [y, toX, toY] = [this.#y[k] ?? 0, this.#toX[k] ?? 0, this.#toY[k] ?? 0];
        add(Math.min(x, toX), Math.min(y, toY), Math.max(x, toX), Math.max(y, toY));
      });
    });
  }

  /** Whether an edge's box meets a box. */
  meet(box: Box | undefined): boolean {
    return box !== undefined && this.#index.meeting(box.minX, box.minY, box.maxX, box.maxY).length > 0;
  }

  /** How often the clip goes around a point that is on none of its edges, counter-clockwise with y up. */
  around({ x, y }: Point): number {
    let count = 0;
    for (const k of this.#index.meeting(x, y, Infinity, y)) {
      const [x0, y0, x1, y1] = [this.#x[k] ?? 0, this.#y[k] ?? 0, this.#toX[k] ?? 0, this.#toY[k] ?? 0];
      if (y0 <= y === y1 <= y) continue;
      const beside = (x1 - x0) * (y - y0) - (x - x0) * (y1 - y0);
      if (y1 > y0 && beside > 0) count++;
      else if (y1 < y0 && beside < 0) count--;
    }
    return count;
  }
}
