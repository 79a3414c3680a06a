// Asking the engine in its worker. The newest question of a kind wins; one that holds a newer one up too long is ended.
import type { Finding } from '../finding.ts';
import type { Leading } from '../job/view/followed-view.ts';
import { HandedFiles } from './handed-files.ts';
import type { Bench } from './model/bench.ts';
import type { AnswerOf, BenchAsked, FromWorker, Kind, ThreadName, ToWorker } from './model/messages.ts';

/** How a question ended. `overtaken`: a newer one of its kind was asked, or it was stopped. */
export type Outcome<K extends Kind> =
  | { readonly is: 'answer'; readonly answer: AnswerOf<K>; readonly ms: number }
  | { readonly is: 'refused'; readonly findings: readonly Finding[] }
  | { readonly is: 'fault'; readonly says: string }
  | { readonly is: 'overtaken' };

export interface Step {
  readonly step: number;
  readonly of: number;
  readonly says: string;
}

interface Request {
  readonly kind: Kind;
  readonly bench: Bench;
  readonly more: object;
  readonly onStep: ((step: Step) => void) | undefined;
  readonly end: (outcome: Outcome<Kind>) => void;
}

/** A question may hold up a newer one of its kind for so long, ms; then its thread is ended. */
const patience = 2000;

export class Engine {
  readonly #name: ThreadName;
  #worker: Worker | undefined;
  #running: (Request & { readonly id: number; readonly since: number }) | undefined;
  #waiting = new Map<Kind, Request>();
  #lastId = 0;
  /** The files the worker of now has. */
  #handed = new HandedFiles();

  constructor(name: ThreadName) {
    this.#name = name;
  }

  /** Hand over the drawing that leads: what follows typing carries it to new readings. A thread that is ended loses it. */
  lead(leading: Leading): void {
    this.#started().postMessage({ kind: 'lead', ...leading } satisfies ToWorker);
  }

  /** Ask; `more` is what else the question says. */
  ask<K extends Kind>(
    kind: K,
    bench: Bench,
    more: object = {},
    onStep?: (step: Step) => void,
  ): Promise<Outcome<K>> {
    return new Promise((resolve) => {
      this.#waiting.get(kind)?.end({ is: 'overtaken' });
      // Each kind is answered by its own answer: the worker's table of answers holds that.
      const end = (outcome: Outcome<Kind>) => resolve(outcome as Outcome<K>);
      this.#waiting.set(kind, { kind, bench, more, onStep, end });
      this.#next();
      this.#endWhatHoldsUp(kind);
    });
  }

  /** End a question of this kind, whether it runs or waits. */
  cancel(kind: Kind): void {
    const waiting = this.#waiting.get(kind);
    this.#waiting.delete(kind);
    waiting?.end({ is: 'overtaken' });
    if (this.#running?.kind === kind) this.stop();
  }

  /** End what runs, at once; what waits is asked anew. */
  stop(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#handed = new HandedFiles();
    const ended = this.#running;
    this.#running = undefined;
    ended?.end({ is: 'overtaken' });
    this.#next();
  }

  #endWhatHoldsUp(kind: Kind): void {
    const held = this.#running;
    if (held?.kind !== kind || !this.#waiting.has(kind)) return;
    const left = Math.max(0, patience - (performance.now() - held.since));
    setTimeout(() => {
      if (this.#running?.id === held.id && this.#waiting.has(kind)) this.stop();
    }, left);
  }

  #next(): void {
    if (this.#running) return;
    const [kind] = this.#waiting.keys();
    const request = kind && this.#waiting.get(kind);
    if (!request) return;
    this.#waiting.delete(request.kind);
    const id = ++this.#lastId;
    this.#running = { ...request, id, since: performance.now() };
    const worker = this.#started();
    const bench = this.#handedOver(worker, request.bench);
    worker.postMessage({ kind: request.kind, id, bench, ...request.more } as ToWorker);
  }

  #started(): Worker {
    if (this.#worker) return this.#worker;
    const worker = new Worker(new URL('./worker/worker.ts', import.meta.url), {
      type: 'module',
      name: this.#name,
    });
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => this.#hear(data);
    worker.onerror = (event) => {
      event.preventDefault();
      const says = event.message || 'the engine could not be started; load the page again';
      // A thread that failed may be gone for good: the next question starts another.
      if (this.#worker === worker) {
        worker.terminate();
        this.#worker = undefined;
        this.#handed = new HandedFiles();
      }
      this.#finish({ is: 'fault', says });
    };
    this.#worker = worker;
    return worker;
  }

  /** Hands over the files the worker does not have yet, and names each by its mark. */
  #handedOver(worker: Worker, bench: Bench): BenchAsked {
    const { marks, keep, letGo } = this.#handed.hand(bench.files);
    if (letGo.length > 0) worker.postMessage({ kind: 'let-go', marks: letGo } satisfies ToWorker);
    for (const one of keep) worker.postMessage({ kind: 'keep', ...one } satisfies ToWorker);
    return { ...bench, files: marks };
  }

  #hear(message: FromWorker): void {
    if (message.id !== this.#running?.id) return;
    if (message.is === 'step') {
      this.#running.onStep?.(message);
      return;
    }
    const { id: _, ...outcome } = message;
    this.#finish(outcome);
  }

  #finish(outcome: Outcome<Kind>): void {
    const ended = this.#running;
    this.#running = undefined;
    ended?.end(outcome);
    this.#next();
  }
}
