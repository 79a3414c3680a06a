// How well a blank is known, in the maker's words.
import type { KeepOut } from '../blank/keep-out.ts';
import { type Finding, look, note } from '../finding.ts';
import { measuredLength } from '../lengths/length.ts';
import type { CoatReport } from './coats-on-wall.ts';
import type { FiguresReport, Measures } from './measures.ts';
import type { Job } from './resolved-job.ts';
import { type TypedIn, typedAt } from './typed-at.ts';

type Shown = (mm: number) => string;

/** Lines for `blank`; `shown` writes a length in the maker's unit, `keyShown` a key as the maker typed it. */
export function measuresInWords(
  measures: Measures,
  shown: Shown,
  keyShown: (key: string) => string,
): string[] {
  const { seam, overlap, fitted, keepOuts = [], sure } = measures;
  const worst = Math.max(seam.foot, seam.lip);
  return [
    surenessInWords(measures.reading, shown),
    ...readingsInWords(measures, shown, keyShown),
    ...(fitted ? fittedInWords(fitted, shown) : []),
    ...(sure && sure.sweepDeg.value > 0.05
      ? [
          `laid flat it sweeps ${sure.sweepDeg.value.toFixed(2)} degrees, give or take ${Math.min(360, 2 * sure.sweepDeg.u).toFixed(2)}`,
        ]
      : []),
    `the ends of a wrap may miss each other by ${shown(2 * seam.foot)} at its foot edge and ${shown(2 * seam.lip)} at its lip edge (19 times in 20 by less)`,
    `overlap advised: ${shown(overlap.recommended)}, which is twice ${shown(worst)} (how sure the girth is at the worse edge) and ${shown(overlap.recommended - overlap.coversAt95)} to hold; from ${shown(overlap.coversAt95)} on it still covers 19 times in 20`,
    ...halfInWords(measures, shown, keyShown),
    ...keepOuts.map((keepOut) => keepOutInWords(keepOut, shown)),
  ];
}

/** What all that is said of sureness stands on. */
function surenessInWords({ u, isAssumed }: Measures['reading'], shown: Shown): string {
  const whose = isAssumed ? 'assumed, as the blank names none' : 'as the blank says';
  return `one reading is taken to be good to ${shown(u)} (standard uncertainty, ${whose}); a diameter counts 3.14 times on the girth`;
}

/** What each reading is off by, where there are more than the wall needs. */
const readingsInWords = (
  { readings = [] }: Measures,
  shown: Shown,
  keyShown: (key: string) => string,
): string[] =>
  readings.length < 3
    ? []
    : readings.map(({ key, girth, residual, isReplaced }) => {
        const off = `${shown(Math.abs(residual))} ${residual < 0 ? 'under' : 'over'}`;
        return `${keyShown(key)} tells a girth of ${shown(girth)}, ${off} the fitted wall${isReplaced ? '; the paper fit stands in its place' : ''}`;
      });

/** What half a millimetre of tape does at the seam. */
function halfInWords(
  { halfMillimetre: half }: Measures,
  shown: Shown,
  keyShown: (key: string) => string,
): string[] {
  const rule = `half a millimetre of tape is half a millimetre at the seam, and half a millimetre across is ${shown(Math.PI / 2)}`;
  if (!half) return [rule];
  const at = (change: number) => `${shown(Math.abs(change))}${change < 0 ? ' the other way' : ''}`;
  return [
    `${rule}; here ${keyShown(half.key)} read half a millimetre too small leaves a gap of ${at(half.foot)} at the foot edge and ${at(half.lip)} at the lip edge`,
  ];
}

function fittedInWords({ before, after }: NonNullable<Measures['fitted']>, shown: Shown): string[] {
  const from = (key: keyof FiguresReport) => `${shown(before[key])} to ${shown(after[key])}`;
  const lean = [before, after].map(({ halfAngleDeg }) => halfAngleDeg.toFixed(2)).join(' to ');
  return [
    `the paper fits moved the girth at the foot from ${from('footGirth')}, at the lip from ${from('lipGirth')}, the lean from ${lean} degrees, the height from ${from('height')}`,
  ];
}

function keepOutInWords({ what, turn, along }: KeepOut, shown: Shown): string {
  const around = turn ? `from turn ${turn.from} to ${turn.to}` : 'all around';
  const up = along ? `from ${shown(along.from)} to ${shown(along.to)} along` : 'from foot to lip';
  return `keep clear of the ${what} ${around}, ${up}`;
}

export const coatsInWords = (coats: readonly CoatReport[], shown: Shown): string[] =>
  coats.map(
    ({ name, thickness, girthGrowth, girthAfter, volume, over }) =>
      `${name}${over ? ' (over the film)' : ''}: ${thickness.toFixed(2)} mm makes the girth grow by ${shown(girthGrowth)}, to ${shown(girthAfter)} in the middle of the band; mix ${volume.toFixed(1)} ml`,
  );

/** Whether the job's overlap covers what the readings leave open: `overlap-short` (look), `butt-open` (note). */
export function overlapFindings(
  { overlap, seam }: Measures,
  job: Pick<Job, 'seam'>,
  file: TypedIn,
): Finding[] {
  const { style, overlap: given } = job.seam;
  const where = typedAt(file, 'seam.overlap');
  const [foot, lip, least, advised] = [
    2 * seam.foot,
    2 * seam.lip,
    overlap.coversAt95,
    overlap.recommended,
  ].map((mm) => measuredLength(mm, 'mm'));
  if (style === 'butt')
    return [
      note(
        'butt-open',
        typedAt(file, 'seam'),
        `the readings leave ${foot} of girth open at the foot edge and ${lip} at the lip edge, which a butt seam does not cover; wrap the paper first, or give an overlap`,
      ),
    ];
  if (given >= overlap.coversAt95) return [];
  const says = `${measuredLength(given, 'mm')} may not cover: the readings leave ${foot} of girth open at the foot edge and ${lip} at the lip edge (19 times in 20); give ${least} at least, better ${advised}, or read the girth with a tape`;
  return [look('overlap-short', where, says)];
}
