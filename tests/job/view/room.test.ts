// Room for a drawing's numbers: what is shown must stay while the next one is made.
import { expect, test } from 'vitest';
import { Room } from '../../../src/job/view/room.ts';

/** A drawing of so many numbers, all of them this one. */
function made(room: Room, length: number, number: number) {
  room.begin();
  const given = room.of(length).fill(number);
  return given;
}

test('a drawing that is shown keeps its numbers while the next one is made, and nothing is made anew after two', () => {
  const room = new Room();
  const first = made(room, 4, 1);
  room.keep();
  const second = made(room, 4, 2);
  expect([...first]).toEqual([1, 1, 1, 1]);
  room.keep();
  expect(made(room, 4, 3)).toBe(first);
  expect([...second]).toEqual([2, 2, 2, 2]);
});

test('a drawing that came to nothing takes nothing from the one that is shown, however many there are', () => {
  const room = new Room();
  const shown = made(room, 4, 1);
  room.keep();
  for (const number of [2, 3, 4]) made(room, 4, number);
  expect([...shown]).toEqual([1, 1, 1, 1]);
});

test('a drawing of another size has room of its own size', () => {
  const room = new Room();
  made(room, 4, 1);
  expect(made(room, 6, 2)).toHaveLength(6);
});
