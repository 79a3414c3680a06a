// Polygons combined set by set: what comes near nothing else is combined alone, within what surrounds it. The engine
// looks at all edges on a level together, so one run over a sheet of motifs takes far longer than a short one for each.
import { boxOfPoints } from './box.ts';
import { type GridRegion, type GridRing, ringsIn } from './grid-ring.ts';
import { lessOfHeap } from './heaps.ts';
import { Holders } from './nested-rings.ts';
import { type ClipOperation, clipPolygons, type Fill } from './polygon-clip.ts';
import { ringIndex, setsApart, setsSideBySide } from './rings-apart.ts';
import { RingsAround } from './rings-around.ts';
import { isCounterClockwise, isPlainlySimple } from './simple-ring.ts';

/** Something of each of the two sides that are combined. */
interface Sides<T> {
  readonly subject: T;
  readonly clip: T;
}

/** What a set gives: regions of its own, and holes in a region of another set, which it lies in. */
interface SetRegions {
  readonly regions: readonly GridRegion[];
  readonly holes: readonly GridRing[];
}

const nothing: SetRegions = { regions: [], holes: [] };

/** Room between a set and the frame that stands for what surrounds it, grid units. */
const room = 8;

/** A region, and the lowest number among the rings of the set it comes of: the subject's are counted first. */
export interface NumberedRegion extends GridRegion {
  readonly first: number;
}

/**
 * The regions that `clipPolygons` gives of the same rings, in the order of the sets they come of. `clipAround`: how often rings of the
 * clip that come near none of these go around all of them, counter-clockwise.
 */
export function clipApart(
  operation: ClipOperation,
  subject: readonly GridRing[],
  clip: readonly GridRing[],
  fill: Fill,
  clipAround = 0,
): readonly NumberedRegion[] {
  const rings = [...subject, ...clip];
  const isOurs = (ring: number): boolean => ring < subject.length;
  const isLone = rings.length === 1;
  const around = isLone ? () => ({ subject: 0, clip: 0 }) : surroundings(rings, subject.length);
  const parts = (isLone ? [[0]] : setsApart(rings)).flatMap((set) => {
    const own = { subject: set.filter(isOurs), clip: set.filter((ring) => !isOurs(ring)) };
    const counted = around(set);
    const outside = { subject: counted.subject, clip: counted.clip + clipAround };
    const each = operation === 'union' || fillsAt[fill](outside.subject) ? [own] : oneByOne(own, rings);
    return each.map((part) => {
      const { regions, holes } = clipWithin(operation, ringsOf(part, rings), outside, fill);
      return { holes, regions: regions.map((region) => ({ ...region, first: set[0] ?? 0 })) };
    });
  });
  return withHoles(
    parts.flatMap(({ regions }) => regions),
    parts.flatMap(({ holes }) => holes),
  );
}

const ringsOf = ({ subject, clip }: Sides<readonly number[]>, rings: readonly GridRing[]) => ({
  subject: subject.flatMap((i) => [rings[i] ?? []]),
  clip: clip.flatMap((i) => [rings[i] ?? []]),
});

/**
 * What lies side by side is clipped one by one where what clips it is short, like a window: its edge alone would make one
 * long run of all that it cuts. What is kept lies within the subject, so the parts meet nowhere.
 */
function oneByOne(
  { subject, clip }: Sides<readonly number[]>,
  rings: readonly GridRing[],
): readonly Sides<readonly number[]>[] {
  const points = (some: readonly number[]) => some.reduce((sum, i) => sum + (rings[i]?.length ?? 0), 0);
  const sets = setsSideBySide(subject.flatMap((i) => [rings[i] ?? []]));
  if (sets.length < 2 || sets.length * points(clip) > points(subject)) return [{ subject, clip }];
  return sets.map((set) => ({ subject: set.flatMap((k) => subject[k] ?? []), clip }));
}

/** How often each side goes around a set, counter-clockwise, in rings that are not of the set. */
function surroundings(
  rings: readonly GridRing[],
  subjects: number,
): (set: readonly number[]) => Sides<number> {
  const index = ringIndex(rings);
  const around = new RingsAround(rings);
  return (set) => {
    const own = new Set(set);
    const at = rings[set[0] ?? 0]?.[0];
    const counts = { subject: 0, clip: 0 };
    if (!at) return counts;
    for (const i of index.meeting(at.x, at.y, at.x, at.y)) {
      if (own.has(i)) continue;
      counts[i < subjects ? 'subject' : 'clip'] += around.turnsOf(i, at);
    }
    return counts;
  };
}

const fillsAt: Record<Fill, (winding: number) => boolean> = {
  nonzero: (winding) => winding !== 0,
  evenodd: (winding) => winding % 2 !== 0,
  positive: (winding) => winding > 0,
};

const keeps: Record<ClipOperation, (inSubject: boolean, inClip: boolean) => boolean> = {
  union: (inSubject, inClip) => inSubject || inClip,
  intersection: (inSubject, inClip) => inSubject && inClip,
  difference: (inSubject, inClip) => inSubject && !inClip,
};

/** Whether what a simple ring of the subject encloses is kept, going around it so often, the clip so often around the ring. */
export function isKeptAlone(
  operation: ClipOperation,
  fill: Fill,
  turns: 1 | -1,
  clipAround: number,
): boolean {
  const inClip = fillsAt[fill](clipAround);
  return keeps[operation](fillsAt[fill](turns), inClip) && !keeps[operation](false, inClip);
}

/** One set combined, other rings going around it so often. */
function clipWithin(
  operation: ClipOperation,
  { subject, clip }: Sides<readonly GridRing[]>,
  around: Sides<number>,
  fill: Fill,
): SetRegions {
  const [inSubject, inClip] = [fillsAt[fill](around.subject), fillsAt[fill](around.clip)];
  const isKept = keeps[operation];
  // With one side alone, the other is the same everywhere: where it decides by itself there is no edge.
  if (clip.length === 0 && isKept(true, inClip) === isKept(false, inClip)) return nothing;
  if (subject.length === 0 && isKept(inSubject, true) === isKept(inSubject, false)) return nothing;
  const [alone] = [...subject, ...clip];
  if (alone && subject.length + clip.length === 1 && isPlainlySimple(alone)) {
    const turns = isCounterClockwise(alone) ? 1 : -1;
    const isOurs = subject.length === 1;
    const inside = isKept(
      isOurs ? fillsAt[fill](around.subject + turns) : inSubject,
      isOurs ? inClip : fillsAt[fill](around.clip + turns),
    );
    return oneRing(alone, turns, { inside, outside: isKept(inSubject, inClip) });
  }
  if (around.subject === 0 && around.clip === 0) {
    const unitesAll = operation === 'union' && clip.length === 0;
    const less = unitesAll && fill === 'nonzero' ? lessOfHeap(subject, united) : subject;
    return { regions: clipPolygons(operation, less, clip, fill), holes: [] };
  }
  const frame = frameAround([...subject, ...clip]);
  const framed = {
    subject: [...subject, ...turns(frame, around.subject)],
    clip: [...clip, ...turns(frame, around.clip)],
  };
  const regions = clipPolygons(operation, framed.subject, framed.clip, fill);
  if (!isKept(inSubject, inClip)) return { regions, holes: [] };
  const left = frame[0]?.x;
  const isFrame = ({ outer }: GridRegion): boolean => outer.some(({ x }) => x === left);
  return {
    regions: regions.filter((region) => !isFrame(region)),
    holes: regions.filter(isFrame).flatMap(({ holes }) => holes),
  };
}

/** The rings of a union, holes the other way around. */
const united = (rings: readonly GridRing[]): readonly GridRing[] =>
  ringsIn(clipPolygons('union', rings, [], 'nonzero'));

/** What a simple ring gives that parts what is kept from what is not. */
function oneRing(
  ring: GridRing,
  turns: 1 | -1,
  { inside, outside }: { readonly inside: boolean; readonly outside: boolean },
): SetRegions {
  if (inside === outside) return nothing;
  const wanted = inside ? 1 : -1;
  const directed = turns === wanted ? ring : [...ring].reverse();
  return inside
    ? { regions: [{ outer: directed, holes: [] }], holes: [] }
    : { regions: [], holes: [directed] };
}

/** A box around rings, counter-clockwise. */
function frameAround(rings: readonly GridRing[]): GridRing {
  const { minX, minY, maxX, maxY } = boxOfPoints(rings.flat());
  const [left, foot, right, top] = [minX - room, minY - room, maxX + room, maxY + room];
  return [
    { x: left, y: foot },
    { x: right, y: foot },
    { x: right, y: top },
    { x: left, y: top },
  ];
}

/** A frame gone around so often, clockwise where the number is negative. */
function turns(frame: GridRing, winding: number): readonly GridRing[] {
  const one = winding < 0 ? [...frame].reverse() : frame;
  return Array.from({ length: Math.abs(winding) }, () => one);
}

/** Regions with holes put into them: each into the smallest that it lies in. */
function withHoles(
  regions: readonly NumberedRegion[],
  holes: readonly GridRing[],
): readonly NumberedRegion[] {
  if (holes.length === 0) return regions;
  const holders = new Holders([...regions.map(({ outer }) => outer), ...holes]);
  const added = regions.map((): GridRing[] => []);
  holes.forEach((hole, i) => {
    const holder = holders.holderOf(regions.length + i);
    // None only where the region itself was too thin for the grid.
    if (holder !== undefined) added[holder]?.push(hole);
  });
  return regions.map((region, i) => ({ ...region, holes: [...region.holes, ...(added[i] ?? [])] }));
}
