// The drawing that leads, kept by the thread that carries it to new readings.
import type { Follower, Leading } from '../../job/view/followed-view.ts';

let leads: Promise<Follower | undefined> = Promise.resolve(undefined);

/** From now on this one leads. */
export function lead(leading: Leading): void {
  leads = import('./following.ts').then(({ followerOf }) => followerOf(leading));
  // Whoever asks for it hears why.
  leads.catch(() => undefined);
}

/** The drawing to follow; undefined before there is one. */
export const follower = (): Promise<Follower | undefined> => leads;
