// How long the sheets are searched for: the maker says so in seconds, sees what comes of it, and may stop it.
import { Refused, stop } from '../finding.ts';
import { type NestSearch, type SheetsSoFar, standardSearch } from '../job/sheets/nest-sheets.ts';
import { parseNumber } from '../lengths/number.ts';

/** Longest search, seconds: a day. */
const longest = 86_400;

/** Time between two looks at whether the maker wants to stop, and between two words on how far it is, ms. */
const pause = 50;
const wordsEvery = 1000;

export interface NestFlags {
  readonly nest?: string;
}

/** A search that has begun, and what ends it. */
export interface RunningSearch {
  readonly search: NestSearch;
  /** Lets go of the keyboard. */
  readonly end: () => void;
}

/**
 * The search that the flags ask for. With seconds it runs so long, or until the maker stops it (Ctrl-C), and the best so
 * far is kept; without it is short, and the same on every machine. @throws Refused
 */
export function nestSearch({ nest }: NestFlags): RunningSearch {
  const seconds = nest === undefined ? undefined : secondsOf(nest);
  let isStopped = false;
  const stopped = () => {
    isStopped = true;
    process.stderr.write('sheets: stopped, the best so far is kept\n');
  };
  if (seconds === undefined) return { search: standardSearch, end: () => undefined };
  process.once('SIGINT', stopped);
  const clock = new SearchClock(seconds);
  const goOn = async (soFar: SheetsSoFar) => {
    if (isStopped) return false;
    return clock.goOn(soFar);
  };
  return { search: { trials: Number.MAX_SAFE_INTEGER, goOn }, end: () => process.off('SIGINT', stopped) };
}

function secondsOf(typed: string): number {
  const parsed = parseNumber(Number(typed), { least: 0, most: longest });
  if (parsed.ok) return parsed.value;
  throw new Refused([stop('not-a-number', { key: '--nest' }, parsed.says)]);
}

/** Tells how far a search is, and when its time is up: each film has as long as any other. */
class SearchClock {
  readonly #seconds: number;
  #film: string | undefined;
  #end = 0;
  #rested = 0;
  #told = 0;
  #best = '';

  constructor(seconds: number) {
    this.#seconds = seconds;
  }

  async goOn(soFar: SheetsSoFar): Promise<boolean> {
    const now = performance.now();
    if (soFar.film !== this.#film) {
      this.#film = soFar.film;
      this.#end = now + 1000 * this.#seconds;
    }
    this.#tell(soFar, now);
    if (now >= this.#end) return false;
    if (now - this.#rested < pause) return true;
    // A signal is only heard where the search rests.
    await new Promise((resolve) => setImmediate(resolve));
    this.#rested = performance.now();
    return true;
  }

  #tell({ film, sheets, lastUsed }: SheetsSoFar, now: number): void {
    const best = `sheets${film === '' ? '' : ` of ${film}`}: ${sheets === 1 ? 'one' : sheets}, ${lastUsed.toFixed(0)} mm used of the last`;
    if (best === this.#best || now - this.#told < wordsEvery) return;
    this.#best = best;
    this.#told = now;
    process.stderr.write(
      `${best}; ${Math.max(0, (this.#end - now) / 1000).toFixed(0)} s left, Ctrl-C keeps it\n`,
    );
  }
}
