// What the printed paper missed by when it was wrapped: the reading that tells most.
import { goTo } from '../going.ts';
import { listAt, withItem } from '../model/bench.ts';
import { LengthField } from '../parts/field.tsx';
import { bench, change } from '../store.ts';
import { ListHead } from './list-head.tsx';

function Fit({ index }: { readonly index: number }) {
  const path = `fits[${index}]`;
  return (
    <li class="station">
      <ListHead half="blank" list="fits" index={index} name={`Paper fit ${index + 1}`} />
      <div class="field-pair">
        <LengthField half="blank" path={`${path}.foot`} label="Missed at the foot" help="fitMiss" required />
        <LengthField half="blank" path={`${path}.lip`} label="Missed at the lip" help="fitMiss" required />
        <LengthField
          half="blank"
          path={`${path}.climb`}
          label="Level edge climbed"
          help="fitClimb"
          standard="not read"
        />
      </div>
    </li>
  );
}

export function FitGroup() {
  const fits = listAt(bench.value, 'blank', 'fits');
  return (
    <details class="more" open={fits.length > 0}>
      <summary>What the paper missed by</summary>
      <p class="aside">
        Print the template, wrap it level from the foot, and type by how much its ends miss: a gap as it is,
        an overlap with a minus. The readings are put right by it; print again, and it should meet.
      </p>
      {fits.length === 0 ? null : (
        <ol class="stations">
          {fits.map((_, i) => (
            <Fit key={i} index={i} />
          ))}
        </ol>
      )}
      <button
        type="button"
        class="plain"
        onClick={() => {
          change(withItem(bench.value, 'blank', 'fits', { foot: '', lip: '' }), 'add fit');
          goTo(`blank:fits[${fits.length}].foot`);
        }}
      >
        Add a paper fit
      </button>
    </details>
  );
}
