// The work of a job in its order, with the waiting that its coats ask for.
import { asLaid } from '../../blank/coats.ts';
import type { TimeSpan } from '../../deliver/write-page.ts';
import { filmWords } from '../artwork/colour-words.ts';
import { backingOff, carrierOff } from '../motifs/laying-words.ts';
import { seamSteps } from '../plan/seam.ts';
import type { Coat } from '../typed/material.ts';
import type { Job } from '../typed/resolved-job.ts';
import { sprayedSafely } from './job-sheet-cautions.ts';
import { filmLaid, goresLaid } from './laying-steps.ts';
import { plainStep, type Work, type WorkStep } from './work-step.ts';

const coatStep = ({ name, wait }: Coat, over?: 'film' | 'colour'): WorkStep => ({
  does: `lay ${name}${over ? ` over the ${over}` : ''}, thin and even, the vessel turning`,
  check: over
    ? `no edge of the ${over} stands proud; no bubble`
    : 'dry to the touch, no dust, no run; measure the girth again before you trust the sum of the coats',
  ...(wait === undefined ? {} : { wait }),
  dries: true,
});

/** The film laid, and its seam closed. */
function layingSteps(work: Work): readonly WorkStep[] {
  if (work.isGores) return goresLaid(work);
  const { job, hasHandle, joints = 0 } = work;
  const closing = hasHandle ? [] : withNextFilms(work, seamSteps(job.seam, joints));
  return [...filmLaid(work), ...closing.map(({ does, check }) => plainStep(does, check))];
}

/** Cover strips go over all films: those above the lowest come before them. */
function withNextFilms(work: Work, steps: readonly Pick<WorkStep, 'does' | 'check'>[]) {
  if (!isUnderStrips(work)) return steps;
  const [close, ...strips] = steps;
  return close ? [close, ...nextFilms(work), ...strips] : steps;
}

const isUnderStrips = ({ job: { seam, film }, hasHandle, isGores = false }: Work): boolean =>
  seam.style === 'strip' && film.use !== 'mask' && !hasHandle && !isGores;

const sprayed = (where: string, check: string): WorkStep =>
  plainStep(`spray in thin coats ${where}, ${sprayedSafely}`, check);

const pulled = (film: string): WorkStep => ({
  does: `pull the ${film} before the coat is hard, slowly and back over itself`,
  check: 'the edge is clean, and nothing was sprayed beneath it',
  dries: true,
});

/** Colour sprayed through the openings of a film that is then pulled; what it does not cover is covered first. Common practice, no source. */
function throughOpenings(film: string, { hasHandle, films = [] }: Work): readonly WorkStep[] {
  const marks =
    films.length > 1
      ? '; mark on it where the seam line and the quarters of the film are, and leave it on until the last film is pulled'
      : '';
  return [
    plainStep(
      `cover with tape and paper what the ${film} leaves bare but its openings: the wall above and below it, the rim and the inside${hasHandle ? ', the handle and the wall behind it' : ''}${marks}`,
      'no wall shows outside the openings',
    ),
    sprayed(`over the openings of the ${film}`, 'even in every opening, and no run along an edge'),
    pulled(film),
  ];
}

/** The mask along a decal and the window behind it, each sprayed and pulled before the decal is laid. */
const maskSteps = (work: Work): readonly WorkStep[] =>
  work.job.mask
    ? [
        plainStep(
          `lay the mask: ${backingOff}, and lay it by its seam line, from the middle outwards; close its seam, and ${carrierOff}, if it has one`,
          'its edge is rubbed down all the way along; what is to stay bare is covered',
        ),
        sprayed('past the edge of the mask', 'even all around, and no run along the edge'),
        pulled('mask'),
        ...(work.job.mask.window
          ? [
              plainStep(
                `lay the window, once that is dry: ${backingOff}, lay it by its seam line, and weed its openings`,
                'each opening is where a motif will be, and its edge is rubbed down',
              ),
              ...throughOpenings('window', { ...work, films: [] }),
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
          'its guide lies on the level line and on its plumb line; no bubble',
        ),
      ];

/** A wrap in several films: what was done with the lowest is done with each. Common practice, no source. */
function nextFilms({ films = [], isWrapLaid, hasHandle, job }: Work): readonly WorkStep[] {
  const [lowest, ...above] = films.map(filmWords);
  if (!isWrapLaid || lowest === undefined || above.length === 0) return [];
  const names = listed(above);
  const title = above.length === 1 ? 'the next film' : 'the next films';
  const inTurn = above.length === 1 ? '' : ', one after another';
  const lay = ['lay', ...(hasHandle ? [] : ['close']), ...(isTrimmed(job) ? ['trim'] : [])];
  if (job.film.use === 'mask')
    return [
      {
        does: `${title}: that was ${lowest}; once its colour is dry, ${listed([...lay, 'spray', 'pull'])} ${names} by the marks on the tape${inTurn}`,
        check:
          'the colour below takes no mark from film; the ends and edges of each lie where those of the one before lay',
        dries: true,
      },
    ];
  return [
    plainStep(
      `${title}: that was ${lowest}, the lowest; ${listed(lay)} ${names} over it${inTurn}`,
      'the ends and edges of each lie on those of the one before; no bubble between them',
    ),
  ];
}

const isTrimmed = ({ trim }: Pick<Job, 'trim'>): boolean => trim.foot + trim.lip > 0;

const listed = (verbs: readonly string[]): string =>
  verbs.length === 1 ? verbs.join() : `${verbs.slice(0, -1).join(', ')} and ${verbs.at(-1)}`;

/** The steps in order. Common practice, no source. */
export function workSequence(work: Work): readonly WorkStep[] {
  const { coats, isWrapLaid, apart = 0, covers = 0, isWeeded, pieces, isGores = false, job } = work;
  const isMask = job.film.use === 'mask';
  const under = asLaid(coats).filter(({ over }) => !over);
  const over = asLaid(coats).filter((coat) => coat.over);
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
    ...maskSteps(work),
    ...(isWrapLaid ? layingSteps(work) : []),
    ...(isWrapLaid && isTrimmed(job)
      ? [plainStep('trim the film at the lip and the foot along a collar', 'the edge is level all round')]
      : []),
    ...(isMask || isUnderStrips(work) ? [] : nextFilms(work)),
    ...coverSteps(covers),
    ...apartSteps(apart),
    ...(isMask ? [...throughOpenings('film', work), ...nextFilms(work)] : []),
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
