// What keeps every change in the browser, and what the maker is told where it can't, or where another tab keeps a job too.
import { effect, signal } from '@preact/signals';
import { Keeper, keepingFault } from './keep.ts';
import { begin, held, takeUp } from './store.ts';

/** Why the browser keeps nothing; empty while it does. */
export const keepingSays = signal('');
/** Whether the job that is kept is another tab's: then nothing of this one is kept until the maker chooses. */
export const isKeptElsewhere = signal(false);

/** A pause in changing after which what is held is kept, ms. */
const pause = 200;

const keeper = new Keeper();

/** What was kept, with no step before it. */
export async function beginWithKept(): Promise<void> {
  try {
    begin(await keeper.take());
  } catch (fault) {
    keepingSays.value = keepingFault(fault);
  }
}

/** Keeps what is held whenever it changes, and at the latest when the page goes. */
export function startKeeping(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let keptLast = held.peek();
  const keep = (manner: 'asked' | 'at-once') => {
    const now = held.peek();
    if (now === keptLast || isKeptElsewhere.peek()) return;
    void told(async () => {
      isKeptElsewhere.value = !(await keeper.keep(now, manner));
      if (!isKeptElsewhere.peek()) keptLast = now;
    });
  };
  effect(() => {
    void held.value;
    clearTimeout(timer);
    timer = setTimeout(() => keep('asked'), pause);
  });
  addEventListener('pagehide', () => keep('at-once'));
  // Who comes back to a tab is told before they type on in it.
  const look = () => {
    if (document.visibilityState === 'visible' && !isKeptElsewhere.peek()) void told(lookForOthers);
  };
  addEventListener('visibilitychange', look);
  addEventListener('pageshow', look);
}

async function lookForOthers(): Promise<void> {
  isKeptElsewhere.value = await keeper.isOvertaken();
}

/** The job of this tab in place of the other one's. */
export const keepOurs = (): Promise<void> =>
  told(async () => {
    await keeper.keep(held.peek(), 'over');
    isKeptElsewhere.value = false;
  });

/** The other tab's job on this bench too; what lay here is a step back. */
export const takeTheirs = (): Promise<void> =>
  told(async () => {
    takeUp(await keeper.take());
    isKeptElsewhere.value = false;
  });

async function told(work: () => Promise<void>): Promise<void> {
  try {
    await work();
    keepingSays.value = '';
  } catch (fault) {
    keepingSays.value = keepingFault(fault);
  }
}
