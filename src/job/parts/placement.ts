// Where a paper template for a motif is held: by the foot or the lip, by the seam or the handle, in figures and in words.
import type { Blank } from '../../blank/blank.ts';
import { wallLength } from '../../blank/wall.ts';
import type { MotifOnSheet } from '../../cut/drawings/motif-drawing.ts';
import { type PlacementOptions, placementDrawing } from '../../cut/drawings/placement.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { sinc } from '../../geometry/sinc.ts';
import { cutLength, type Units } from '../../lengths/length.ts';
import { type FlatWall, radiusAt } from '../../unroll/flat-wall.ts';
import { type SheetBuild, type SheetLengths, sheetRadiusAt } from '../../unroll/sheet-wall.ts';
import { type LaidMotif, laidApart } from '../motifs/laid-apart.ts';
import { fromSeam, lineAtSeam } from '../motifs/motif-places.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';

export interface PlacementInput {
  readonly blank: Blank;
  readonly laid: LaidMotif;
  readonly title: string;
  readonly units: Units;
  readonly words: DrawWords;
}

/** `isPlane`: it is where the vessel stands, or its lip, and no level line to be drawn first. */
type Base = PlacementOptions['base'] & { readonly hold: string; readonly isPlane: boolean };

/**
 * The level edges that paper on this stretch of wall can be held by, mm on the paper: the plane the vessel stands on, the plane of
 * its lip, where the stretch reaches them; else the ends of its flat band.
 */
function basesOf(
  { flatGap }: Blank,
  { wall, flatBands, build, lengths }: Plan,
  { at }: PlacedMotif,
  flat: FlatWall,
  units: Units,
): Base[] {
  const length = wallLength(wall);
  const band = flatBands.find(({ from, to }) => at.along >= from && at.along <= to) ?? {
    from: 0,
    to: length,
  };
  const reaches = (along: number) =>
    Math.abs(sheetRadiusAt(wall, build, along, band) - radiusAt(flat, lengths.toGrown(along))) < flatGap;
  const lift = liftOf(flat, build);
  const foot: Base = reaches(0)
    ? {
        along: lift,
        says: 'this edge level with the foot',
        isPlane: true,
        hold: 'stand the vessel on a flat table, and let the edge marked for the foot touch the table all along',
      }
    : bandEnd(band.from, lengths, units);
  const lip: Base = reaches(length)
    ? {
        along: lengths.toGrown(length) + lift,
        says: 'this edge level with the lip',
        isPlane: true,
        hold: 'lay a straight board on the lip, and let the edge marked for the lip touch it all along',
      }
    : bandEnd(band.to, lengths, units);
  return [foot, lip];
}

const bandEnd = (along: number, { toGrown }: SheetLengths, units: Units): Base => ({
  along: toGrown(along),
  isPlane: false,
  says: `this edge on the level line at ${cutLength(along, units)} along`,
  hold: `draw a level line ${cutLength(along, units)} up the wall from the foot corner, with a collar, and hold the edge marked for it there`,
});

/** How far along the wall paper outside the coats meets the plane of foot or lip past the bare corner, mm. */
function liftOf({ sine }: FlatWall, { coats, film }: SheetBuild): number {
  return ((coats + film / 2) * sine) / Math.sqrt(1 - sine * sine);
}

const sideWords = (handle: Blank['handle']) =>
  handle
    ? { says: 'this side against the handle', across: 'middle of the handle' }
    : { says: 'this side on the seam line', across: 'this line on the seam line' };

/**
 * The template of a motif that is cut apart, as an SVG at true size; none where it has nothing to be held by: on a wall
 * that bends, where the motif goes on past both ends of the stretch that paper lies on.
 */
export function placementOf({ blank, laid, title, units, words }: PlacementInput): string | undefined {
  const { placed } = laid;
  // Paper does not give as film may: it is as long around as what it lies on.
  const plan = { ...laid.plan, build: { ...laid.plan.build, around: 1 } };
  const { at } = placed;
  const { wall, layers, at: there } = (laid.plan.build.around ?? 1) === 1 ? laid : laidApart(plan, placed);
  const motif: MotifOnSheet = { wall, along: there.along, layers };
  const bases = basesOf(blank, plan, placed, wall, units);
  const [base] = bases
    .filter((one) => one.isPlane || one.along <= laid.reach.from || one.along >= laid.reach.to)
    .sort((a, b) => Math.abs(a.along - there.along) - Math.abs(b.along - there.along));
  if (!base) return undefined;
  const { handle } = blank;
  const half = handle ? handle.spans / 2 : 0;
  const toSeam = at.turn > 0.5 ? 1 - at.turn : -at.turn;
  const away = Math.abs(fromSeam(wall, there));
  const drawing = placementDrawing({
    ...motif,
    base,
    toSeam,
    side: { offset: half * sinc((half * wall.sine) / wall.radius), ...sideWords(handle) },
    notes: [
      title,
      'cut the paper and its window out; seen from outside, foot down',
      base.hold,
      `bring the ${handle ? 'side marked for it against the handle, straight up the wall' : 'line marked for it onto the seam line'}, lay the paper flat and tape it`,
      'the film fills the window, and its level and plumb lines go on from those of the paper',
      `plumb line ${cutLength(away, units)} from ${lineAtSeam(blank)} around the wall, level line ${cutLength(at.along, units)} up it from the foot corner`,
      'measure the squares before you cut: 25 mm and 1 in',
    ],
    words,
  });
  return writeSvg(drawing, { title, filled: true });
}
