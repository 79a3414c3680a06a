// What a band must not cover in silence: the lip zone of a vessel that is drunk from, and the keep-outs of the blank.
import type { Blank } from '../../blank/blank.ts';
import type { Band } from '../../blank/flat-band.ts';
import type { KeepOut } from '../../blank/keep-out.ts';
import { lipZoneStart } from '../../blank/lip-zone.ts';
import { type Wall, wallLength } from '../../blank/wall.ts';
import { type Finding, look, note } from '../../finding.ts';
import { precision } from '../../geometry/tolerance.ts';
import { inMm } from '../../lengths/length.ts';
import { type Template, turnOfEdge } from '../../unroll/template.ts';
import type { Job } from '../typed/resolved-job.ts';
import { given, type TypedIn, typedAt } from '../typed/typed-at.ts';

export interface BarePlacesInput {
  readonly job: Pick<Job, 'band'>;
  readonly jobFile: TypedIn;
  readonly blank: Blank;
  readonly blankFile: TypedIn;
  /** A plain template, to be looked at or wrapped in paper: it decorates nothing yet. */
  readonly plain?: boolean;
  /** A wrap of paper that motifs are laid by: no film covers anything there. */
  readonly isPaper?: boolean;
}

/** Findings `lip-zone` and `keep-out-covered`: `look`, but of a plain template, whose lip zone is a `note`. */
export const barePlaces = (input: BarePlacesInput, covered: Covered): readonly Finding[] => [
  ...lipZoneFindings(input, covered),
  ...(input.isPaper ? [] : (input.blank.keepOuts ?? [])).flatMap((keepOut, index) =>
    keepOutFindings(input, covered, keepOut, index),
  ),
];

/** What film covers: a band of the wall, between the sides of one piece or all the way around. */
export interface Covered {
  readonly wall: Wall;
  readonly band: Band;
  /** The piece; left out, film goes all the way around. */
  readonly template?: Template;
}

function lipZoneFindings(
  { job, jobFile, blank, blankFile, plain = false }: BarePlacesInput,
  { wall, band }: Covered,
): Finding[] {
  const length = wallLength(wall);
  const start = lipZoneStart(blank, length);
  const { to } = band;
  if (start === undefined || to <= start + precision) return [];
  const end = Math.floor(start * 100) / 100;
  // A wall that is no higher than the zone has no band below it.
  const shorter = end > band.from ? `End the band at ${inMm(end)}; or, if` : 'If';
  const says =
    `${plain ? 'this template' : 'the decoration'} reaches ${inMm(to - start)} into the common lip-and-rim zone, the top ${inMm(length - start)} of the wall: ` +
    'tests of drinkware look there (ASTM C927, DIN 51032); it is not a legal line, but keep it for coatings certified for food contact. ' +
    `${shorter} nobody drinks from it, give ${given(blankFile, 'use', 'other')}`;
  const where = typedAt(jobFile, job.band ? 'band.to' : 'band', { along: start });
  return [(plain ? note : look)('lip-zone', where, says)];
}

/** What to do about film over a keep-out. */
const advice: Readonly<Record<KeepOut['what'], string>> = {
  'weld line': 'it may show through or lift the film; try a piece over it first, or leave it bare',
  dent: 'film bridges it or puckers in it; cut the film out along the outline on the guide, or fill it first',
  'embossed mark':
    'film tents over it; cut the film out along the outline on the guide, or stop the band before it',
  lid: 'the lid will rub or lift the film; stop the band before it',
  thread: 'the thread will lift the film; stop the band before it',
  window: 'cut the film out along the outline on the guide, or stop the band before it',
};

function keepOutFindings(
  { blankFile }: BarePlacesInput,
  { band, template }: Covered,
  { what, turn, along }: KeepOut,
  index: number,
): Finding[] {
  const [from, to] = [Math.max(band.from, along?.from ?? 0), Math.min(band.to, along?.to ?? Infinity)];
  if (to - from <= precision) return [];
  if (turn && template && !isUnderPiece(template, turn, { from, to })) return [];
  const around = turn ? `from turn ${shownTurn(turn.from)} to ${shownTurn(turn.to)}` : 'all around';
  const says = `film covers this ${what} ${around}, from ${inMm(from)} to ${inMm(to)} along: ${advice[what]}`;
  const middle = turn && (turn.from + (turn.to + (turn.to < turn.from ? 1 : 0))) / 2;
  const where = typedAt(blankFile, `keepOut[${index}]`, {
    ...(middle === undefined ? {} : { turn: middle % 1 }),
    along: from,
  });
  return [look('keep-out-covered', where, says)];
}

const shownTurn = (turn: number): string => String(Number(turn.toFixed(4)));

/** Whether a run of turns meets the finished piece, which leaves a handle's turns out. Its sides are straight. */
function isUnderPiece(
  { wall, seam }: Template,
  turn: { readonly from: number; readonly to: number },
  along: { readonly from: number; readonly to: number },
): boolean {
  const ends = [along.from, along.to];
  const first = Math.min(...ends.map((end) => turnOfEdge(wall, seam.start, end)));
  const last = Math.max(...ends.map((end) => turnOfEdge(wall, seam.finish, end)));
  const to = turn.to < turn.from ? turn.to + 1 : turn.to;
  return [0, 1].some((k) => to - k > first && turn.from - k < last);
}
