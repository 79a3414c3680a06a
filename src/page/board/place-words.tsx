// A place of the wall in figures: how far around, and how far up.
import { measuredLength } from '../../lengths/length.ts';
import { bench, type WallPlace } from '../store.ts';

export const PlaceInWords = ({ place: { turn, along } }: { readonly place: WallPlace }) => (
  <>
    {(turn * 360).toFixed(1)}° around (turn {turn.toFixed(3)}), {measuredLength(along, bench.value.units)}{' '}
    along from the foot
  </>
);
