// The first-time guide: the lighthouse cup in two minutes, each step done by doing it.
import { type Bench, listAt, valueAt } from './bench.ts';

export interface GuideState {
  readonly bench: Bench;
  readonly isMade: boolean;
  readonly hasSelected: boolean;
  readonly view: string;
}

export interface GuideStep {
  readonly says: string;
  /** Where it is done: the path of a field, or the number of a step of the card. */
  readonly at: string | number;
  readonly isDone: (state: GuideState) => boolean;
}

const isNear = (value: unknown, mm: number): boolean => {
  const number = typeof value === 'number' ? value : Number.parseFloat(String(value));
  return Math.abs(number - mm) < 1e-9;
};

export const guideSteps: readonly GuideStep[] = [
  {
    says: 'The museum shop’s steel cup is 62 mm across at the foot. Type 62 at the foot.',
    at: 'blank:stations[0].across',
    isDone: ({ bench }) => isNear(valueAt(bench.blank, 'stations[0].across'), 62),
  },
  {
    says: 'It is 150 mm high. Type 150 as the height of the lip.',
    at: 'blank:stations[1].height',
    isDone: ({ bench }) => isNear(valueAt(bench.blank, 'stations[1].height'), 150),
  },
  {
    says: 'A tape around the lip reads 270 mm. Type 270 as its girth, and watch the wall being drawn.',
    at: 'blank:stations[1].girth',
    isDone: ({ bench }) => isNear(valueAt(bench.blank, 'stations[1].girth'), 270),
  },
  {
    says: 'The foot is rounded by 6 mm: film cannot lie flat there. Type 6 as the foot round.',
    at: 'blank:footRound',
    isDone: ({ bench }) => isNear(valueAt(bench.blank, 'footRound'), 6),
  },
  {
    says: 'Open step 2 and take the fish scales from the samples.',
    at: 2,
    isDone: ({ bench }) => valueAt(bench.job, 'artwork.file') !== undefined,
  },
  {
    says: 'The scales were laid around the wall, whole, with no gap. Look at the Vessel view.',
    at: 'tab',
    isDone: ({ view }) => view === 'vessel',
  },
  {
    says: 'A base coat of 0.4 mm goes on first. Add it in step 3: the template grows with it.',
    at: 3,
    isDone: ({ bench }) =>
      listAt(bench, 'job', 'coats').some((_, i) => isNear(valueAt(bench.job, `coats[${i}].thickness`), 0.4)),
  },
  {
    says: 'Open step 4 and select what is said about the lip. The view goes there.',
    at: 4,
    isDone: ({ hasSelected }) => hasSelected,
  },
  {
    says: 'Keep the band off the lip: type 130 as where it ends, in step 3.',
    at: 'job:band.to',
    isDone: ({ bench }) => isNear(valueAt(bench.job, 'band.to'), 130),
  },
  {
    says: 'It needs a beginning too: 6, where the round of the foot ends.',
    at: 'job:band.from',
    isDone: ({ bench }) =>
      valueAt(bench.job, 'band.from') !== undefined && valueAt(bench.job, 'band.from') !== '',
  },
  {
    says: 'Make the files in step 5. They are read back, rolled onto the cup and measured.',
    at: 5,
    isDone: ({ isMade }) => isMade,
  },
];
