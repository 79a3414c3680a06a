// Asking for the flat drawing. What is typed is drawn in stages: first the drawing that is there, carried to the new readings,
// and once typing pauses the job laid afresh.
import { batch, effect } from '@preact/signals';
import type { FollowedView } from '../job/view/followed-view.ts';
import type { LaidView } from '../job/view/laid-view.ts';
import { drawFirst } from './drawing-first.ts';
import { type Bench, isObject, type JsonObject } from './model/bench.ts';
import { NearFollowing } from './near-following.ts';
import { loadFollowing } from './near-tools.ts';
import {
  bench,
  flat,
  followed,
  following,
  heard,
  isUntouched,
  laying,
  quiet,
  trueWithin,
  view,
} from './store.ts';

/** A pause in typing after which the job is laid afresh, ms. */
const pause = 350;

/** A job without what moves its pattern as a reading does: what lies under the film, and its thickness. */
const withoutGrowth = ({ coats: _, film, ...rest }: JsonObject): JsonObject => {
  if (!isObject(film)) return film === undefined ? rest : { ...rest, film };
  const { thickness: __, ...kept } = film;
  return Object.keys(kept).length === 0 ? rest : { ...rest, film: kept };
};

/** Whether all but the readings, and what moves the pattern as they do, is as it was. */
const differsInReadings = (one: Bench, other: Bench): boolean =>
  one.files === other.files &&
  one.blankFile === other.blankFile &&
  (one.job === other.job ||
    JSON.stringify(withoutGrowth(one.job)) === JSON.stringify(withoutGrowth(other.job)));

const near = new NearFollowing(loadFollowing);

/** Hands the art of a laid job to what follows readings; false where it can't be followed. */
function leads({ view: { pieces }, laid }: LaidView, of: Bench): boolean {
  if (!laid) {
    near.lead(undefined, of);
    return false;
  }
  const art = pieces.map((piece) => ({
    ...piece,
    groups: piece.groups.filter(({ role }) => role === 'artwork'),
  }));
  const leading = { view: { pieces: art }, laid };
  following.lead(leading);
  near.lead(leading, of);
  return true;
}

/** The drawing carried to a bench by the thread that follows. */
async function followedFar(now: Bench, within: number): Promise<FollowedView | undefined> {
  const outcome = await following.ask('followed', now, { within });
  return outcome.is === 'answer' ? outcome.answer.followed : undefined;
}

export function startLaying(): void {
  let leading: Bench | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const lay = async (now: Bench, since: number) => {
    const outcome = await laying.ask('flat', now);
    if (outcome.is === 'overtaken' || isUntouched.peek()) return;
    const isNewest = now === bench.peek();
    batch(() => {
      flat.value = { ...heard(flat.peek(), outcome), since, busy: !isNewest };
      if (isNewest) followed.value = undefined;
    });
    if (outcome.is === 'answer') leading = leads(outcome.answer, now) ? now : undefined;
  };
  const follow = async (now: Bench, since: number) => {
    const within = trueWithin.peek();
    const nearby = near.follow(now, within);
    const drawn = nearby === 'away' ? await followedFar(now, within) : nearby;
    if (now !== bench.peek() || isUntouched.peek()) return;
    if (!drawn) {
      void lay(now, since);
      return;
    }
    if (nearby !== 'away') drawFirst();
    followed.value = { ...drawn, since };
    timer = setTimeout(() => void lay(now, since), pause);
  };
  effect(() => {
    const now = bench.value;
    clearTimeout(timer);
    if (isUntouched.value) {
      leading = undefined;
      flat.value = quiet;
      followed.value = undefined;
      return;
    }
    flat.value = { ...flat.peek(), busy: true };
    const isSeen = view.peek() === 'flat' || view.peek() === 'both';
    const since = performance.now();
    const isFollowed = leading && differsInReadings(leading, now);
    if (isSeen && isFollowed) void follow(now, since);
    // Where nobody looks at it, it waits for a pause, so as not to hold up what is looked at.
    else if (isFollowed) timer = setTimeout(() => void lay(now, since), pause);
    else void lay(now, since);
  });
}
