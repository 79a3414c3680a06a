// What a shell does before any work: sines that are the same in every engine, so that the same job is the same bytes.
import { sinesOf } from '../geometry/sines.ts';

/** From now on `Math.sin` and `Math.cos` are ours, for the core and for the libraries it calls. */
export function useSameSines(): void {
  const { sin, cos } = Math;
  Object.assign(Math, sinesOf({ sin, cos }));
}
