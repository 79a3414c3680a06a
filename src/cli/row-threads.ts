// Threads that make rows of a list: one for each processor, where there are rows enough.
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type Finding, Refused } from '../finding.ts';
import type { NamedRow } from '../job/list/names.ts';
import type { BatchOptions, MadeOrFound } from './names-batch.ts';
import { recover } from './staging.ts';

/** What a thread is begun with: `engine` reads SVG, and is compiled once for all of them. */
export interface RowThreadInput extends BatchOptions {
  readonly engine: object;
}

/** A row to make in a folder; or, without one, to look at. */
export interface RowAsked {
  /** Given back with the answer. */
  readonly id: number;
  readonly row: NamedRow;
  readonly folder?: string;
}

/** How that ended; all empty where a row was looked at and can be made. */
export interface RowAnswer {
  readonly id: number;
  readonly made?: MadeOrFound;
  readonly refused?: readonly Finding[];
  readonly fault?: string;
}

/** A thread takes as long to begin as a few rows take: fewer rows than this are no reason for another. */
const rowsForAThread = 12;

/** More threads than this wait for one disk. */
const mostThreads = 8;

/**
 * Room in a thread for what is soon thrown away, MB: of every row a hundred thousand curves are. With the usual 48 a quarter
 * of the time went into looking for what is still needed (measured on 120 rows).
 */
const maxYoungGenerationSizeMb = 96;

/** So many rows are at work in a thread of a long list: while the files of one are written, which is a fifth of the time, the other goes on. */
const rowsAtOnce = 2;

export class RowThreads {
  /** How many rows are at work at once. */
  readonly count: number;
  /** Each so many times as it can take rows. */
  readonly #idle: Worker[];
  readonly #all: readonly Worker[];
  readonly #waiting: ((worker: Worker) => void)[] = [];
  /** The folders of rows that are being made. */
  readonly #atWork = new Set<string>();
  #asked = 0;
  #isEnding = false;

  /** `rows`: how many there will be. */
  constructor(input: RowThreadInput, rows: number) {
    const count = Math.max(
      1,
      Math.min(mostThreads, availableParallelism(), Math.floor(rows / rowsForAThread)),
    );
    const options = { workerData: input, resourceLimits: { maxYoungGenerationSizeMb } };
    this.#all = Array.from(
      { length: count },
      () => new Worker(new URL('./row-thread.js', import.meta.url), options),
    );
    const atOnce = rows < rowsForAThread ? 1 : rowsAtOnce;
    this.#idle = Array.from({ length: atOnce }, () => this.#all).flat();
    this.count = this.#idle.length;
  }

  /** Looks at a row once a thread is free. @throws Refused where it can't be made. */
  async check(row: NamedRow): Promise<void> {
    await this.#ask({ row });
  }

  /** Makes a row in a folder once a thread is free. @throws Refused where it can't be made. */
  async make(row: NamedRow, folder: string): Promise<MadeOrFound> {
    this.#atWork.add(folder);
    const made = await this.#ask({ row, folder });
    this.#atWork.delete(folder);
    if (!made) throw new Error('a thread gave no row');
    return made;
  }

  async #ask(asked: Omit<RowAsked, 'id'>): Promise<MadeOrFound | undefined> {
    const worker = this.#idle.pop() ?? (await new Promise<Worker>((free) => this.#waiting.push(free)));
    try {
      const { made, refused, fault } = await this.#answerOf(worker, { ...asked, id: this.#asked++ });
      if (refused) throw new Refused(refused);
      if (fault !== undefined) throw new Error(fault);
      return made;
    } finally {
      const next = this.#waiting.shift();
      if (next) next(worker);
      else this.#idle.push(worker);
    }
  }

  async end(): Promise<void> {
    this.#isEnding = true;
    await Promise.all(this.#all.map((worker) => worker.terminate()));
  }

  /** Ends the threads in the midst of their work, for good, and puts right what they leave: each row as it was, or made. */
  async stop(): Promise<void> {
    await this.end();
    for (const folder of this.#atWork) await recover(folder).catch(() => undefined);
  }

  #answerOf(worker: Worker, asked: RowAsked): Promise<RowAnswer> {
    return new Promise((resolve, reject) => {
      const settle = (act: () => void) => {
        worker.off('message', answered).off('error', failed).off('exit', ended);
        act();
      };
      const answered = (answer: RowAnswer) => {
        if (answer.id === asked.id) settle(() => resolve(answer));
      };
      const failed = (fault: Error) => settle(() => reject(fault));
      // Of threads that we end nobody waits for an answer any more.
      const ended = () => {
        if (!this.#isEnding) settle(() => reject(new Error('a thread that makes rows has ended')));
      };
      worker.on('message', answered).on('error', failed).on('exit', ended);
      worker.postMessage(asked);
    });
  }
}
