// Motifs cut as pieces of their own: their files, and how they lie on the wall.
import { filmOfMotif, motifDrawings } from '../../cut/drawings/motif-drawing.ts';
import { fieldOfBox } from '../../cut/films/relief.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import { boxCorners } from '../../geometry/box.ts';
import { polygon } from '../../geometry/contour.ts';
import { cutLength, type Units } from '../../lengths/length.ts';
import type { Draft } from '../draft.ts';
import type { MakeInput } from '../make-input.ts';
import { fromSeam, lineAtSeam } from '../motifs/motif-places.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';
import type { Part } from './part.ts';
import { placementOf } from './placement.ts';
import { reliefOf } from './relief.ts';

/** The parts of motifs that are cut apart. */
export function motifParts(input: MakeInput, drafts: readonly Draft[]): readonly Part[] {
  const { job, blank, tools } = input;
  const { words } = tools;
  const line = lineAtSeam(blank);
  const motifs = (drafts[0]?.laid ?? []).filter(({ placed }) => placed.isApart);
  return motifs.map((laid) => {
    const { placed, wall, at, layers } = laid;
    const away = fromSeam(wall, at);
    const onSheet = { wall, along: at.along, layers };
    const relief = reliefOf(input, fieldOfBox(filmOfMotif(onSheet)), layers, placed.name);
    const drawings = motifDrawings({
      ...onSheet,
      relief: relief.cuts,
      notes: notesOf(job, placed, whereWords(placed, away, { line, units: job.units })),
      words,
    });
    const title = `${job.name}: ${placed.name}`;
    return {
      stem: placed.name,
      cut: writeSvg(drawings.cut, { title: `${title}: cut`, filled: false }),
      guide: writeSvg(drawings.guide, { title: `${title}: guide`, filled: true }),
      place: () => placementOf({ blank, laid, title: placeTitle(job.name, placed), units: job.units, words }),
      findings: relief.findings,
      sheet: {
        says: `${placed.name}: ${placed.says}`,
        where: whereWords(placed, away, { line, units: job.units }).join(', '),
        size: sizeWords(placed, job.units),
        outlines: [polygon(boxCorners(filmOfMotif(onSheet)))],
      },
    };
  });
}

const placeTitle = (job: string, placed: PlacedMotif): string =>
  `${job}: ${calledOnGuide(placed)}: where it goes`;

const sizeWords = ({ size: { across, up } }: PlacedMotif, units: Units): string =>
  `${cutLength(across, units)} across, ${cutLength(up, units)} up`;

/** A place this near the seam line is on it, mm. */
const onLine = 0.005;

/** Where a motif goes: its two lines; `away` is how far around from `line`, that of turn 0. */
function whereWords(
  { at }: PlacedMotif,
  away: number,
  { line, units }: { readonly line: string; readonly units: Units },
): readonly string[] {
  const plumb =
    Math.abs(away) < onLine
      ? `plumb line on ${line}`
      : `plumb line ${cutLength(Math.abs(away), units)} to the ${away < 0 ? 'left' : 'right'} of ${line}, measured along the level line`;
  return [`level line ${cutLength(at.along, units)} up the wall from the foot corner`, plumb];
}

/** What the guide's own font has: names in other scripts stand on it as their own lettering alone. */
const isSpelt = (text: string): boolean => /^[\p{Script=Latin}\p{P}\p{N}\p{S}\p{Zs}]+$/u.test(text);

/** A motif by its name and what it says, its lines one after another. */
function calledOnGuide({ name, says }: PlacedMotif): string {
  const inOneLine = says.replaceAll('\\n', ' / ');
  return isSpelt(inOneLine) ? `${name}, ${inOneLine}` : name;
}

/** Lines of words for the guide. */
const notesOf = (
  { name, units }: MakeInput['job'],
  placed: PlacedMotif,
  where: readonly string[],
): string[] => [
  `${name}: ${calledOnGuide(placed)}`,
  `${sizeWords(placed, units)}${placed.lay === 'rigid' ? '' : ', bent along the level line'}; seen from outside, foot down`,
  ...where,
  'measure the squares before you cut: 25 mm and 1 in',
];
