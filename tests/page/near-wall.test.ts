// Which walls are drawn on the page's own thread, and which are left to the other.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Refused, stop } from '../../src/finding.ts';
import { emptyBench } from '../../src/page/model/bench.ts';
import { type DrawWall, NearWall } from '../../src/page/near-wall.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const bench = emptyBench('mm');
type Answer = ReturnType<DrawWall>;
const drawn = { lines: [] } as unknown as Answer;

/** Once the page has had time; each wall takes so many ms. */
async function prepared(draw: () => Answer, ms = 1) {
  const draws = vi.fn(() => {
    vi.advanceTimersByTime(ms);
    return draw();
  });
  const near = new NearWall(async () => draws);
  const before = near.answer(bench, undefined);
  near.prepare(bench);
  const early = near.answer(bench, undefined);
  await vi.runAllTimersAsync();
  const practised = draws.mock.calls.length;
  return { near, draws, before, early, practised };
}

test('a wall is drawn here once that was practised in pauses', async () => {
  const { near, draws, before, early, practised } = await prepared(() => drawn);
  expect([before, early]).toEqual([undefined, undefined]);
  expect(practised).toBe(20);
  const window = { width: 300, height: 200 };
  expect(near.answer(bench, window)).toBe(drawn);
  expect(draws).toHaveBeenLastCalledWith(bench, window);
});

test('readings that are refused are left to the thread that tells of them', async () => {
  let isWrong = false;
  const { near } = await prepared(() => {
    if (isWrong) throw new Refused([stop('not-a-length', {}, 'no length')]);
    return drawn;
  });
  isWrong = true;
  expect(near.answer(bench, undefined)).toBeUndefined();
  isWrong = false;
  expect(near.answer(bench, undefined)).toBe(drawn);
});

test('where it is slow three times in a row all that follow are left to the other thread', async () => {
  const { near, draws, practised } = await prepared(() => drawn, 40);
  const told = Array.from({ length: 5 }, () => near.answer(bench, undefined));
  expect(told).toEqual([drawn, drawn, drawn, undefined, undefined]);
  expect(draws).toHaveBeenCalledTimes(practised + 3);
});

test('where it cannot be loaded the other thread draws', async () => {
  const near = new NearWall(() => Promise.reject(new Error('offline')));
  near.prepare(bench);
  await vi.runAllTimersAsync();
  expect(near.answer(bench, undefined)).toBeUndefined();
});
