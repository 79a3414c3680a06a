// The picture of a knife's way: places of a piece, much enlarged, at which axis and tip part the most.
import { readSvg } from '../../deliver/read-svg.ts';
import type { Contour } from '../../geometry/contour.ts';
import { cross, dot, type Point } from '../../geometry/point.ts';
import { directionAt, pointAt } from '../../geometry/segment.ts';
import { inMm } from '../../lengths/length.ts';
import { type KnifePlace, knifeView } from '../../picture/knife-view.ts';
import { tipStrokes } from '../../prove/written/tip-path.ts';
import { firstHeading } from '../../sheet/knife-path.ts';
import { knifeOf } from '../blade/knife.ts';
import { forCutter } from '../cutter/machine-files.ts';
import type { NamedFile, WrittenPiece } from '../deliverables.ts';
import type { JobTools } from '../tools.ts';
import type { Cutter } from '../typed/material.ts';
import { pictureFiles } from './picture-files.ts';

const cutContours = (text: string): readonly (readonly Contour[])[] =>
  readSvg(text, 'cut.svg').groups.map(({ paths }) => paths.flatMap(({ contours }) => contours));

/** The turn at the start of each segment that goes on from another, radians. */
const turnsOf = ({ segments, closed }: Contour) =>
  segments.flatMap((segment, i) => {
    const before = i === 0 && !closed ? undefined : segments.at(i - 1);
    if (!before) return [];
    const [a, b] = [directionAt(before, 1), directionAt(segment, 0)];
    return [{ at: segment.from, turn: Math.abs(Math.atan2(cross(a, b), dot(a, b))) }];
  });

/** How much a curve turns from its beginning to its end for its length, radians a mm. */
const bendsOf = ({ segments }: Contour) =>
  segments.flatMap((segment) => {
    if (segment.kind === 'line') return [];
    const [a, b] = [directionAt(segment, 0), directionAt(segment, 1)];
    const length = Math.hypot(segment.to.x - segment.from.x, segment.to.y - segment.from.y);
    const turn = Math.abs(Math.atan2(cross(a, b), dot(a, b)));
    return length > 0.2 ? [{ at: pointAt(segment, 0.5), turn: turn / length }] : [];
  });

const most = (places: readonly { readonly at: Point; readonly turn: number }[]): Point | undefined =>
  places.length === 0 ? undefined : places.reduce((a, b) => (b.turn > a.turn ? b : a)).at;

function placesOf(contours: readonly Contour[]): readonly KnifePlace[] {
  const start = contours.find(({ closed }) => closed)?.segments[0]?.from;
  const found = [
    { says: 'the sharpest corner', at: most(contours.flatMap(turnsOf)) },
    { says: 'the tightest curve', at: most(contours.flatMap(bendsOf)) },
    { says: 'where a closed line begins and ends', at: start },
  ];
  return found.flatMap(({ says, at }) => (at ? [{ says, at }] : []));
}

/** `knife.svg` and `knife.png` of the first piece; none where the files hold the lines themselves. */
export function knifePictures(
  piece: WrittenPiece | undefined,
  cutter: Cutter,
  { words, ...tools }: Pick<JobTools, 'words' | 'onWhite'>,
): NamedFile[] {
  const knife = knifeOf(cutter);
  if (!knife || !piece) return [];
  const wanted = cutContours(piece.cut);
  // A file that is corrected comes out true on its machine: shown is what it then cuts.
  const { measured: _, ...trueCutter } = cutter;
  const axis = cutContours(forCutter(piece, '', trueCutter).cut);
  const picture = knifeView(
    {
      title: `${piece.stem}: the way of the knife, its tip ${inMm(knife.offset)} behind the axis`,
      wanted: wanted.flat(),
      axis: axis.flat(),
      tip: axis
        .flatMap((strokes) => tipStrokes(strokes, knife.offset, firstHeading))
        .map(({ points }) => points),
      places: placesOf(wanted.flat()),
      reach: Math.max(1, 5 * knife.offset),
    },
    words,
  );
  return pictureFiles('knife', picture, tools);
}
