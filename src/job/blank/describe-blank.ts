// A blank in the maker's words.
import type { Blank } from '../../blank/blank.ts';
import { thicknessUnder } from '../../blank/coats.ts';
import type { Band } from '../../blank/flat-band.ts';
import {
  flatBandsOfWall,
  longestBand,
  meanLean,
  roundLimits,
  type Wall,
  wallAt,
  wallForm,
  wallLength,
  wallOf,
} from '../../blank/wall.ts';
import { wallArea } from '../../blank/wall-area.ts';
import type { Finding } from '../../finding.ts';
import { degrees } from '../../lengths/angle.ts';
import { measuredLength, type Units } from '../../lengths/length.ts';
import { toldIn } from '../../lengths/told-in.ts';
import { type CoatReport, coatFindings, coatsOnWall } from '../plan/coats-on-wall.ts';
import { type Measures, measuresOf } from '../plan/measures.ts';
import { type BlankReport, blankReport } from '../report.ts';
import { type Film, type JobCoat, standardFilm } from '../typed/material.ts';
import { keyShown, type TypedIn, toldAt } from '../typed/typed-at.ts';
import { coatsInWords, measuresInWords } from './measures-in-words.ts';
import { type OnePiece, onePieceInWords, widestOnePiece } from './one-piece.ts';

export interface BlankDescription {
  readonly report: BlankReport & Measures & { readonly onePiece?: OnePiece };
  /** The coats asked about, on this blank. */
  readonly coats: readonly CoatReport[];
  readonly lines: readonly string[];
  readonly checks: readonly Finding[];
}

/** All that can be said of a blank. `typedIn` is named in findings, `units` are those of the words. */
export function describeBlank(
  blank: Blank,
  typedIn: TypedIn,
  units: Units,
  given: readonly JobCoat[] = [],
  gives: Pick<Film, 'stretch' | 'gather'> = standardFilm,
): BlankDescription {
  const { wall, findings } = wallOf(blank);
  const flatBands = flatBandsOfWall(wall, blank);
  const band = longestBand(flatBands) ?? roundLimits(wall, blank);
  const measures = measuresOf(blank, wall, band);
  const coats = coatsOnWall(wall, given, { spread: band, band, film: standardFilm.thickness, file: typedIn });
  const onePiece = widestOnePiece(
    { wall, limits: roundLimits(wall, blank), flatBands },
    { ...standardFilm, ...gives },
    thicknessUnder(coats.coats),
  );
  const about = { lean: meanLean(wall), reading: blank.reading, file: typedIn };
  const shown = (mm: number) => measuredLength(mm, units);
  return {
    report: { ...blankReport(wall, flatBands), ...measures, ...(onePiece ? { onePiece } : {}) },
    coats: coats.reports,
    lines: [
      ...inWords(blank, wall, flatBands, units),
      ...(onePiece ? [onePieceInWords(onePiece, shown)] : []),
      ...measuresInWords(measures, shown, (key) => keyShown(typedIn, key)),
      ...coatsInWords(coats.reports, shown),
    ],
    checks: [...toldAt(findings, typedIn), ...coatFindings(given, coats, about)],
  };
}

function formInWords(wall: Wall): string {
  const lean = meanLean(wall);
  const wider = lean > 0 ? 'lip' : 'foot';
  switch (wallForm(wall)) {
    case 'cylinder':
      return 'straight up and down: its wall lies flat as a rectangle';
    case 'frustum':
      return `tapered, wider at the ${wider}: its wall leans ${degrees(Math.abs(lean)).toFixed(2)} degrees and lies flat as part of a ring`;
    case 'stepped':
      return 'stepped: straight between its stations, each stretch a part of a ring of its own';
    case 'curved':
      return 'curved: its wall bends all the way, and film must give to lie on it';
  }
}

/** Lines of plain words: form, flat bands, girths with how sure they are, area and what a coat takes. */
function inWords(blank: Blank, wall: Wall, flatBands: readonly Band[], units: Units): string[] {
  const shown = (mm: number) => measuredLength(mm, units);
  const { girthAt } = blankReport(wall, flatBands);
  const length = wallLength(wall);
  return [
    `${blank.name}: ${formInWords(wall)}`,
    `wall: ${shown(length)} along from the foot corner to the lip corner (${shown(wallAt(wall, length).height)} high)`,
    ...(flatBands.length === 0 ? ['a straightedge finds no flat band on it'] : []),
    ...flatBands.map((band) => {
      const area = wallArea(wall, band);
      const says = `film lies flat from ${shown(band.from)} to ${shown(band.to)} along the wall: ${(area / 100).toFixed(1)} cm², where a coat of 0.1 mm takes ${((area * 0.1) / 1000).toFixed(2)} ml before what is lost`;
      return toldIn(says, units);
    }),
    ...girthAt.map(
      ({ along, girth, u }) =>
        `girth at ${shown(along)} along: ${shown(girth)}, give or take ${shown(2 * u)} (19 times in 20)`,
    ),
  ];
}
