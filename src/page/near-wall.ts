// The wall drawn on the page's own thread while readings are typed: it is there for the first frame after a key.
import type { Bench } from './model/bench.ts';
import type { AnswerOf } from './model/messages.ts';
import { whenIdle } from './when-idle.ts';

/** What a key may take on the page's own thread, ms. */
const quick = 25;

/** After so many in a row that were not quick all are left to the other thread: it is a slow machine, not a pause of the browser's. */
const patience = 3;

/** It is drawn so often in pauses before the first key that is answered here: until then a browser has not made it quick. */
const practice = 20;

type Answer = AnswerOf<'vessel'>;
export type Window = { readonly width: number; readonly height: number };

/** Draws a wall. @throws Refused where its readings can't be. */
export type DrawWall = (bench: Bench, window: Window | undefined) => Answer;

export class NearWall {
  readonly #load: () => Promise<DrawWall>;
  #draw: DrawWall | undefined;
  #isAsked = false;
  #practised = 0;
  #slow = 0;

  /** `load` gives what draws a wall, once there is one. */
  constructor(load: () => Promise<DrawWall>) {
    this.#load = load;
  }

  /** From now on the page gets ready, in pauses, by a wall that was drawn. */
  prepare(bench: Bench): void {
    if (this.#isAsked) return;
    this.#isAsked = true;
    whenIdle(() => void this.#start(bench));
  }

  async #start(bench: Bench): Promise<void> {
    // Where it can't be loaded, the other thread draws.
    this.#draw = await this.#load().catch(() => undefined);
    this.#practise(bench);
  }

  #practise(bench: Bench): void {
    if (!this.#draw || this.#practised >= practice) return;
    this.#practised++;
    this.#drawn(bench, undefined);
    whenIdle(() => this.#practise(bench));
  }

  /** The wall of a bench; undefined where that is for the other thread, which also tells what is wrong with readings. */
  answer(bench: Bench, window: Window | undefined): Answer | undefined {
    if (this.#slow >= patience || this.#practised < practice) return undefined;
    const since = performance.now();
    const drawn = this.#drawn(bench, window);
    this.#slow = performance.now() - since > quick ? this.#slow + 1 : 0;
    return drawn;
  }

  #drawn(bench: Bench, window: Window | undefined): Answer | undefined {
    try {
      return this.#draw?.(bench, window);
    } catch {
      return undefined;
    }
  }
}
