// How far long work over many rows has come, told now and then on standard error.

/** Between two words on how far it is, ms. */
const wordsEvery = 2000;

/** The time left is reckoned from so many rows before: the first ones are slower, and some need nothing done. */
const reckonedFrom = 20;

export class Progress {
  readonly #says: string;
  readonly #total: number;
  /** When each of the last rows was done, ms; the first entry before any was. */
  readonly #ends: number[] = [performance.now()];
  #done = 0;
  #told = performance.now();

  /** `says`: what is done to each, such as `made`. */
  constructor(says: string, total: number) {
    this.#says = says;
    this.#total = total;
  }

  /** One more is done. */
  step(): void {
    const now = performance.now();
    this.#done++;
    this.#ends.push(now);
    if (this.#ends.length > reckonedFrom + 1) this.#ends.shift();
    if (now - this.#told < wordsEvery || this.#done === this.#total) return;
    this.#told = now;
    process.stderr.write(`names: ${this.#inWords()}, about ${timeInWords(this.#left(now))} left\n`);
  }

  /** How far it had come when it was stopped. */
  stopped(): string {
    return `names: stopped with ${this.#inWords()}; the same command goes on from there`;
  }

  #inWords(): string {
    return `${this.#done} of ${this.#total} ${this.#says}`;
  }

  #left(now: number): number {
    const [first = now] = this.#ends;
    return ((now - first) / (this.#ends.length - 1)) * (this.#total - this.#done);
  }
}

/** A time in words, from ms. */
const timeInWords = (ms: number): string => {
  const seconds = Math.ceil(ms / 1000);
  return seconds < 100 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`;
};
