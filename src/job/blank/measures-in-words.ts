// How well a blank is known, in the maker's words.
import type { KeepOut } from '../../blank/keep-out.ts';
import { inMm } from '../../lengths/length.ts';
import type { CoatReport } from '../plan/coats-on-wall.ts';
import type { FiguresReport, Measures } from '../plan/measures.ts';

type Shown = (mm: number) => string;

/** Lines for `blank`; `shown` writes a length in the maker's unit, `keyShown` a key as the maker typed it. */
export function measuresInWords(
  measures: Measures,
  shown: Shown,
  keyShown: (key: string) => string,
): string[] {
  const { fitted, keepOuts = [], sure } = measures;
  return [
    surenessInWords(measures.reading, shown),
    ...readingsInWords(measures, shown, keyShown),
    ...(fitted ? fittedInWords(fitted, shown) : []),
    ...(sure && sure.sweepDeg.value > 0.05
      ? [
          `laid flat it sweeps ${sure.sweepDeg.value.toFixed(2)} degrees, give or take ${Math.min(360, 2 * sure.sweepDeg.u).toFixed(2)}`,
        ]
      : []),
    ...endsInWords(measures, shown),
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
  { readings }: Measures,
  shown: Shown,
  keyShown: (key: string) => string,
): string[] =>
  readings.length < 3
    ? []
    : // What nothing checks is on the wall by itself.
      readings
        .filter(({ u }) => u > 0)
        .map((reading) => {
          const { girth, residual, isReplaced } = reading;
          const off = `${shown(Math.abs(residual))} ${residual < 0 ? 'under' : 'over'}`;
          return `${readingCalled(reading, shown, keyShown)} tells a girth of ${shown(girth)}, ${off} the fitted wall${isReplaced ? '; the paper fit stands in its place' : ''}`;
        });

/** A reading by what it is and where, and by its key so that it is found. */
const readingCalled = (
  { key, along }: Pick<Measures['readings'][number], 'key' | 'along'>,
  shown: Shown,
  keyShown: (key: string) => string,
): string =>
  `the ${key.includes('across') ? 'diameter' : 'girth'} ${shown(along)} up the wall (${keyShown(key)})`;

/** How far the ends of a wrap may be off, and the overlap for that; beside a handle they never meet. */
function endsInWords({ seam, overlap }: Measures, shown: Shown): string[] {
  const off = `${shown(2 * seam.foot)} at its foot edge and ${shown(2 * seam.lip)} at its lip edge (19 times in 20 by less)`;
  if (!overlap)
    return [
      `a wrap ends on both sides of the handle: it has no seam, and needs no overlap; from one side to the other it may be too long or too short by ${off}`,
    ];
  const { recommended, coversAt95 } = overlap;
  return [
    `the ends of a wrap may miss each other by ${off}`,
    `overlap advised: ${shown(recommended)}, which is twice ${shown(Math.max(seam.foot, seam.lip))} (how sure the girth is at the worse edge) and ${shown(recommended - coversAt95)} to hold; from ${shown(coversAt95)} on it still covers 19 times in 20`,
  ];
}

/** What half a millimetre of tape does where the ends are. */
function halfInWords(
  { halfMillimetre: half, overlap, readings }: Measures,
  shown: Shown,
  keyShown: (key: string) => string,
): string[] {
  const place = overlap ? 'at the seam' : 'beside the handle';
  const slip = shown(0.5) === '0.5 mm' ? 'half a millimetre' : shown(0.5);
  const rule = `${slip} of tape is ${slip} ${place}, and ${slip} across is ${shown(Math.PI / 2)}`;
  const read = readings.find(({ key }) => key === half?.key);
  if (!half || !read) return [rule];
  const at = (change: number) => `${shown(Math.abs(change))}${change < 0 ? ' the other way' : ''}`;
  return [
    `${rule}; here ${readingCalled(read, shown, keyShown)} read ${slip} too small leaves a gap of ${at(half.foot)} at the foot edge and ${at(half.lip)} at the lip edge`,
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
      `${name}${over ? ' (over the film)' : ''}: ${inMm(thickness)} makes the girth grow by ${shown(girthGrowth)}, to ${shown(girthAfter)} in the middle of the band; mix ${volume.toFixed(1)} ml`,
  );
