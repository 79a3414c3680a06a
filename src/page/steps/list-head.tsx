// The head of one thing of a list: what it is, and taking it away.
import { type Half, withoutItem } from '../model/bench.ts';
import { bench, change } from '../store.ts';

interface ListHeadProps {
  readonly half: Half;
  readonly list: 'items' | 'lettering' | 'fits' | 'keepOut';
  readonly index: number;
  readonly name: string;
}

export const ListHead = ({ half, list, index, name }: ListHeadProps) => (
  <div class="station-head">
    <h4>{name}</h4>
    <button
      type="button"
      class="quiet"
      onClick={() => change(withoutItem(bench.value, half, list, index), `remove ${list} ${index}`)}
    >
      Remove <span class="unseen">{name}</span>
    </button>
  </div>
);
