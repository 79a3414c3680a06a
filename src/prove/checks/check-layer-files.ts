// Do cut files of single layers fall together: each with the outline and the marks of its guide where the guide has them, and its
// art where the guide shows it?
import type { Contour } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { distance } from '../../geometry/point.ts';
import { precision } from '../../geometry/tolerance.ts';
import { atMost, type Check, largest } from '../check.ts';
import { coverOf } from '../written/centre.ts';
import { type AskedCutter, asMade } from '../written/cutter-file.ts';
import { type DeliveredFile, groupsIn, type PieceText, readDelivered } from '../written/delivered-file.ts';
import { asIs, Reading } from '../written/piece.ts';
import { samplesOn } from '../written/samples.ts';

/** How far away a line's twin is looked for, mm; none within it counts as this far. */
const reach = 10;

/** Whether a line lies on a file's page. */
const isOnPage = ({ segments }: Contour, { units }: DeliveredFile): boolean =>
  segments.every(({ from: { x, y } }) => x >= 0 && y >= 0 && x <= units.across && y <= units.up);

/**
 * How far the lines of a role are from those of the guide, and the guide's from them, mm. The guide's squares lie past the page, and
 * what has a name there is laid by: neither is cut.
 */
function straying(file: DeliveredFile, guide: DeliveredFile, role: string): number {
  const reading = new Reading();
  const ours = reading.contours(file, groupsIn(file, role), asIs);
  const nameless = groupsIn(guide, role).map((group) => ({
    ...group,
    paths: group.paths.filter(({ id }) => id === undefined),
  }));
  const theirs = reading.contours(guide, nameless, asIs).filter((line) => isOnPage(line, file));
  if (reading.faults.length > 0) return Number.NaN;
  if (ours.length !== theirs.length) return Number.NaN;
  const off = (from: typeof ours, to: typeof ours) => {
    const finder = new NearestFinder(to);
    return largest(
      samplesOn(from).map((p) => (finder.find(p, 1) ?? finder.find(p, reach))?.distance ?? reach),
    );
  };
  return Math.max(off(ours, theirs), off(theirs, ours));
}

/** How far the middle of a layer's art is from where the guide shows it, mm. */
function artOff(file: DeliveredFile, guide: DeliveredFile): number {
  const [art] = groupsIn(file, 'artwork');
  const shown = groupsIn(guide, 'artwork').find(({ layer }) => layer === art?.layer);
  if (!art || !shown) return Number.NaN;
  const reading = new Reading();
  const pathsOf = (of: DeliveredFile, { paths }: typeof art) =>
    paths.map(({ data }) => reading.path(of, data, asIs));
  const [ours, theirs] = [pathsOf(file, art), pathsOf(guide, shown)];
  const from = ours[0]?.[0]?.segments[0]?.from;
  if (!from) return Number.NaN;
  return distance(coverOf(ours, from).middle, coverOf(theirs, from).middle);
}

/** A file's own size may be off by this share: more than rounding can do. */
export const sizeLimit = 1e-4;

const isInMm = ({ perUnit: { across, up } }: DeliveredFile): boolean =>
  [across, up].every((unit) => Math.abs(unit - 1) <= sizeLimit);

function offOf({ stem, guide: text, layers = [] }: PieceText, cutter: AskedCutter): readonly number[] {
  if (text === undefined) return layers.map(() => Number.NaN);
  const guide = readDelivered(text, `${stem}.guide.svg`);
  return layers.map((layer) => {
    const file = asMade(readDelivered(layer.cut, `${layer.stem}.cut.svg`), cutter);
    if (!isInMm(file) || groupsIn(file, 'artwork').length !== 1) return Number.NaN;
    return largest([
      straying(file, guide, 'outline'),
      straying(file, guide, 'register'),
      artOff(file, guide),
    ]);
  });
}

/**
 * Nothing where no layer has a file of its own; nor where files hold the way of a knife's axis: its lines are not those of the
 * guide, and what its tip cuts is proved apart (`check-knife.ts`).
 */
export function layerFileChecks(pieces: readonly PieceText[], cutter: AskedCutter = {}): Check[] {
  const several = pieces.filter(({ layers = [] }) => layers.length > 0);
  if (several.length === 0 || cutter.knife) return [];
  return [
    atMost({
      rule: 'layers-in-register',
      value: largest(several.flatMap((piece) => offOf(piece, cutter))),
      limit: precision,
      unit: 'mm',
      says: "the art, outline or marks of a layer's own file off those of the guide, so that layers would not fall together",
    }),
  ];
}
