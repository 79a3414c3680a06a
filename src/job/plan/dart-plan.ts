// The plan of a band cut in darts: one piece, whole along one edge, with wedges taken out of the other.
import type { Band } from '../../blank/flat-band.ts';
import { type Finding, note, Refused, stop } from '../../finding.ts';
import { movePoint } from '../../geometry/affine.ts';
import { distance } from '../../geometry/point.ts';
import { inMm } from '../../lengths/length.ts';
import {
  coneRadius,
  type DartRoot,
  type Darts,
  dartRoot,
  dartsCanClose,
  dartsOf,
  strainBetweenDarts,
  type WholeEnd,
} from '../../unroll/darts.ts';
import { type CombOptions, type GoreComb, goreComb } from '../../unroll/gore-comb.ts';
import type { BentGoreWall } from '../../unroll/gore-wall.ts';
import { evenCounts, type GoreOptions, type GoreWall, halfLevel } from '../../unroll/gores.ts';
import { sheetRadii } from '../../unroll/sheet-wall.ts';
import { typedAt } from '../typed/typed-at.ts';
import type { Ground, PlanInput } from './plan.ts';
import { filmGives } from './plan-findings.ts';

/** Darts on their wall. */
export interface DartReport {
  /** The edge they are cut from. */
  readonly edge: WholeEnd;
  /** Where they end, mm along. */
  readonly tip: number;
  /** How long each is up to the finished edge, and how wide it is there, mm on the sheet. */
  readonly length: number;
  readonly width: number;
  /** The most that film is stretched on the part that stays whole, as a share. */
  readonly wholeStretch: number;
}

export interface DartPlan {
  readonly count: number;
  readonly comb: GoreComb;
  readonly follows: GoreWall;
  readonly options: GoreOptions;
  /** The most that film is strained, between darts or on the whole part. */
  readonly strain: number;
  readonly strainAt: (on: number) => number;
  readonly report: DartReport;
}

export interface DartGround {
  readonly ground: Ground;
  readonly bent: BentGoreWall;
  readonly onSheet: Band;
  /** The band and its trims. */
  readonly piece: Band;
}

const refuse = (finding: Finding): never => {
  throw new Refused([finding]);
};

/** @throws Refused where one piece lies down without darts, or where darts can't follow the wall. */
export function planDarts(
  input: PlanInput,
  { ground, bent, onSheet, piece }: DartGround,
  { whole, count: asked }: { readonly whole: WholeEnd; readonly count?: number },
): DartPlan {
  const { job } = input;
  const other = whole === 'foot' ? 'lip' : 'foot';
  const gives = filmGives(job.film);
  if (bent.corners.length > 0) refuse(onCorners(input));
  const root =
    dartRoot(sheetRadii(ground.wall, ground.build, ground.band), whole, gives) ?? refuse(noneNeeded(input));
  if (!dartsCanClose(bent, root)) refuse(widens(input, bent, root, whole));
  const end = onSheet[other === 'lip' ? 'to' : 'from'];
  const make = (count: number) => dartsOf(bent, { root, whole, count, end });
  const found = asked === undefined ? leastDarts(make, gives) : { count: asked, darts: make(asked) };
  const { count, darts } = found ?? refuse(tooMany(input, make(48)));
  const { follows } = darts;
  const options: CombOptions = {
    count,
    band: piece,
    spacing: 4,
    levels: 'arcs',
    corners: [root.tip],
    overlap: job.seam.overlap,
    joined: whole,
    strip: Math.abs(root.tip - piece[whole === 'foot' ? 'from' : 'to']),
  };
  const comb = goreComb(follows, options) ?? refuse(widens(input, bent, root, whole));
  const onWhole = (on: number) => (whole === 'foot' ? on <= root.tip : on >= root.tip);
  return {
    count,
    comb,
    follows,
    options,
    strain: Math.max(darts.strain, root.stretch),
    strainAt: (on) =>
      onWhole(on)
        ? bent.at(on).radius / coneRadius(root.cone, on) - 1
        : strainBetweenDarts(follows, count, on),
    report: {
      edge: other,
      tip: bent.toBare(root.tip),
      length: Math.abs(end - root.tip),
      width: openAt(follows, options, comb, end),
      wholeStretch: root.stretch,
    },
  };
}

/** How far the first dart stands open at a height of the sheet, mm. */
function openAt(follows: GoreWall, options: GoreOptions, { places }: GoreComb, on: number): number {
  const { overlap: _, ...plain } = options;
  const { aside, fall } = halfLevel(follows, on, plain);
  const y = options.band.from - on + fall;
  const [first, second] = places;
  return first && second
    ? distance(movePoint(first, { x: aside, y }), movePoint(second, { x: -aside, y }))
    : 0;
}

/** The fewest darts whose film is strained by no more than it gives. */
function leastDarts(
  make: (count: number) => Darts,
  gives: number,
): { readonly count: number; readonly darts: Darts } | undefined {
  for (const count of evenCounts()) {
    const darts = make(count);
    if (darts.strain <= gives) return { count, darts };
  }
  return undefined;
}

const onCorners = ({ jobFile }: PlanInput): Finding =>
  stop(
    'darts-on-corners',
    typedAt(jobFile, 'pieces'),
    'this wall bends at corners, where no dart can end; give --pieces stacked, which follows each stretch exactly',
  );

const noneNeeded = ({ jobFile, job }: PlanInput): Finding =>
  stop(
    'lies-flat',
    typedAt(jobFile, 'pieces'),
    `film that gives ${percent(filmGives(job.film))} lies down on this band in one piece, so darts would only weaken it; leave --pieces out, or give a longer --band`,
  );

function widens({ jobFile }: PlanInput, bent: BentGoreWall, { tip }: DartRoot, whole: WholeEnd): Finding {
  const other = whole === 'foot' ? 'lip' : 'foot';
  return stop(
    'darts-open',
    typedAt(jobFile, 'pieces'),
    `from ${inMm(bent.toBare(tip))} along towards the ${other} this wall is wider than a piece that lies on the rest, so film would have to be added there, and a dart only takes some away; leave the ${other} edge whole, with --joined ${other}, or give --pieces gores or stacked`,
  );
}

const percent = (share: number): string => `${(share * 100).toFixed(2)} %`;

const tooMany = ({ jobFile, job }: PlanInput, { strain }: Darts): Finding =>
  stop(
    'too-many-pieces',
    typedAt(jobFile, 'gores'),
    `even 48 darts ask ${percent(strain)} of the film between them, and it gives ${percent(filmGives(job.film))}; give --gores with the number you will cut, a shorter --band, or --pieces gores, which asks less`,
  );

/** What the darts are, in words. */
export const dartsSay = ({ jobFile }: PlanInput, { count, report, strain }: DartPlan): Finding =>
  note(
    'darts',
    typedAt(jobFile, 'pieces'),
    `${count} darts from the ${report.edge} edge, each ${inMm(report.length)} long and ${inMm(report.width)} wide at the finished edge, end at ${inMm(report.tip)} along, up to where film lies down in one piece; they close edge to edge, and film is strained by up to ${percent(strain)}`,
  );
