// Opening files onto the bench, from a picker, a drop, the samples or the shelf; what can't be read is said, not thrown.
import { signal } from '@preact/signals';
import { Refused, toLine } from '../finding.ts';
import { emptyBench } from './model/bench.ts';
import { type NamedBytes, withOpened } from './model/contract-files.ts';
import { beginView, bench, change, hasArtwork, opening, said, viewsChosen } from './store.ts';

/** What stood against opening files last, in words; empty where nothing did. */
export const openingSays = signal<readonly string[]>([]);

/** Done when all that was asked to be opened is open, or could not be. */
let askedBefore: Promise<void> = Promise.resolve();

/**
 * Opens what comes, and shows it: but where the maker has chosen a view meanwhile, that one stays. What was asked for
 * first is opened first, however late it comes: what the maker chose last is what lies on the bench.
 */
export function openFiles(
  coming: Promise<readonly NamedBytes[]>,
  what: string,
  use: 'artwork' | 'any' = 'any',
): Promise<void> {
  const before = askedBefore;
  askedBefore = openAfter(before, coming, what, use);
  return askedBefore;
}

async function openAfter(
  before: Promise<void>,
  coming: Promise<readonly NamedBytes[]>,
  what: string,
  use: 'artwork' | 'any',
): Promise<void> {
  const chosenBefore = viewsChosen.peek();
  opening.value = opening.peek() + 1;
  // One that fails is told when its turn comes, not as a promise nobody waits for.
  coming.catch(() => undefined);
  try {
    await before;
    const files = await coming;
    if (files.length === 0) return;
    const { bench: next, says } = withOpened(bench.value, files, use);
    change(next, `open ${what}`);
    openingSays.value = says;
    said.value = says.length > 0 ? says.join('; ') : `${what} opened`;
    if (viewsChosen.peek() === chosenBefore) beginView(hasArtwork.value ? 'flat' : 'wall');
  } catch (fault) {
    openingSays.value =
      fault instanceof Refused
        ? fault.findings.map(toLine)
        : [fault instanceof Error ? fault.message : String(fault)];
    said.value = openingSays.value.join('; ');
  } finally {
    opening.value = opening.peek() - 1;
  }
}

/** A new, empty job; the one before is a step back in the history. */
export function startAnew(units = bench.value.units): void {
  change(emptyBench(units), 'new job');
  openingSays.value = [];
  beginView('wall');
}
