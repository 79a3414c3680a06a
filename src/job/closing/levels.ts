// A band cut in levels, one above the other: where the maker says, or because no panels of it fit the sheet.
import type { Band } from '../../blank/flat-band.ts';
import { artCrossed } from '../../cut/checks/art-crossed.ts';
import { type Finding, look, note, Refused, stop } from '../../finding.ts';
import type { Shape } from '../../geometry/contour.ts';
import { inMm } from '../../lengths/length.ts';
import type { Lay } from '../../pattern/lay/lay.ts';
import { chooseJoints } from '../../sheet/joints.ts';
import { sheetOnWall } from '../../unroll/sheet-wall.ts';
import type { Levels } from '../plan/panel-places.ts';
import { costsOf, fitsInPanels, leastPart, lookEvery, narrowest } from '../plan/panels.ts';
import { type PiecesInput, plansOfBands } from '../plan/pieces.ts';
import type { Plan } from '../plan/plan.ts';
import { mostLevels } from '../typed/read-panels.ts';
import { type Job, standardPanels } from '../typed/resolved-job.ts';
import { typedAt } from '../typed/typed-at.ts';
import { rowBorders } from './border-strips.ts';
import type { PatternPlan } from './pattern-plan.ts';

export interface LevelsInput extends PiecesInput {
  readonly job: PiecesInput['job'] & Pick<Job, 'sheet' | 'panels' | 'artwork'>;
}

/** The art on the whole band. */
export interface BandArt {
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
  readonly pattern?: { readonly plan: PatternPlan; readonly lay: Lay };
}

interface InLevels {
  /** From the foot up; as they were where no levels are needed, or none help. */
  readonly plans: readonly Plan[];
  readonly levels: Levels;
  readonly findings: readonly Finding[];
}

/** Heights are cut to this, mm. */
const roundTo = 0.01;

/** The band in levels; `art` is worked out only where it has to be looked for the best places. @throws Refused */
export function inLevels(input: LevelsInput, plans: readonly Plan[], art: () => BandArt): InLevels {
  const { job } = input;
  const { overlap, joints, levels } = job.panels ?? standardPanels;
  const none: InLevels = { plans, levels: { at: [], overlap }, findings: [] };
  if (levels !== undefined)
    return levels.length === 0 ? none : typedLevels(input, plans, { at: levels, overlap });
  const [whole] = plans;
  // Joints that the maker gave are theirs; and a motif moved whole goes across no level.
  const isOurs = typeof joints === 'string';
  if (!whole || plans.length > 1 || !isOurs || job.artwork?.lay === 'rigid') return none;
  if (fitsInPanels(whole.template, job)) return none;
  const asked = joints === 'repeats' ? (['repeats', 'least-art'] as const) : (['least-art'] as const);
  const limits = limitsOf(input, whole, overlap);
  for (const kind of asked) {
    const found = chosenLevels(input, whole, limits, { kind, art: art(), overlap });
    if (!found) continue;
    return {
      ...found,
      findings: [...missedRows(input, kind !== joints), levelsNote(input, whole, found.levels)],
    };
  }
  return none;
}

function typedLevels(input: LevelsInput, plans: readonly Plan[], levels: Levels): InLevels {
  const [whole] = plans;
  const place = typedAt(input.jobFile, 'panels.levels');
  if (!whole || plans.length > 1)
    throw new Refused([
      stop(
        'levels-of-pieces',
        place,
        'are for a band in one piece, and this wall is covered by stacked ones; leave them out',
      ),
    ]);
  const { from, to } = whole.band;
  const past = levels.at.find((at) => at <= from || at >= to);
  if (past !== undefined)
    throw new Refused([
      stop(
        'level-outside',
        place,
        `${inMm(past)} is not within the band, which goes from ${inMm(from)} to ${inMm(to)}`,
      ),
    ]);
  const bands = bandsBetween(whole.band, levels.at);
  const least = Math.max(leastPart, levels.overlap);
  const low = bands.find((band) => band.to - band.from < least);
  if (low)
    throw new Refused([
      stop(
        'level-too-low',
        place,
        `leave a piece ${inMm(low.to - low.from)} high, from ${inMm(low.from)} to ${inMm(low.to)}; give levels at least ${inMm(least)} from one another and from the ends of the band`,
      ),
    ]);
  return { plans: plansOfBands(input, bands, levels.overlap), levels, findings: [] };
}

/** The stretches of a band between level cuts, from the foot up. */
const bandsBetween = ({ from, to }: Band, cuts: readonly number[]): readonly Band[] =>
  [from, ...cuts].map((start, i) => ({ from: start, to: cuts[i] ?? to }));

/** The tallest first, inner and last level that fit the sheet in panels, mm along. */
interface Limits {
  readonly first: number;
  readonly inner: number;
  readonly last: number;
}

function limitsOf(input: LevelsInput, whole: Plan, overlap: number): Limits {
  const { from, to } = whole.band;
  const tallest = (level: (height: number) => Band): number => {
    let [good, bad] = [0, to - from];
    while (bad - good > lookEvery / 4) {
      const middle = (good + bad) / 2;
      if (levelFits(input, whole, level(middle), overlap)) good = middle;
      else bad = middle;
    }
    return good;
  };
  // An inner one is cut at both ends, wherever it lies: what fits at either end of the wall fits between, if nearly.
  return {
    first: tallest((height) => ({ from, to: from + height })),
    inner: Math.min(
      tallest((height) => ({ from: from + height / 1000, to: from + height })),
      tallest((height) => ({ from: to - height, to: to - height / 1000 })),
    ),
    last: tallest((height) => ({ from: to - height, to })),
  };
}

/** Whether a level of a band fits the sheet in panels, with its trim or what it goes on under the next. */
function levelFits(
  { job }: LevelsInput,
  { wall, build, band, template }: Plan,
  level: Band,
  overlap: number,
): boolean {
  const { flat, band: onSheet } = sheetOnWall(wall, build, level);
  const trim = {
    foot: level.from > band.from ? 0 : template.trim.foot,
    lip: level.to < band.to ? overlap : template.trim.lip,
  };
  const piece = { from: onSheet.from - trim.foot, to: onSheet.to + trim.lip };
  return fitsInPanels({ ...template, wall: flat, band: onSheet, trim, piece }, job);
}

/** Inner levels are tried at the band's two ends only: one in the middle of a wall that bends may ask for a little less. */
const shares = [1, 0.95, 0.9];

interface Wanted {
  readonly kind: 'least-art' | 'repeats';
  readonly art: BandArt;
  readonly overlap: number;
}

/** As few levels as fit, cut where that costs least. */
function chosenLevels(
  input: LevelsInput,
  whole: Plan,
  longest: Limits,
  { kind, art, overlap }: Wanted,
): Pick<InLevels, 'plans' | 'levels'> | undefined {
  const { band } = whole;
  const { places, costs } = kind === 'repeats' ? atRows(whole, art) : alongBand(whole, art, overlap);
  const shortest = Math.max(narrowest, 2 * overlap);
  for (const share of shares) {
    const { first, inner, last } = longest;
    const allowed = { first: share * first, inner: share * inner, last: share * last };
    const at = chooseJoints({ ...band, places, costs, longest: allowed, shortest });
    if (!at || at.length >= mostLevels) return undefined;
    const bands = bandsBetween(band, at);
    if (bands.every((level) => levelFits(input, whole, level, overlap)))
      return { plans: plansOfBands(input, bands, overlap), levels: { at, overlap } };
  }
  return undefined;
}

/** Where one row of repeats ends and the next begins. */
function atRows({ lengths, band }: Plan, { pattern }: BandArt) {
  const places = pattern
    ? rowBorders(pattern.plan)
        .map((y) => rounded(lengths.toBare(pattern.lay.toAlong(y))))
        .filter((along) => along > band.from && along < band.to)
    : [];
  return { places, costs: places.map(() => 0) };
}

/** All up the band, each place for what it crosses of art: on the cut and along the edge of its overlap. */
function alongBand({ template, lengths }: Plan, { layers }: BandArt, overlap: number) {
  const { from, to } = template.band;
  const count = Math.max(1, Math.ceil((to - from) / lookEvery) - 1);
  const step = (to - from) / (count + 1);
  const lines = { template, layers, way: 'level', first: from + step, step, count } as const;
  const sums = (overlap > 0 ? [0, overlap] : [0]).map((offset) => artCrossed({ ...lines, offset }));
  return {
    places: Array.from({ length: count }, (_, i) => rounded(lengths.toBare(from + (i + 1) * step))),
    costs: costsOf(sums),
  };
}

const rounded = (along: number): number => roundTo * Math.round(along / roundTo);

function missedRows({ jobFile }: LevelsInput, isMissed: boolean): Finding[] {
  if (!isMissed) return [];
  const says =
    'asks for joints at repeats, and no level of whole rows fits the sheet; level cuts are laid where they cross the least art instead';
  return [look('panel-repeat', typedAt(jobFile, 'panels.joints'), says)];
}

function levelsNote({ jobFile }: LevelsInput, { band }: Plan, { at, overlap }: Levels): Finding {
  const how = overlap > 0 ? `each goes on ${inMm(overlap)} under the one above` : 'they meet edge to edge';
  const says = `is too small for a band of ${inMm(band.to - band.from)} in panels of any width, so it is cut in ${at.length + 1} levels, at ${at.map(inMm).join(', ')} along, where that crosses little of the pattern; ${how}`;
  return note('levels', typedAt(jobFile, 'sheet'), says);
}
