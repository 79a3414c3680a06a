// What is followed on the page's own thread, and what is left to the other.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Refused, stop } from '../../src/finding.ts';
import type { FollowedView, Follower, Leading } from '../../src/job/view/followed-view.ts';
import { emptyBench } from '../../src/page/model/bench.ts';
import { NearFollowing } from '../../src/page/near-following.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const bench = emptyBench('mm');
const within = 0.1;
const drawn = { art: [] } as unknown as FollowedView;
/** A drawing of so many letters. */
const drawing = (letters: number) =>
  ({ view: { pieces: [{ groups: [{ d: 'M'.repeat(letters) }] }] } }) as unknown as Leading;

/** With a drawing that leads, once the page has had time; each takes so many ms to follow. */
async function following(letters: number, follow: () => FollowedView | undefined, ms = 1) {
  const runs = vi.fn(() => {
    vi.advanceTimersByTime(ms);
    return follow();
  });
  const practices = vi.fn();
  const followerOf = () => ({}) as Follower;
  const near = new NearFollowing(async () => ({ followerOf, follow: runs, practise: practices }));
  near.lead(drawing(letters), bench);
  const early = near.follow(bench, within);
  await vi.runAllTimersAsync();
  return { near, runs, practices, early };
}

test('a drawing is followed here once the page has had time to get ready for it', async () => {
  const { near, early } = await following(300_000, () => drawn);
  expect(early).toBe('away');
  expect(near.follow(bench, within)).toBe(drawn);
  near.lead(undefined, bench);
  expect(near.follow(bench, within)).toBe('away');
});

test('a large drawing is left to the other thread', async () => {
  const { near, runs } = await following(2_000_000, () => drawn);
  expect(near.follow(bench, within)).toBe('away');
  expect(runs).not.toHaveBeenCalled();
});

test('readings that are refused are left to what lays them', async () => {
  const refused = () => {
    throw new Refused([stop('not-a-length', {}, 'no length')]);
  };
  const { near } = await following(300, refused);
  expect(near.follow(bench, within)).toBeUndefined();
});

test('what is slow three times in a row is left to the other thread for thirty changes', async () => {
  const { near, runs } = await following(300, () => drawn, 80);
  const told = Array.from({ length: 34 }, () => near.follow(bench, within));
  expect(told.map((is) => is === 'away')).toEqual(told.map((_, i) => i > 2 && i < 33));
  expect(runs).toHaveBeenCalledTimes(4);
});

test('it is practised in pauses, and not while keys come in', async () => {
  const practices = vi.fn();
  const followerOf = () => ({}) as Follower;
  const near = new NearFollowing(async () => ({ followerOf, follow: () => drawn, practise: practices }));
  near.lead(drawing(300), bench);
  while (near.follow(bench, within) === 'away') await vi.advanceTimersToNextTimerAsync();
  await vi.runAllTimersAsync();
  const few = practices.mock.calls.length;
  near.lead(drawing(300), bench);
  await vi.runAllTimersAsync();
  const all = practices.mock.calls.length;
  expect(few).toBeGreaterThan(3);
  expect(all).toBeGreaterThan(5 * few);
  near.lead(drawing(300), bench);
  await vi.runAllTimersAsync();
  expect(practices).toHaveBeenCalledTimes(all);
});

test('a drawing that practice does not make quick is practised no more, and left to the other thread', async () => {
  let ms = 100;
  const practices = vi.fn(() => void vi.advanceTimersByTime(ms));
  const practised = async () => {
    practices.mockClear();
    const followerOf = () => ({}) as Follower;
    const near = new NearFollowing(async () => ({ followerOf, follow: () => drawn, practise: practices }));
    near.lead(drawing(300), bench);
    await vi.runAllTimersAsync();
    return near;
  };
  const light = await practised();
  const all = practices.mock.calls.length;
  expect(light.follow(bench, within)).toBe(drawn);
  ms = 200;
  const heavy = await practised();
  expect(practices.mock.calls.length).toBeLessThan(all / 5);
  expect(heavy.follow(bench, within)).toBe('away');
  // The next drawing may be light.
  ms = 100;
  heavy.lead(drawing(300), bench);
  await vi.runAllTimersAsync();
  expect(heavy.follow(bench, within)).toBe(drawn);
});
