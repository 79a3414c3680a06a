// How the colours of the pattern become films over one another: their order, and how one goes on under the next.
import { isObject, type Json, listAt, valueAt, withField } from '../model/bench.ts';
import { lengthInFile } from '../model/typed.ts';
import { ChoiceField, ColourField, LengthField } from '../parts/field.tsx';
import { art, bench, change, setField } from '../store.ts';
import { jobUnits } from './motif-place.tsx';

/** What a layer under all begins with, mm: back from the edge, or past it. Common practice, no source. */
const first = { choke: 0.3, grow: 2 } as const;

const colourOf = (entry: Json): string => String(isObject(entry) ? entry.colour : entry);

/** The colours from the lowest up: those that were ordered, then the others as they are drawn. */
function colours(): readonly string[] {
  const ordered = listAt(bench.value, 'job', 'layers.order').map(colourOf);
  const drawn = art.value.answer?.layers.map(({ colour }) => colour) ?? [];
  return [...ordered, ...drawn.filter((colour) => !ordered.includes(colour))];
}

function moveUp(index: number): void {
  const ordered = listAt(bench.value, 'job', 'layers.order');
  const entries = colours().map((colour) => ordered.find((entry) => colourOf(entry) === colour) ?? colour);
  const [lower, upper] = [entries[index], entries[index + 1]];
  if (lower === undefined || upper === undefined) return;
  const next = entries.with(index, upper).with(index + 1, lower);
  change(withField(bench.value, 'job', 'layers.order', next), 'job:layers.order');
}

const Order = ({ all }: { readonly all: readonly string[] }) => (
  <>
    <p class="choice-label">From the lowest up</p>
    <ol class="layer-order">
      {all.map((colour, i) => (
        <li key={colour}>
          <svg class="swatch" viewBox="0 0 1 1" aria-hidden="true">
            <rect width="1" height="1" fill={colour} />
          </svg>
          {colour}
          {i < all.length - 1 ? (
            <button type="button" class="quiet" onClick={() => moveUp(i)}>
              Over the next <span class="unseen">{`, ${colour}`}</span>
            </button>
          ) : null}
        </li>
      ))}
    </ol>
  </>
);

interface UnderProps {
  readonly path: 'layers.underlay' | 'layers.backing';
  readonly by: 'choke' | 'grow';
  readonly says: string;
  readonly label: string;
  readonly colour: string;
}

/** A layer under all of them, where it is wanted. */
function Under({ path, by, says, label, colour }: UnderProps) {
  const has = valueAt(bench.value.job, path) !== undefined;
  return (
    <>
      <label class="tick">
        <input
          type="checkbox"
          checked={has}
          onChange={() =>
            setField('job', path, has ? undefined : { [by]: lengthInFile(first[by], jobUnits()) })
          }
        />
        {says}
      </label>
      {has ? (
        <div class="field-pair">
          <LengthField half="job" path={`${path}.${by}`} label={label} help="under" required />
          <ColourField half="job" path={`${path}.colour`} label="Its colour" standard={colour} />
        </div>
      ) : null}
    </>
  );
}

export function LayersGroup() {
  const all = colours();
  return (
    <details class="more" open={valueAt(bench.value.job, 'layers') !== undefined}>
      <summary>Layers of film</summary>
      {all.length > 1 ? (
        <>
          <Order all={all} />
          <ChoiceField
            half="job"
            path="layers.style"
            label="Where one lies on another"
            help="layers"
            standard="stacked"
            options={[
              { value: undefined, label: 'Stacked', says: 'the lower goes on under it' },
              { value: 'knocked-out', label: 'Knocked out', says: 'its shape is cut from the lower' },
            ]}
          />
          <div class="field-pair">
            <LengthField half="job" path="layers.spread" label="Goes on under" help="spread" standard="0" />
          </div>
        </>
      ) : (
        <p class="aside">The pattern has one colour, so one film.</p>
      )}
      <Under
        path="layers.underlay"
        by="choke"
        says="A white underlay, for print on clear film"
        label="Back from the edge"
        colour="#ffffff"
      />
      <Under
        path="layers.backing"
        by="grow"
        says="A backing with a smooth outline"
        label="Past the pattern"
        colour="#d8cfb8"
      />
    </details>
  );
}
