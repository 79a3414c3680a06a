// One attempt at breaking something: it may be done or refused in words, within its time, and nothing else.
import { Refused, toLine } from '../../src/finding.ts';

export interface Attempt {
  readonly seed: number;
  readonly input: string;
  readonly fault: string;
}

/** Longest that one input may take, ms: by the clock, or of the processor's time where that is less. */
const mostTime = 10_000;

/** What stands in quotes is as it was typed, which may be anything. */
const isBadLine = (line: string): boolean =>
  /\n/.test(line) ||
  /undefined|\[object|NaN mm|Infinity mm|TypeError|RangeError|at .*\.ts/.test(
    line.replace(/'[^']*"[^']*'|"[^"]*"/g, ''),
  );

/** What went wrong while `work` had an input, in words; undefined where it was done or refused as it should be. */
export async function faultOf(work: () => unknown, most = mostTime): Promise<string | undefined> {
  const [begin, before] = [performance.now(), process.cpuUsage()];
  try {
    await work();
  } catch (fault) {
    if (!(fault instanceof Refused))
      return fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
    if (fault.findings.length === 0) return 'refused without a word';
    const bad = fault.findings.map(toLine).find(isBadLine);
    if (bad !== undefined) return `refused in words that are none: ${bad}`;
  }
  // On a machine where others have the processor a second of work takes ten.
  const { user, system } = process.cpuUsage(before);
  const time = Math.min(performance.now() - begin, (user + system) / 1000);
  return time > most ? `took ${(time / 1000).toFixed(1)} s` : undefined;
}

/** More rounds on request: FUZZ=20 tries twenty times as many, from seeds never tried in a plain run. */
export const rounds = (plain: number): number => Math.round(plain * Number(process.env.FUZZ ?? 1));

/** The first seed: SEED=100000 tries none that was tried before. */
export const firstSeed = Number(process.env.SEED ?? 1);

/** The seeds of a test that has so many rounds in a plain run. */
export const seeds = (plain: number): readonly number[] =>
  Array.from({ length: rounds(plain) }, (_, i) => firstSeed + i);

/** Time for all rounds on a busy machine, ms. */
export const patient = { timeout: Math.max(300_000, rounds(300_000)) };
