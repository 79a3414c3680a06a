// The work of a job in its order, with the waiting that its coats ask for.
import { asLaid } from '../../blank/coats.ts';
import type { TimeSpan } from '../../deliver/write-page.ts';
import { seamSteps } from '../plan/seam.ts';
import type { Coat } from '../typed/material.ts';
import type { Job } from '../typed/resolved-job.ts';

export interface WorkStep {
  readonly does: string;
  /** What to look at before going on. */
  readonly check: string;
  /** Hours to wait after it; undefined where the product's own sheet has to say. */
  readonly wait?: number;
  readonly isCoat: boolean;
}

/** What the work is told from; all of it is in the job and its pieces. */
export interface Work {
  readonly job: Pick<Job, 'seam' | 'trim'> & {
    readonly film: Pick<Job['film'], 'use'>;
    readonly mask?: Pick<NonNullable<Job['mask']>, 'window'>;
  };
  readonly coats: readonly Coat[];
  /** Whether the wrap is laid on the vessel; false where it is only a template for motifs that are cut apart. */
  readonly isWrapLaid: boolean;
  /** How many motifs are cut and laid by themselves; 0 where it is left out. */
  readonly apart?: number;
  /** Whether anything is picked out of the film. */
  readonly isWeeded: boolean;
  /** The films that the wrap is cut from, from the lowest up, where there are several. */
  readonly films?: readonly string[];
  /** How many cover strips lie on borders of the pattern; 0 where it is left out. */
  readonly covers?: number;
  readonly hasHandle: boolean;
  readonly pieces: number;
  /** Between stacked pieces; 0 where it is left out. */
  readonly joints?: number;
  /** Whether these are gores, laid side by side around the wall, and not stacked up it. */
  readonly isGores?: boolean;
}

const coatStep = ({ name, wait }: Coat, over?: 'film' | 'colour'): WorkStep => ({
  does: `lay ${name}${over ? ` over the ${over}` : ''}, thin and even, the vessel turning`,
  check: over
    ? `no edge of the ${over} stands proud; no bubble`
    : 'dry to the touch, no dust, no run; measure the girth again before you trust the sum of the coats',
  ...(wait === undefined ? {} : { wait }),
  isCoat: true,
});

const plainStep = (does: string, check: string): WorkStep => ({ does, check, isCoat: false });

/** The film laid, and its seam closed. */
function layingSteps(work: Work): readonly WorkStep[] {
  const { hasHandle, joints = 0 } = work;
  const { seam } = work.job;
  const lay = 'lay the level paper arc, and lay the film to it from the middle outwards';
  if (hasHandle) return [plainStep(lay, 'both ends stop short of the handle by the same width')];
  return [
    plainStep(lay, 'no bubble, no pucker; both ends hang free, short of the seam'),
    ...withNextFilms(work, seamSteps(seam, joints)).map(({ does, check }) => plainStep(does, check)),
  ];
}

/** Cover strips go over all films: those above the lowest come before them. */
function withNextFilms(work: Work, steps: readonly Pick<WorkStep, 'does' | 'check'>[]) {
  if (!isUnderStrips(work)) return steps;
  const [close, ...strips] = steps;
  return close ? [close, ...nextFilms(work), ...strips] : steps;
}

const isUnderStrips = ({ job: { seam, film }, hasHandle, isGores = false }: Work): boolean =>
  seam.style === 'strip' && film.use !== 'mask' && !hasHandle && !isGores;

/** Gores are laid by their middle lines, each up to the edge of the one before. Common practice, no source. */
const goreSteps = (count: number): readonly WorkStep[] => [
  plainStep(
    `lay the level paper arc, mark ${count} equal parts of the girth along it, and carry the middle of each part up the wall`,
    'the last part is as wide as the first',
  ),
  plainStep(
    'lay the gores in the order of their numbers, each by its middle line first, then outwards, its edge against the one before',
    'edges meet and do not lie over one another; if they drift, set the next gore by its own middle line',
  ),
];

/** Colour sprayed over film that is then pulled. Common practice, no source. */
const sprayedAndPulled = (film: string): readonly WorkStep[] => [
  plainStep(
    `spray in thin coats past the edge of the ${film}, outdoors or in an extracted booth, with the mask that the product names`,
    'even all around, and no run along the edge',
  ),
  plainStep(
    `pull the ${film} before the coat is hard, slowly and back over itself`,
    'the edge is clean, and nothing was sprayed beneath it',
  ),
];

/** The mask along a decal and the window behind it, each sprayed and pulled before the decal is laid. */
const maskSteps = ({ mask }: Work['job']): readonly WorkStep[] =>
  mask
    ? [
        plainStep(
          'lay the mask by its seam line, from the middle outwards, and close its seam',
          'its edge is rubbed down all the way along; what is to stay bare is covered',
        ),
        ...sprayedAndPulled('mask'),
        ...(mask.window
          ? [
              plainStep(
                'once that is dry, lay the window by its seam line, and weed its openings',
                'each opening is where a motif will be, and its edge is rubbed down',
              ),
              ...sprayedAndPulled('window'),
            ]
          : []),
      ]
    : [];

/** Cover strips on borders of the pattern. Common practice, no source. */
const coverSteps = (covers: number): readonly WorkStep[] =>
  covers === 0
    ? []
    : [
        plainStep(
          covers === 1
            ? 'lay the cover strip of the border by its guide'
            : `lay the ${covers} cover strips of the borders by their guides, those up the wall first, the level ones over them`,
          'the middle line of each lies on its border; no edge of it climbs or lifts',
        ),
      ];

/** Motifs that are cut by themselves. */
const apartSteps = (apart: number): readonly WorkStep[] =>
  apart === 0
    ? []
    : [
        plainStep(
          apart === 1 ? 'lay the motif as told above' : `lay the ${apart} motifs one by one, as told above`,
          'its guide lies on the level arc and on its plumb line; no bubble',
        ),
      ];

/** A wrap in several films: what was done with the lowest is done with each. Common practice, no source. */
function nextFilms({ films = [], isWrapLaid, job }: Work): readonly WorkStep[] {
  const [lowest, ...above] = films;
  if (!isWrapLaid || lowest === undefined || above.length === 0) return [];
  const [next] = above;
  const names =
    above.length === 1 ? `film ${next}` : `films ${above.slice(0, -1).join(', ')} and ${above.at(-1)}`;
  const inTurn = above.length === 1 ? '' : ', one after another';
  return [
    job.film.use === 'mask'
      ? plainStep(
          `that was film ${lowest}; once its colour is dry, lay, trim, spray and pull ${names}${inTurn}`,
          'the colour below takes no mark from film; the ends and edges of each lie where those of the one before lay',
        )
      : plainStep(
          `that was film ${lowest}, the lowest; lay, close and trim ${names} over it${inTurn}`,
          'the ends and edges of each lie on those of the one before; no bubble between them',
        ),
  ];
}

/** The steps in order. Common practice, no source. */
export function workSequence(work: Work): readonly WorkStep[] {
  const { coats, isWrapLaid, apart = 0, covers = 0, isWeeded, pieces, isGores = false, job } = work;
  const isMask = job.film.use === 'mask';
  const under = asLaid(coats).filter(({ over }) => !over);
  const over = asLaid(coats).filter((coat) => coat.over);
  const trims = job.trim.foot + job.trim.lip > 0;
  return [
    plainStep('measure the blank and hold it against the table above', 'every girth within its allowance'),
    plainStep('clean and degrease the wall; then touch it no more', 'water runs off in a film, not in beads'),
    ...under.map((coat) => coatStep(coat)),
    plainStep(
      'print the guide at true size and wrap it, or a strip of it, around the vessel',
      'the squares measure 25 mm and 1 in; the ends meet where the guide says',
    ),
    plainStep(
      pieces > 1 ? `cut the ${pieces} ${isGores ? 'gores' : 'pieces'}` : 'cut the film',
      'the first small shape lifts clean at its corners before the rest is cut',
    ),
    ...(isWeeded
      ? [
          plainStep(
            'weed: pick out the film that is not wanted, then lay the carrier on',
            'nothing wanted came away',
          ),
        ]
      : []),
    ...maskSteps(job),
    ...(isWrapLaid ? (isGores ? goreSteps(pieces) : layingSteps(work)) : []),
    ...(isWrapLaid && trims
      ? [plainStep('trim the film at the lip and the foot along the collar', 'the edge is level all round')]
      : []),
    ...(isMask || isUnderStrips(work) ? [] : nextFilms(work)),
    ...coverSteps(covers),
    ...apartSteps(apart),
    ...(isMask ? [...sprayedAndPulled('film'), ...nextFilms(work)] : []),
    ...over.map((coat) => coatStep(coat, isMask ? 'colour' : 'film')),
  ];
}

/** A step of hand work on the timeline, hours: only so that it shows. Common practice, no source. */
const handWork = 0.5;

/** The steps and their waits on a line of hours; undefined where no coat says how long it waits. */
export function timelineOf(steps: readonly WorkStep[]): readonly TimeSpan[] | undefined {
  if (!steps.some(({ wait }) => wait !== undefined)) return undefined;
  let at = 0;
  return steps.flatMap(({ does, wait = 0 }) => {
    const [says = does] = does.split(/[,:;]/);
    const work: TimeSpan = { says, from: at, to: at + handWork, isWait: false };
    at = work.to;
    if (wait === 0) return [work];
    const waiting: TimeSpan = { says: `wait ${hours(wait)}`, from: at, to: at + wait, isWait: true };
    at = waiting.to;
    return [work, waiting];
  });
}

/** Hours in words. */
export function hours(count: number): string {
  if (count < 1) return `${Math.round(count * 60)} min`;
  return count >= 48 ? `${round(count / 24)} days` : `${round(count)} h`;
}

const round = (value: number): string => String(Math.round(value * 10) / 10);
