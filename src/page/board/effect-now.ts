// Effects that ask for a frame themselves.
import { effect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';

/** As `useSignalEffect`, but run at the change itself: that one waits for a frame, and what it draws for another. */
export function useEffectNow(run: () => undefined | (() => void)): void {
  const newest = useRef(run);
  newest.current = run;
  useEffect(() => effect(() => newest.current()), []);
}
