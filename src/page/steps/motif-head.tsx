// The head of a motif's or a text's fields: what it is, and taking it away.
import { withoutItem } from '../model/bench.ts';
import { bench, change } from '../store.ts';

interface MotifHeadProps {
  readonly list: 'items' | 'lettering';
  readonly index: number;
  readonly name: string;
}

export const MotifHead = ({ list, index, name }: MotifHeadProps) => (
  <div class="station-head">
    <h4>{name}</h4>
    <button
      type="button"
      class="quiet"
      onClick={() => change(withoutItem(bench.value, 'job', list, index), `remove ${list} ${index}`)}
    >
      Remove <span class="unseen">{name}</span>
    </button>
  </div>
);
