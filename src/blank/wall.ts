// A blank's wall, whichever form it has: one straight line, or a profile that bends.
import type { Finding } from '../finding.ts';
import type { Blank, Station } from './blank.ts';
import { type CurvedWall, curvedFindings, curvedUncertaintyAt, fitCurvedWall } from './curved-wall.ts';
import { type Band, roundedStraight } from './flat-band.ts';
import { lengthFindings, placeReadingFindings } from './place-off.ts';
import { alongOfHeight, placesOfProfile, profileAt } from './profile.ts';
import { fitFindings, placeFindings } from './reading-findings.ts';
import { type RoundedWall, roundReach } from './round-reach.ts';
import { bendlessFindings, footWiderFindings, shapeFindings, type WallEnd } from './shape-findings.ts';
import { placeReading } from './stations.ts';
import {
  bareRadiusAt,
  fitStraightWall,
  girthUncertaintyAt,
  heightAt,
  isCylinder,
  type Reconciled,
  type StraightWall,
} from './straight-wall.ts';
import { flatBandsOf } from './straightedge.ts';
import { wallFindings } from './wall-findings.ts';

export type Wall =
  | { readonly kind: 'straight'; readonly straight: StraightWall }
  | { readonly kind: 'curved'; readonly curved: CurvedWall };

/** A wall, and what is to be said of it. */
interface WallFound {
  readonly wall: Wall;
  readonly findings: readonly Finding[];
}

/** Walls as they were fitted: every piece of a wall asks anew, and a smooth one of 150 readings takes a second. */
const fitted = new WeakMap<Blank, WallFound>();

/** The wall of a blank, and what is to be said of it; fitted once. @throws Refused where its readings are no wall. */
export function wallOf(blank: Blank): WallFound {
  const known = fitted.get(blank) ?? fittedTo(blank);
  fitted.set(blank, known);
  return known;
}

function fittedTo(blank: Blank): WallFound {
  if (blank.wall === 'straight') {
    const straight = fitStraightWall(blank);
    const wall: Wall = { kind: 'straight', straight };
    return { wall, findings: [...wallFindings(blank, straight), ...oddShape(blank, wall)] };
  }
  const curved = fitCurvedWall(blank, blank.wall);
  const wall: Wall = { kind: 'curved', curved };
  const alongOf = ({ position }: Station) => alongOfHeight(curved.profile, position.mm);
  const findings = [
    ...placeReadingFindings(blank),
    ...curvedFindings(blank),
    ...bendlessFindings(blank),
    ...placeFindings(blank),
    ...lengthFindings(blank, alongOf, placeReading(blank)),
    ...fitFindings(blank, curved),
  ];
  return { wall, findings: [...findings, ...oddShape(blank, wall)] };
}

/** What the wall leaves of its readings. */
export const reconciled = (wall: Wall): Reconciled =>
  wall.kind === 'straight' ? wall.straight : wall.curved;

/** Sizes that are odd by themselves are said already; nothing more can be told of their shape. */
function oddShape(blank: Blank, wall: Wall): readonly Finding[] {
  if (placeFindings(blank).some(({ rule }) => rule === 'odd-size')) return [];
  const length = wallLength(wall);
  const places = closePlaces(wall, { from: 0, to: length }).map((along) => wallAt(wall, along));
  const odd = shapeFindings(blank, places);
  if (odd.length > 0) return odd;
  const end = (along: number): WallEnd => ({
    radius: wallAt(wall, along).radius,
    uncertainty: wallUncertaintyAt(wall, along),
  });
  return footWiderFindings(blank, end(0), end(length));
}

/** From the foot corner to the lip corner, mm along the wall. */
export const wallLength = (wall: Wall): number =>
  wall.kind === 'straight' ? wall.straight.length : wall.curved.profile.length;

/** The bare wall at a distance along it: radius and height, mm, and lean from upright, radians. */
export function wallAt(
  wall: Wall,
  along: number,
): { readonly radius: number; readonly height: number; readonly lean: number } {
  if (wall.kind === 'curved') return profileAt(wall.curved.profile, along);
  const { straight } = wall;
  return {
    radius: bareRadiusAt(straight, along),
    height: heightAt(straight, along),
    lean: straight.halfAngle,
  };
}

/** A place so near above a band's lower end counts as that end, mm: 0.01 mm is the precision of a typed band. */
const atItsEnd = 0.02;

/**
 * The bare wall at a place of a band or strip. Where that begins at a corner, the lean is that of the stretch above it,
 * which the film lies on, and not that of the stretch below.
 */
export function wallWithin(
  wall: Wall,
  along: number,
  { from }: Pick<Band, 'from'>,
): ReturnType<typeof wallAt> {
  const place = wallAt(wall, along);
  return wallForm(wall) === 'stepped' && Math.abs(along - from) <= atItsEnd
    ? { ...place, lean: wallAt(wall, from + atItsEnd).lean }
    : place;
}

export const wallGirthAt = (wall: Wall, along: number): number => 2 * Math.PI * wallAt(wall, along).radius;

/** Standard uncertainty of the girth at a place, mm. */
export const wallUncertaintyAt = (wall: Wall, along: number): number =>
  wall.kind === 'straight'
    ? girthUncertaintyAt(wall.straight, along)
    : curvedUncertaintyAt(wall.curved, along);

export type WallForm = 'cylinder' | 'frustum' | 'stepped' | 'curved';

export function wallForm(wall: Wall): WallForm {
  if (wall.kind === 'straight') return isCylinder(wall.straight) ? 'cylinder' : 'frustum';
  return wall.curved.profile.kind === 'stepped' ? 'stepped' : 'curved';
}

/** Lean of a straight wall; of one that bends, that of the line from foot corner to lip corner. Radians. */
export function meanLean(wall: Wall): number {
  if (wall.kind === 'straight') return wall.straight.halfAngle;
  const [foot, lip] = [wallAt(wall, 0), wallAt(wall, wallLength(wall))];
  return Math.atan2(lip.radius - foot.radius, lip.height - foot.height);
}

/** How close together a profile is looked at for flatness, mm. */
const spacing = 0.25;

/** More places than this are no help: on a wall of more than a metre they stand wider, and the work for all runs of them stays in bounds. */
const mostPlaces = 4000;

/** Places along a stretch of wall, close together, the ends and all corners among them. */
export function closePlaces(wall: Wall, { from, to }: Band): number[] {
  const count = Math.min(mostPlaces, Math.max(2, Math.ceil((to - from) / spacing)));
  const even = Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  return [...new Set([...even, ...cornersWithin(wall, { from, to })])].sort((a, b) => a - b);
}

/** Places that tell the whole shape of a stretch: of a wall straight between its corners those alone. */
const knownPlaces = (wall: Wall, band: Band): number[] =>
  wall.kind === 'curved' && wall.curved.profile.kind === 'stepped'
    ? [band.from, ...cornersWithin(wall, band), band.to]
    : closePlaces(wall, band);

/** Where a wall bends at once, strictly within a band. */
const cornersWithin = (wall: Wall, { from, to }: Band): number[] =>
  wall.kind === 'curved' && wall.curved.profile.kind === 'stepped'
    ? wall.curved.profile.corners.map(({ along }) => along).filter((along) => along > from && along < to)
    : [];

/** The wall between its declared rounds. @throws Refused, rule `round-too-large`, where they leave nothing. */
export function roundLimits(wall: Wall, blank: Pick<Blank, 'footRound' | 'lipRound'>): Band {
  const reach = roundReach(roundedWall(wall), blank);
  return { from: reach.foot, to: wallLength(wall) - reach.lip };
}

/** A wall as rounds ask for it. */
const roundedWall = (wall: Wall): RoundedWall =>
  wall.kind === 'straight'
    ? roundedStraight(wall.straight)
    : {
        places: placesOfProfile(wall.curved.profile),
        at: (along) => profileAt(wall.curved.profile, along),
      };

/**
 * The bands on which film lies flat, from the foot up. A declared round always ends a band at its tangent point; else
 * a band is where one straightedge as long as it leaves no gap over `flatGap`. On a stepped wall a band begins and ends
 * at corners, and never a little past one.
 * @throws Refused, rule `round-too-large`, where the rounds leave nothing.
 */
export function flatBandsOfWall(
  wall: Wall,
  blank: Pick<Blank, 'footRound' | 'lipRound' | 'flatGap'>,
): readonly Band[] {
  const limits = roundLimits(wall, blank);
  if (wall.kind === 'straight') return [limits];
  const points = knownPlaces(wall, limits).map((along) => {
    const { radius, height } = wallAt(wall, along);
    return { along, radius, height };
  });
  return flatBandsOf(points, blank.flatGap);
}

export const longestBand = (bands: readonly Band[]): Band | undefined =>
  bands.length === 0 ? undefined : bands.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
