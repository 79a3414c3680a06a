// Does the tip of a drag knife cut the lines that are wanted, where its axis goes as the file says?
import { type Contour, polyline } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { cross, distance, dot, type Point } from '../../geometry/point.ts';
import { directionAt } from '../../geometry/segment.ts';
import { atMost, type Check, largest } from '../check.ts';
import { type AskedCutter, type AskedKnife, type ReadFiles, readFiles } from '../written/cutter-file.ts';
import {
  type DeliveredFile,
  type DeliveredGroup,
  groupsIn,
  type PieceText,
} from '../written/delivered-file.ts';
import { asIs, Reading } from '../written/piece.ts';
import { samplesOn } from '../written/samples.ts';
import { tipStrokes } from '../written/tip-path.ts';

/** How far the cut may be off the wanted line, mm: what is asked of the compensation. */
const knifeLimit = 0.02;

/** Places of the tip's way are looked at this close together, mm; in between it bends by less than a hundredth. */
const lookEvery = 0.1;

/** How far a line is looked for, mm; one that is not there counts as this far. */
const reach = 10;

/** The blade points to the right when it first comes down. */
const setHeading: Point = { x: 1, y: 0 };

/** Less of a turn is no corner that a blade would be lifted for, radians. */
const leastCorner = (5 * Math.PI) / 180;

const away = (finder: NearestFinder, p: Point): number =>
  finder.find(p, 2 * knifeLimit)?.distance ??
  finder.find(p, 1)?.distance ??
  finder.find(p, reach)?.distance ??
  reach;

/** Corners of contours. */
const cornersOf = (contours: readonly Contour[]): Point[] =>
  contours.flatMap(({ segments }) =>
    segments.flatMap((segment, i) => {
      const before = segments.at(i - 1);
      if (!before) return [];
      const [a, b] = [directionAt(before, 1), directionAt(segment, 0)];
      return Math.abs(Math.atan2(cross(a, b), dot(a, b))) > leastCorner ? [segment.from] : [];
    }),
  );

/** Points no closer together than that, both ends among them. */
function thinned(points: readonly Point[]): readonly Point[] {
  let last: Point | undefined;
  return points.filter((p, i) => {
    if (last && i < points.length - 1 && distance(last, p) < lookEvery) return false;
    last = p;
    return true;
  });
}

/** How far the tip is off the lines, and the lines off where the tip went, mm, of one group. */
function missesOf(
  axis: readonly Contour[],
  wanted: readonly Contour[],
  { offset, pastCorner }: AskedKnife,
): { readonly off: number; readonly left: number } {
  const tips = tipStrokes(axis, offset, setHeading).map(({ points }) => points);
  const lines = new NearestFinder(wanted);
  const corners = pastCorner > 0 ? cornersOf(wanted) : [];
  const isMeant = (p: Point) => corners.some((corner) => distance(corner, p) <= pastCorner + knifeLimit);
  const offs = tips.flatMap(thinned).map((p) => {
    const by = away(lines, p);
    return by > knifeLimit && isMeant(p) ? 0 : by;
  });
  const cut = new NearestFinder(tips.map((points) => polyline(points)));
  return { off: largest(offs), left: largest(samplesOn(wanted).map((p) => away(cut, p))) };
}

/** The groups of what is cut, each with what the axis does for it. */
function pairsOf({
  cut,
  axis,
}: ReadFiles): { readonly wanted?: DeliveredGroup; readonly axis?: DeliveredGroup }[] {
  if (!axis) return [];
  return ['artwork', 'relief', 'outline'].flatMap((role) => {
    const [lines, ways] = [groupsIn(cut, role), groupsIn(axis, role)];
    return Array.from({ length: Math.max(lines.length, ways.length) }, (_, i) => ({
      ...(lines[i] ? { wanted: lines[i] } : {}),
      ...(ways[i] ? { axis: ways[i] } : {}),
    }));
  });
}

const curves = (file: DeliveredFile, group: DeliveredGroup | undefined): readonly Contour[] =>
  group ? new Reading().contours(file, [group], asIs) : [];

/** Rows of all the files of a job that hold the way of a knife's axis; none where there are none. */
export function knifeChecks(texts: readonly PieceText[], cutter: AskedCutter = {}): Check[] {
  const { knife } = cutter;
  if (!knife) return [];
  const files = texts.flatMap((text) => readFiles(text, cutter) ?? []);
  const misses = files.flatMap((file) =>
    pairsOf(file).map(({ wanted, axis }) =>
      missesOf(curves(file.axis ?? file.cut, axis), curves(file.guide, wanted), knife),
    ),
  );
  const row = (rule: string, value: number, says: string): Check =>
    atMost({ rule, value, limit: knifeLimit, unit: 'mm', says });
  return [
    row(
      'knife-tip',
      largest(misses.map(({ off }) => off)),
      "cut of the knife's tip off the wanted lines, its axis going as the file says",
    ),
    row('knife-all', largest(misses.map(({ left }) => left)), "wanted lines off what the knife's tip cuts"),
  ];
}
