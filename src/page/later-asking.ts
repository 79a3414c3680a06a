// Asking for all but the flat drawing: the vessel at each change of its readings, and what takes longer once the job is laid.
import { computed, effect, type Signal } from '@preact/signals';
import type { Bench } from './model/bench.ts';
import type { Kind } from './model/messages.ts';
import { loadWall } from './near-tools.ts';
import { NearWall } from './near-wall.ts';
import {
  areSidesSeen,
  art,
  bench,
  checks,
  flat,
  following,
  type Heard,
  hasArtwork,
  heard,
  isUntouched,
  narrowWall,
  quiet,
  rolled,
  seam,
  sides,
  slow,
  vessel,
  view,
  ways,
} from './store.ts';

/** A pause in typing that what the readings say waits for where the wall is not in front, ms: the drawing that is comes first. */
const rest = 120;

/** Ask for the vessel whenever the bench changes, and for the rest once the flat drawing has been laid. */
export function startAsking(): void {
  let blankBefore: unknown;
  let unitsBefore: unknown;
  let windowBefore: unknown;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const near = new NearWall(loadWall);
  const askVessel = async (now: Bench, since: number) => {
    const window = narrowWall.peek();
    const outcome = await following.ask('vessel', now, window ? { window } : {});
    // What was drawn here since is newer.
    if (isUntouched.peek() || now.blank !== blankBefore || now.units !== unitsBefore) return;
    vessel.value = { ...heard(vessel.peek(), outcome), since };
    if (outcome.is === 'answer') near.prepare(now);
  };
  const drawWall = (now: Bench, since: number) => {
    const answer = near.answer(now, narrowWall.peek());
    if (answer) vessel.value = { answer, busy: false, ms: performance.now() - since, since };
    else void askVessel(now, since);
  };
  effect(() => {
    const [now, window] = [bench.value, narrowWall.value];
    if (isUntouched.value) {
      clearTimeout(timer);
      blankBefore = undefined;
      vessel.value = quiet;
      return;
    }
    if (now.blank !== blankBefore || now.units !== unitsBefore || window !== windowBefore) {
      clearTimeout(timer);
      blankBefore = now.blank;
      unitsBefore = now.units;
      windowBefore = window;
      vessel.value = { ...vessel.peek(), busy: true };
      const since = performance.now();
      if (view.peek() === 'wall') drawWall(now, since);
      else timer = setTimeout(() => void askVessel(now, since), rest);
    }
  });
  const isTouched = () => !isUntouched.value;
  const isVesselSeen = () => isTouched() && (view.value === 'vessel' || view.value === 'both');
  askLater('rolled', rolled, () => isVesselSeen() && !areSidesSeen.value);
  askLater('sides', sides, () => isVesselSeen() && areSidesSeen.value);
  askLater('seam', seam, () => isTouched() && view.value === 'seam');
  askLater('checks', checks, isTouched, { forgets: true });
  askLater('art', art, () => hasArtwork.value, { forgets: true });
  askLater('ways', ways, () => hasArtwork.value, { forgets: true });
}

/** A pause in typing that slower work waits for, ms, once the job is laid: until then it would only hold that up. */
const pause = 250;

const isLaid = computed(() => !flat.value.busy);

/**
 * Ask a slower question of every bench for which it is wanted, once each, after a pause in typing. `forgets`: what was
 * answered goes where the question is no longer wanted.
 */
function askLater<K extends Kind>(
  kind: K,
  told: Signal<Heard<K>>,
  isWanted: () => boolean,
  { forgets = false } = {},
): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** Of what it was asked last, or is to be asked after the pause. */
  let asked: Bench | undefined;
  let isPausing = false;
  const ask = (now: Bench) => {
    isPausing = false;
    void slow.ask(kind, now).then((outcome) => {
      const isStopped = outcome.is === 'overtaken' && asked === now;
      if (isStopped) asked = undefined;
      told.value = isStopped ? { ...told.peek(), busy: false } : heard(told.peek(), outcome);
    });
  };
  effect(() => {
    const now = bench.value;
    const canAsk = isLaid.value;
    if (isWanted()) {
      if (asked === now && !isPausing) return;
      clearTimeout(timer);
      asked = now;
      isPausing = true;
      told.value = { ...told.peek(), busy: true };
      if (canAsk) timer = setTimeout(() => ask(now), pause);
      return;
    }
    clearTimeout(timer);
    if (isPausing) asked = undefined;
    if (forgets) {
      asked = undefined;
      told.value = quiet;
    } else if (isPausing) told.value = { ...told.peek(), busy: false };
    isPausing = false;
  });
}
