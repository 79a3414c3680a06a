// How much wall a coat has to cover.
import type { Band } from './flat-band.ts';
import { closePlaces, type Wall, wallAt } from './wall.ts';

/**
 * Area of the wall between two places along it, mm²: frusta between close places.
 * Source: frustum, pi s (R + r), Machinery's Handbook, from memory.
 */
export function wallArea(wall: Wall, band: Band): number {
  const places = closePlaces(wall, band);
  return places.slice(1).reduce((sum, along, i) => {
    const below = places[i] ?? along;
    return sum + Math.PI * (along - below) * (wallAt(wall, along).radius + wallAt(wall, below).radius);
  }, 0);
}
