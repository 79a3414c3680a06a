// Following readings on the page's own thread, where that is quick: the drawing is there for the first frame after a key.
import type { FollowedView, Follower, Leading } from '../job/view/followed-view.ts';
import type { Bench } from './model/bench.ts';
import { whenIdle } from './when-idle.ts';

/** What a key may take on the page's own thread, ms. */
const quick = 50;

/** Drawings of more letters of path data are left to a thread of their own. */
const mostLetters = 700_000;

/** After so many in a row that were not quick, so many changes are left to the other thread before one is tried here again. */
const patience = { slow: 3, away: 30 } as const;

/**
 * A browser makes quick code only of what has run a few times, and code that is as quick as it gets of what has run some sixty times; while it does, a key
 * takes three times as long.
 */
const warmUps = { few: 6, all: 60 } as const;

/**
 * A drawing whose practice takes this long, ms, so many times in a row, is left to the other thread: it would not come to be quick, and what the maker
 * does meanwhile waits for it each time.
 */
const heavy = { ms: 3 * quick, inARow: 3 } as const;

/** What following takes. */
export interface FollowingTools {
  readonly followerOf: (leading: Leading) => Follower;
  /** @throws Refused where the readings can't be. */
  readonly follow: (leads: Follower, bench: Bench, within: number) => FollowedView | undefined;
  /** The same for nobody to see. */
  readonly practise: (leads: Follower, bench: Bench) => void;
}

const lettersOf = ({ view }: Leading): number =>
  view.pieces.flatMap(({ groups }) => groups).reduce((sum, { d }) => sum + d.length, 0);

export class NearFollowing {
  readonly #load: () => Promise<FollowingTools>;
  #tools: FollowingTools | undefined;
  #newest: Leading | undefined;
  #leads: Follower | undefined;
  #warm = 0;
  #heavy = 0;
  /** Since the newest drawing leads. */
  #isTyping = false;
  #slow = 0;
  #away = 0;

  /** `load` gives what following takes, once there is a drawing to follow. */
  constructor(load: () => Promise<FollowingTools>) {
    this.#load = load;
  }

  /** From now on this drawing leads, laid of this bench, as soon as the page has time; without one nothing is followed here. */
  lead(leading: Leading | undefined, bench: Bench): void {
    this.#newest = leading && lettersOf(leading) <= mostLetters ? leading : undefined;
    this.#leads = undefined;
    this.#heavy = 0;
    this.#isTyping = false;
    if (this.#newest) whenIdle(() => void this.#start(this.#newest, bench));
  }

  async #start(leading: Leading | undefined, bench: Bench): Promise<void> {
    // Where it can't be loaded, the other thread follows.
    this.#tools ??= await this.#load().catch(() => undefined);
    if (!leading || leading !== this.#newest || !this.#tools) return;
    this.#leads = this.#tools.followerOf(leading);
    this.#warmUp(bench);
  }

  /** In pauses alone, until all is quick. */
  #warmUp(bench: Bench): void {
    const isReady = this.#warm >= warmUps.few;
    if (!this.#leads || this.#warm >= warmUps.all || (isReady && this.#isTyping)) return;
    this.#warm++;
    const since = performance.now();
    try {
      this.#tools?.practise(this.#leads, bench);
    } catch {
      // As for `follow`.
    }
    this.#heavy = performance.now() - since > heavy.ms ? this.#heavy + 1 : 0;
    if (isReady && this.#heavy >= heavy.inARow) this.#leads = undefined;
    else whenIdle(() => this.#warmUp(bench));
  }

  /** The drawing carried to a bench, true to `within` mm; `away` where that is for the other thread, undefined where it can't be. */
  follow(bench: Bench, within: number): FollowedView | 'away' | undefined {
    this.#isTyping = true;
    if (!this.#leads || this.#warm < warmUps.few) return 'away';
    if (this.#away > 0) {
      this.#away--;
      return 'away';
    }
    const since = performance.now();
    const drawn = this.#drawn(bench, within);
    this.#slow = performance.now() - since > quick ? this.#slow + 1 : 0;
    if (this.#slow >= patience.slow) this.#away = patience.away;
    return drawn;
  }

  #drawn(bench: Bench, within: number): FollowedView | undefined {
    try {
      return this.#leads && this.#tools?.follow(this.#leads, bench, within);
    } catch {
      // What is wrong with the readings is told by the thread that lays them.
      return undefined;
    }
  }
}
