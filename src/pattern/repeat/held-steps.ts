// Steps that a drawing recurs by: candidates are steps between landmarks of one kind, and those between like ends of lines.
import { add, distance, type Point } from '../../geometry/point.ts';
import type { FilmScan } from '../film/film-scan.ts';
import type { Size } from '../tile/cut-shapes.ts';
import type { LandmarkMap } from './landmark-map.ts';

/** A step is a repeat when this share of what should recur does: art may be covered in part, or touched up. */
export const leastShare = 0.6;

/** What explains so much needs nothing beside it. */
export const explained = 0.998;

/** The least share of the crop that must show again a step away. */
const leastOverlap = 0.06;

/** Steps that lattices are made of: the shortest that hold; and how many are held against the film to find them. */
const mostSteps = 24;
const mostScanned = 160;

export interface HeldStep {
  readonly step: Point;
  /** Of the film that should recur, what does. */
  readonly share: number;
}

/** Steps that nearly all film recurs by: the shortest of those that explain all, and of the others. */
export function heldSteps(map: LandmarkMap, scan: FilmScan, crop: Size): readonly HeldStep[] {
  const held: HeldStep[] = [];
  const straight = scan.straightSteps().filter((step) => isLarge(step, crop));
  for (const step of [...candidateSteps(map, crop), ...straight]) {
    if (held.some((other) => distance(step, other.step) < sameStep)) continue;
    const share = shareOf(scan.agreement(step, fewLines));
    if (share >= leastShare) held.push({ step, share });
  }
  const byLength = held.sort((p, q) => lengthOf(p.step) - lengthOf(q.step));
  const full = byLength.filter(({ share }) => share >= explained).slice(0, mostSteps);
  const rest = byLength.filter(({ share }) => share < explained).slice(0, mostSteps - full.length);
  return [...full, ...rest];
}

/** Steps that landmarks recur by: those that most of them do, and the shortest. */
function candidateSteps(map: LandmarkMap, crop: Size): readonly Point[] {
  const steps = map.candidateSteps().flatMap((step) => checked(map, step, crop) ?? []);
  const byLength = [...steps].sort((p, q) => lengthOf(p.step) - lengthOf(q.step));
  const byShare = [...byLength].sort((p, q) => q.share - p.share);
  const some = new Set([...byShare.slice(0, mostScanned / 2), ...byLength.slice(0, mostScanned / 2)]);
  return [...some].map(({ step }) => step);
}

/** The part of all lines that a first look takes. */
export const fewLines = 0.4;

/** Steps nearer than this are one, found twice, mm. */
const sameStep = 0.02;

/** The share of what should recur that does. */
export const shareOf = ({
  expected,
  found,
}: {
  readonly expected: number;
  readonly found: number;
}): number => (expected === 0 ? 0 : found / expected);

/** A step moved to the mean of what it finds; undefined where most landmarks say that it is no repeat. */
function checked(map: LandmarkMap, step: Point, crop: Size) {
  if (!isLarge(step, crop)) return undefined;
  const { expected, found, meanMiss } = map.recurring(step);
  const share = shareOf({ expected, found });
  return share < leastShare ? undefined : { step: add(step, meanMiss), share };
}

/** Whether a step is no node drawn twice, and leaves enough of the crop that shows again. */
const isLarge = (step: Point, crop: Size): boolean =>
  overlapOf(step, crop) >= leastOverlap && lengthOf(step) >= leastStep;

/** A shorter step is two nodes drawn side by side, mm. */
export const leastStep = 0.4;

/** The share of the crop that shows again a step away. */
export const overlapOf = (step: Point, { width, height }: Size): number =>
  Math.max(0, 1 - Math.abs(step.x) / width) * Math.max(0, 1 - Math.abs(step.y) / height);

export const lengthOf = (p: Point): number => Math.hypot(p.x, p.y);
