// The plan of a band in gores: how many, on which wall, joined or loose, and what film is still asked for.
import type { Band } from '../../blank/flat-band.ts';
import { roundLimits, type Wall } from '../../blank/wall.ts';
import { type Finding, look, note, Refused, stop } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import { type CombOptions, combWall, cutsAt, type GoreComb, goreComb } from '../../unroll/gore-comb.ts';
import { type BentGoreWall, goreWallOf } from '../../unroll/gore-wall.ts';
import { type GoreOptions, type GoreWall, goreStrain, goresNeeded, halfWidth } from '../../unroll/gores.ts';
import { called, given, typedAt } from '../typed/typed-at.ts';
import { type DartGround, type DartPlan, dartsSay, planDarts } from './dart-plan.ts';
import { type Ground, type PlanInput, planGround } from './plan.ts';
import { filmGives, liesWithin } from './plan-findings.ts';

/** How the maker wants gores cut. */
export interface GoresAsked {
  /** Left out: as few as the film allows. */
  readonly count?: number;
  readonly joined: 'foot' | 'lip' | 'loose';
  /** Width of the strip that joins a comb once its trim is cut away, mm; `longest`: as far as it lies down, so that the cuts are darts. */
  readonly strip: number | 'longest';
}

export interface GorePlan extends Ground {
  /** The finished band on the sheet itself, mm up its middle from the foot corner: coats make a wall that bulges longer. */
  readonly onSheet: Band;
  /** That band and its trims, as it is cut. */
  readonly piece: Band;
  /** The wall under the gores. */
  readonly bent: BentGoreWall;
  /** What the film follows: the wall, and in a comb's strip the cone that joins it. */
  readonly follows: GoreWall;
  readonly options: GoreOptions;
  readonly joined: GoresAsked['joined'];
  readonly comb?: GoreComb;
  readonly darts?: DartPlan;
  /** Widest a gore gets, net of overlap, mm. */
  readonly width: number;
  /** Largest strain of a gore, as a share. */
  readonly strain: number;
  /** The strain up the band, mm along the bare wall. */
  readonly strains: readonly { readonly along: number; readonly strain: number }[];
  readonly findings: readonly Finding[];
}

/** Closest spacing of the nodes up an edge, mm: keeps edges within a few thousandths of a mm. */
const spacing = 4;

/** More gores than this are more cutting and more seams than most would lay, and what common film gives by hand. Common practice, no source. */
const many = 12;
const stretchy = 0.02;

/** Narrower than this a gore's end is a thread, and the wall near its point, mm of radius. */
const leastRadius = 1;

const percent = (share: number): string => `${(share * 100).toFixed(2)} %`;
const refuse = (finding: Finding): never => {
  throw new Refused([finding]);
};

/** @throws Refused where one piece would lie flat, where gores can't be joined as asked, or the band is none. */
export function planGores(input: PlanInput, asked: GoresAsked): GorePlan {
  const { job, blank } = input;
  const ground = planGround(input, (wall) => {
    if (wall.kind === 'straight') refuse(liesFlat(input, wall));
    return job.band ?? roundLimits(wall, blank);
  });
  const { wall, flatBands, band, build } = ground;
  if (flatBands.some((flat) => liesWithin(band, flat))) refuse(liesFlat(input, wall, band));
  if (blank.handle) refuse(handleInTheWay(input));
  const bent = goreWallOf(wall, build);
  const onSheet = { from: bent.toGrown(band.from), to: bent.toGrown(band.to) };
  const piece = { from: onSheet.from - job.trim.foot, to: onSheet.to + job.trim.lip };
  const pointed = (['foot', 'lip'] as const).find(
    (end) => bent.at(end === 'foot' ? piece.from : piece.to).radius < leastRadius,
  );
  if (pointed) refuse(pastThePoint(input, pointed));
  if (asked.joined !== 'loose' && asked.strip === 'longest') {
    const { joined } = asked;
    const { count } = asked;
    const on = { ground, bent, onSheet, piece };
    const darts = planDarts(input, on, { whole: joined, ...(count === undefined ? {} : { count }) });
    return plannedDarts(input, on, { joined, darts });
  }
  const gives = filmGives(job.film);
  const needed = (stretch: number) => goresNeeded(bent, bent.curvature, onSheet, stretch);
  const count = asked.count ?? needed(gives) ?? refuse(tooMany(input, bent, onSheet));
  const { levels, corners } = bent;
  const options = { count, band: piece, spacing, levels, corners, overlap: job.seam.overlap };
  const joined = combOf(input, bent, options, asked);
  const places = placesOf(onSheet);
  const strain = goreStrain(bent, bent.curvature, count, places);
  return {
    ...ground,
    onSheet,
    bent,
    piece,
    joined: asked.joined,
    ...joined,
    width: 2 * halfWidth(Math.max(...places.map((along) => bent.at(along).radius)), count),
    strain,
    strains: places.map((on) => ({
      along: bent.toBare(on),
      strain: goreStrain(bent, bent.curvature, count, [on]),
    })),
    findings: [
      ...ground.wallSays,
      strainSays(input, {
        strain,
        count,
        enough: needed(gives),
        ...(asked.count === undefined ? { fewer: needed(stretchy) } : {}),
      }),
      ...stripSays(input, joined.comb, asked),
      ...cornersSay(input, bent, onSheet, count),
      ...ground.jobSays,
    ],
  };
}

/** Darts in the shape of a plan of gores: they are drawn and told as a comb whose strip goes as far as it lies down. */
function plannedDarts(
  input: PlanInput,
  { ground, bent, onSheet, piece }: DartGround,
  { joined, darts }: { readonly joined: 'foot' | 'lip'; readonly darts: DartPlan },
): GorePlan {
  const { count, comb, follows, options, strain, strainAt } = darts;
  const places = placesOf(onSheet);
  return {
    ...ground,
    onSheet,
    bent,
    piece,
    joined,
    comb,
    follows,
    options,
    darts,
    strain,
    width: 2 * halfWidth(Math.max(...places.map((on) => bent.at(on).radius)), count),
    strains: places.map((on) => ({ along: bent.toBare(on), strain: strainAt(on) })),
    findings: [...ground.wallSays, dartsSay(input, darts), ...ground.jobSays],
  };
}

const placesOf = ({ from, to }: Band): number[] =>
  Array.from({ length: 401 }, (_, i) => from + ((to - from) * i) / 400);

/** The comb that was asked for, none where gores are loose, and the wall its film follows. */
function combOf(
  { job }: PlanInput,
  wall: GoreWall,
  options: GoreOptions,
  { joined, strip }: GoresAsked,
): Pick<GorePlan, 'comb' | 'follows' | 'options'> {
  if (joined === 'loose' || strip === 'longest') return { follows: wall, options };
  const asked: CombOptions = { ...options, joined, strip: strip + job.trim[joined] };
  if (asked.strip >= options.band.to - options.band.from)
    refuse(
      stop('strip-too-wide', { key: '--strip' }, `${inMm(strip)} takes the whole band; 3 to 10 mm is usual`),
    );
  const comb = goreComb(wall, asked);
  if (comb) {
    // Beyond the ends of the cuts the film follows another surface.
    const corners = [...(options.corners ?? []), cutsAt(asked)];
    return { comb, follows: combWall(wall, asked), options: { ...options, corners } };
  }
  const other = joined === 'foot' ? 'lip' : 'foot';
  const otherWorks = goreComb(wall, { ...asked, joined: other, strip: strip + job.trim[other] });
  const instead = otherWorks
    ? `join them with --joined ${other}, or cut them loose`
    : 'cut them loose: --joined loose';
  return refuse(
    stop(
      'gores-overlap',
      { key: '--joined' },
      `joined at the ${joined}, neighbouring gores would lie over each other on the sheet; ${instead}`,
    ),
  );
}

const liesFlat = ({ jobFile }: PlanInput, wall: Wall, band?: Band): Finding =>
  stop(
    'lies-flat',
    typedAt(jobFile, 'pieces'),
    wall.kind === 'straight' || !band
      ? `this wall is straight, so one piece lies flat on it and gores would only add seams; give ${given(jobFile, 'pieces', 'one')}`
      : `from ${inMm(band.from)} to ${inMm(band.to)} this wall is flat, so one piece lies on it and gores would only add seams; give ${given(jobFile, 'pieces', 'one')}, or a longer ${called(jobFile, 'band')}`,
  );

const handleInTheWay = ({ jobFile }: PlanInput): Finding =>
  stop(
    'gores-with-handle',
    typedAt(jobFile, 'pieces'),
    `gores are not made for a vessel with a handle; give ${given(jobFile, 'pieces', 'stacked')}, whose pieces stop beside it`,
  );

const pastThePoint = ({ jobFile, job }: PlanInput, end: 'foot' | 'lip'): Finding =>
  stop(
    'past-the-point',
    typedAt(jobFile, `trim.${end}`),
    `${inMm(job.trim[end])} reaches to where this wall is under ${inMm(2 * leastRadius)} across; give less, or a band further from there`,
  );

function tooMany({ job, jobFile }: PlanInput, wall: BentGoreWall, band: Band): Finding {
  const most = goreStrain(wall, wall.curvature, 48, placesOf(band));
  return stop(
    'too-many-pieces',
    typedAt(jobFile, 'gores'),
    `even 48 gores ask ${percent(most)} of stretch, and this film gives ${percent(filmGives(job.film))}; give ${called(jobFile, 'gores')} with the number you will lay, or a shorter ${called(jobFile, 'band')}`,
  );
}

function strainSays(
  { job, jobFile }: PlanInput,
  {
    strain,
    count,
    enough,
    fewer,
  }: {
    readonly strain: number;
    readonly count: number;
    /** How many this film takes, and how many one that stretches. */
    readonly enough: number | undefined;
    readonly fewer?: number | undefined;
  },
): Finding {
  const gives = filmGives(job.film);
  const where = typedAt(jobFile, 'gores');
  const asks = `each of the ${count} gores asks up to ${percent(strain)} of stretch up its middle, and this film gives ${percent(gives)}`;
  return strain > gives + 1e-6
    ? look(
        'needs-stretch',
        where,
        `${asks}; ${enough === undefined ? '' : `give ${enough} gores, or `}lay a film that stretches`,
      )
    : note(
        'gore-strain',
        where,
        count > many && fewer !== undefined && fewer < count
          ? `${asks}; of film that gives ${100 * stretchy} % (${called(jobFile, 'film.stretch')}) ${fewer} are enough`
          : asks,
      );
}

function stripSays({ job }: PlanInput, comb: GoreComb | undefined, { joined, strip }: GoresAsked): Finding[] {
  if (!comb || strip === 'longest') return [];
  const { stripStrain } = comb;
  const allowed = stripStrain < 0 ? Math.max(job.film.gather, 0.002) : filmGives(job.film);
  if (Math.abs(stripStrain) <= allowed + 1e-6) return [];
  const share = percent(Math.abs(stripStrain));
  const does = stripStrain < 0 ? `gathers by ${share} and puckers` : `is stretched by ${share}`;
  const says = `at the ${joined} edge the strip of ${inMm(strip)} ${does}; give a narrower --strip, or slit it after laying`;
  return [look('strip-strain', { key: '--strip' }, says)];
}

/** Where a wall has corners, what straight levels leave. */
function cornersSay(
  { jobFile }: PlanInput,
  { at, corners, toBare }: BentGoreWall,
  band: Band,
  count: number,
): Finding[] {
  const inside = corners.filter((along) => along > band.from && along < band.to);
  if (inside.length === 0) return [];
  // The fall of a level arc over half a gore, which a straight level leaves out: h² s / 2r.
  const off = Math.max(
    ...[band.from, band.to].map((along) => {
      const { radius, slope } = at(along);
      return (halfWidth(radius, count) ** 2 * Math.abs(slope)) / (2 * radius);
    }),
  );
  const says = `bends only at corners, ${inside.map((on) => inMm(toBare(on))).join(' and ')} along; gores fold there, and their ends are up to ${inMm(off)} off level; ${given(jobFile, 'pieces', 'stacked')} follows each stretch exactly`;
  return [note('gores-at-corners', typedAt(jobFile, 'pieces'), says)];
}
