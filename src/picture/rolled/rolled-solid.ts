// The finished vessel as triangles, for a screen that turns it: the body, and the sheet with its place on the flat drawing.
import { boxOfPoints } from '../../geometry/box.ts';
import { add, type Point } from '../../geometry/point.ts';
import { girthAt, toFlat } from '../../unroll/flat-wall.ts';
import { ringsOf } from './rolled-body.ts';
import { type WallExtras, wallExtras } from './rolled-extras.ts';
import { profileOf } from './rolled-profile.ts';
import { closeRings, ringsBetween } from './rolled-rings.ts';
import {
  around,
  type Level,
  levelStep,
  liftedRing,
  type Surface,
  surfaceOf,
  turnAcross,
  whole,
} from './rolled-surface.ts';
import { type BodyRing, type RolledVessel, sidesAt } from './rolled-vessel.ts';

/** The sheet: each corner also has its place on the flat drawing, two numbers, 0 to 1 across `box` and 0 to 1 down it. */
export interface SheetSurface extends Surface {
  readonly places: Float32Array;
  /** The part of the drawing that the sheet was, mm, y down. */
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

/** A part of the wall under a coat. */
export interface CoatedPart extends Surface {
  /** Its outline on the flat drawing, mm: the ground that film lies on. */
  readonly ground: readonly Point[];
}

/** What is seen of a vessel as it is turned. */
export interface RolledSolid {
  readonly height: number;
  /** The widest radius. */
  readonly radius: number;
  readonly body: Surface;
  readonly sheet: SheetSurface;
  readonly coats: readonly CoatedPart[];
  /** A narrow band over the line where the two ends meet; none beside a handle, nor under a cover strip. */
  readonly seam?: Surface;
  /** What else is seen on the wall. */
  readonly extras: WallExtras;
}

/** How far the seam's line stands off the sheet, and half its width, mm. */
const seamLine = { off: 0.12, half: 0.3 } as const;
/** How much thicker than nothing the lip is, as a share of its radius: the eye's measure, no reading tells it. */
const lipShare = 0.03;

/** The sheet between its finished edges and sides; what the knife takes and what laps under is not of it. */
export function sheetSurface(vessel: RolledVessel): SheetSurface {
  const { band, profile, wall, origin } = vessel;
  const levels = closeRings(ringsBetween(profile, band.from, band.to), levelStep).map((ring) => {
    const [from, to] = sidesAt(vessel, ring.along);
    return { ...ring, from, to };
  });
  const places = levels.flatMap((level) =>
    Array.from({ length: around + 1 }, (_, i): Point => {
      const flat = toFlat(wall, { turn: turnAcross(level, i / around), along: level.along });
      return add(flat, origin);
    }),
  );
  const { minX, minY, maxX, maxY } = boxOfPoints(places);
  const box = { x: minX, y: minY, width: maxX - minX, height: maxY - minY };
  return {
    ...surfaceOf(levels, around),
    places: new Float32Array(places.flatMap(({ x, y }) => [(x - minX) / box.width, (y - minY) / box.height])),
    box,
  };
}

/** The outside from the foot's centre over foot, wall and lip, and the inside down to its floor. */
function bodySurface(rings: readonly BodyRing[]): Surface {
  const [foot, lip] = [rings[0], rings.at(-1)];
  if (!foot || !lip) return surfaceOf([], around);
  const thick = lipShare * lip.radius;
  const bottom = foot.height + thick;
  const inside = rings
    .map((ring) => ({
      height: Math.max(bottom, ring.height),
      radius: Math.max(0, ring.radius - thick),
      lean: ring.lean + Math.PI,
    }))
    .reverse();
  const floor = inside.at(-1) ?? lip;
  const levels = [
    { height: foot.height, radius: 0, lean: Math.PI / 2 },
    { ...foot, lean: Math.PI / 2 },
    ...rings,
    // The rim is level: its normal points straight up.
    { ...lip, lean: -Math.PI / 2 },
    { ...lip, radius: lip.radius - thick, lean: -Math.PI / 2 },
    ...inside,
    { ...floor, lean: -Math.PI / 2 },
    { height: bottom, radius: 0, lean: -Math.PI / 2 },
  ];
  return surfaceOf(levels.map(whole), around);
}

/** The line where the ends meet, as the finished side that lies on top has it. */
function seamSurface(vessel: RolledVessel): Surface | undefined {
  const { band, profile, wall, seam, strip, covers } = vessel;
  const isCovered = strip !== undefined || covers?.turns.includes(0);
  if (seam.start.offset !== seam.finish.offset || isCovered) return undefined;
  const levels = closeRings(ringsBetween(profile, band.from, band.to), levelStep).map((ring): Level => {
    const [, at] = sidesAt(vessel, ring.along);
    const half = seamLine.half / girthAt(wall, ring.along);
    return { ...liftedRing(ring, seamLine.off), from: at - half, to: at + half };
  });
  return surfaceOf(levels, 2);
}

interface Span {
  readonly from: number;
  readonly to: number;
}

function coatedPart({ profile, wall, origin }: RolledVessel, { from, to }: Span): CoatedPart {
  const levels = closeRings(ringsBetween(profile, from, to), levelStep).map(whole);
  // A little past the seam at either end: a sheet's sides need not be lines straight up the wall.
  const turns = Array.from({ length: around + 3 }, (_, i) => (i - 1) / around);
  const level = (along: number) => turns.map((turn) => add(toFlat(wall, { turn, along }), origin));
  return { ...surfaceOf(levels, around), ground: [...level(from), ...level(to).reverse()] };
}

/** The vessel as it can be turned; `coated` are the parts of its wall under a coat, mm along. */
export function rolledSolid(vessel: RolledVessel, coated: readonly Span[]): RolledSolid {
  const rings = ringsOf(profileOf(vessel));
  const seam = seamSurface(vessel);
  return {
    height: Math.max(...rings.map(({ height }) => height)),
    radius: Math.max(...rings.map(({ radius }) => radius)),
    body: bodySurface(rings),
    sheet: sheetSurface(vessel),
    coats: coated.map((part) => coatedPart(vessel, part)),
    ...(seam ? { seam } : {}),
    extras: wallExtras(vessel),
  };
}
