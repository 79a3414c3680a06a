// Repeats and ways to close, in the maker's words.
import { type Finding, stop } from '../../finding.ts';
import { degrees } from '../../lengths/angle.ts';
import { measuredLength, type Units } from '../../lengths/length.ts';
import { inPercent } from '../../lengths/percent.ts';
import { shown } from '../../lengths/shown.ts';
import type { OpenStretch } from '../../pattern/joins/at-border.ts';
import type { Lattice } from '../../pattern/lattice/lattice.ts';
import type { BandEnd } from '../../pattern/lay/edge-slivers.ts';
import type { RepeatStudy } from '../../pattern/study/repeat-study.ts';
import { sureRepeat } from '../../pattern/study/sure-repeat.ts';
import type { Way } from '../../pattern/ways/ways.ts';
import type { Job } from '../typed/resolved-job.ts';
import type { TypedIn } from '../typed/typed-at.ts';

/** The files that findings name. */
export interface ArtFiles {
  readonly job: TypedIn;
  readonly art: string;
}

/** A length read off a drawing: finer than any tape, for it was drawn. */
export const drawnLength = (mm: number, units: Units = 'mm'): string =>
  units === 'mm' ? `${mm.toFixed(2)} mm` : `${(mm / 25.4).toFixed(4)} in`;

/** A lattice as a maker would read it off the drawing: its two steps, and what kind of repeat they make. */
export function stepsInWords({ a, b }: Lattice, units: Units = 'mm'): string {
  const size = (mm: number) => drawnLength(Math.abs(mm), units);
  const level = Math.abs(a.y) < levelled;
  const upright = Math.abs(b.x) < levelled;
  const across = `${size(a.x)} around by ${size(b.y)} up`;
  if (level && upright) return across;
  if (upright) return `${across} with a ${isHalf(a.y, b.y) ? 'half drop' : 'drop'} of ${size(a.y)}`;
  if (level) return `${across}, ${isHalf(b.x, a.x) ? 'brick, its rows' : 'rows'} shifted by ${size(b.x)}`;
  const sideways = ({ x, y }: Lattice['a']) =>
    `${size(x)} ${x < 0 ? 'left' : 'right'} and ${size(y)} ${y < 0 ? 'up' : 'down'}`;
  return `a step of ${sideways(a)}, and one of ${sideways(b)}`;
}

/** What is level to the eye on paper, mm. */
const levelled = 0.02;

const isHalf = (part: number, whole: number): boolean => Math.abs(Math.abs(part / whole) - 0.5) < 0.01;

/** How a band ends, and at which of its ends a straight edge goes through film. */
export interface WayEdges {
  readonly edges: Job['edges'];
  readonly cut: readonly BandEnd[];
}

/** A way in one line: how many go around, at what size, what rows it makes and how they end, and what it does to a motif. */
export function wayInWords(way: Way, units: Units, ends: WayEdges): string {
  const parts = [
    laidInWords(way, units),
    sizeInWords(way),
    rowsInWords(way, ends),
    leanInWords(way),
    bentInWords(way, units),
  ];
  return parts.filter((part) => part !== '').join('; ');
}

function laidInWords({ kind, around, lattice }: Way, units: Units = 'mm'): string {
  switch (kind) {
    case 'repeat':
      return `${around} around`;
    case 'period':
      return `${around} around, by a repeat of ${stepsInWords(lattice, units)}`;
    case 'mirrored':
      return `${around} around, every other tile mirrored, so that all meet at their borders`;
    case 'strip':
      return `${around} around as they are, ${around === 1 ? 'a cover strip over the border' : 'a cover strip over each border'} that does not meet`;
    case 'as-drawn':
      return `${around} around as they are, with borders that do not meet`;
  }
}

function sizeInWords({ closing: { scaleAcross, scaleUp }, scale, lay }: Way): string {
  if (lay === 'rigid')
    return `motifs at their drawn size, ${inPercent(scaleAcross)} around and ${inPercent(scaleUp)} up of how far apart they were drawn`;
  if (scale === 'across')
    return `${inPercent(scaleAcross)} of the drawn size around, ${inPercent(scaleUp)} up`;
  if (Math.abs(scaleAcross - scaleUp) < 5e-4) return `${inPercent(scaleAcross)} of the drawn size`;
  return `${inPercent(scaleAcross)} of the drawn size around and ${inPercent(scaleUp)} up`;
}

function rowsInWords(way: Way, ends: WayEdges): string {
  const told = endsInWords(way, ends);
  return told === '' ? countInWords(way, ends) : `${countInWords(way, ends)}, ${told}`;
}

function countInWords({ rows }: Way, { edges }: WayEdges): string {
  const isWhole = Math.abs(rows - Math.round(rows)) < 5e-3;
  const whole = `${Math.round(rows)} ${edges === 'whole-rows' ? 'whole ' : ''}${Math.round(rows) === 1 ? 'row' : 'rows'}`;
  if (edges !== 'whole-rows') return isWhole ? whole : `${rows.toFixed(1)} rows`;
  return isWhole ? whole : `${rows.toFixed(2)} repeats up, from between two rows to between two rows`;
}

/** What becomes of motifs at the band's ends; of rigid ones, which stand by the lattice but keep their own heights, it isn't told here. */
function endsInWords({ lay }: Way, { edges, cut }: WayEdges): string {
  if (lay === 'rigid') return '';
  const where = cut.map((end) => `at the ${end}`).join(' and ');
  switch (edges) {
    case 'straight':
      return where === '' ? 'no motif cut by its edges' : `cut ${where}`;
    case 'fade':
      return where === '' ? 'no motif left out' : `motifs left out ${where}`;
    case 'whole-rows':
      return where === '' ? '' : `yet cut ${where}`;
  }
}

function leanInWords({ closing: { lean, n, m }, lattice }: Way): string {
  const shownDegrees = Math.abs(degrees(lean)).toFixed(2);
  if (Number(shownDegrees) === 0) return '';
  const rows = Math.abs(m) === 1 ? 'row' : 'rows';
  return `leans by ${shownDegrees} degrees, so that ${n} along and ${Math.abs(m)} ${rows} ${m * lattice.b.y < 0 ? 'up' : 'down'} meet the start`;
}

function bentInWords({ distortion, distortionMm }: Way, units: Units): string {
  if (distortion < 5e-4) return 'no motif changes its proportions';
  return `proportions change by up to ${inPercent(distortion)}, ${measuredLength(distortionMm, units)} on the widest motif`;
}

/** Where a border stays open, in words. */
export function openInWords({ layer, border, miss, length, instead }: OpenStretch): string {
  const place = `at its ${border === 'side' ? 'left and right' : 'upper and lower'} border`;
  if (instead !== undefined)
    return `${place} ${drawnLength(length)} of ${layer} ends where its copy goes on in ${instead}`;
  if (Math.abs(miss - length) < 1e-9)
    return `${place} ${drawnLength(length)} of ${layer} ends where its copy shows none`;
  return `${place} an edge of ${layer} is ${drawnLength(miss)} from where its copy goes on`;
}

/** How a tile that joins meets its copies. */
export function metInWords({ isDoubtful, borders: { crossings, sides } }: RepeatStudy): string {
  if (sides.length > 0) return sidesInWords(sides);
  if (crossings === 0)
    return isDoubtful
      ? 'nothing crosses its borders, so its size alone tells how far apart its copies stand: look whether they stand there as within'
      : 'nothing crosses its borders, and its copies stand as far from it as motifs within from one another';
  const met = `${crossings} edges cross its borders and all go on in its copies`;
  return isDoubtful
    ? `${met}, but straight across one of them or not at all, as they would wherever it is cut: look whether copies stand as far apart as within`
    : met;
}

/** Sides that were drawn on the borders, in words. */
export function sidesInWords(sides: readonly OpenStretch[]): string {
  const all = sides.reduce((sum, { length }) => sum + length, 0);
  const where = (['side', 'level'] as const)
    .filter((border) => sides.some((side) => side.border === border))
    .map((border) => (border === 'side' ? 'left and right' : 'upper and lower'))
    .join(', ');
  return `film ends along ${drawnLength(all)} of its ${where} borders, in sides like those within it: they were drawn there, and show as they are`;
}

/** Whether all that keeps a tile from joining is film that ends on its borders: only who drew it knows whether it should. */
export const endsOnBorders = ({ borders: { open } }: RepeatStudy): boolean =>
  open.length > 0 && open.every(({ ends }) => ends);

/** What to do about that. */
export const drawnToEnd =
  'Film that ends on its border may be a side drawn there, or a cut: if it was drawn so, lay it by "way": "as-drawn"';

/** Why a tile can't be laid unasked, and the ways out. */
export function notJoined(study: RepeatStudy, ways: readonly Way[], { art }: ArtFiles): Finding {
  const [worst] = study.borders.open;
  const where = worst ? { file: art, ...worst.at } : { file: art };
  const drawnSo = endsOnBorders(study) ? `. ${drawnToEnd}` : '';
  const more = study.borders.open.length > 1 ? `, and so ${study.borders.open.length} places in all` : '';
  const fault = worst
    ? `${study.isDoubtful ? 'may not meet its own copy, which cannot be told from it alone' : 'does not meet its own copy'}: ${openInWords(worst)}${more}`
    : `meets its own copy at the borders, but its spacing jumps there by ${drawnLength(study.jump ?? 0)}`;
  return stop(
    'does-not-join',
    where,
    `${fault}${drawnSo}. ${repeatFault(study)}. Three ways out: ${waysOut(ways)}`,
  );
}

function repeatFault({ period }: RepeatStudy): string {
  if (!period) return 'No repeat shows in it';
  const sure = Math.round(period.confidence * 100);
  const steps = stepsInWords(period);
  return period.confidence < sureRepeat
    ? `It may repeat by ${steps}, but that is only sure to ${sure} %`
    : `It repeats by ${steps}, but shows no whole period of it, or none that closes here`;
}

function waysOut(ways: readonly Way[]): string {
  const [first] = ways.filter(({ kind }) => kind !== 'as-drawn' && kind !== 'strip');
  const strip = ways.find(({ kind }) => kind === 'strip');
  const asDrawn = ways.find(({ kind }) => kind === 'as-drawn');
  const chosen = first
    ? `give "way": ${shown(first.key)} in the job's "artwork" (${laidInWords(first)})`
    : 'give "around" a count that closes';
  const covered = strip ? `; or "way": ${shown(strip.key)}, cover strips over its open borders` : '';
  const open = asDrawn ? `${covered ? ',' : ';'} or "way": "as-drawn", its borders left open` : '';
  return `${chosen}${covered}${open}; or give artwork that is drawn to repeat, or a larger crop of it, at least one and a third repeats each way`;
}
