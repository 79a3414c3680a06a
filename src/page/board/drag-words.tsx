// What is told of a motif while it is dragged: where its middle is, and how far it may go.
import { measuredLength } from '../../lengths/length.ts';
import { bench } from '../store.ts';
import type { Dragged } from './motif-drag.ts';
import { PlaceInWords } from './place-words.tsx';

export function DragInWords({ dragged: { name, at, limits, isAtLimit } }: { readonly dragged: Dragged }) {
  const { units } = bench.value;
  const [from, to] = [measuredLength(limits.from, units), measuredLength(limits.to, units)];
  return (
    <>
      {name}: <PlaceInWords place={at} />. Its middle may go from {from} to {to}
      {isAtLimit ? <strong>: no further, the band ends there</strong> : ''}.
    </>
  );
}
