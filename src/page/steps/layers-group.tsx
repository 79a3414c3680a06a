// How the colours of the pattern become films over one another: their order, and how one goes on under the next.
import { isObject, type Json, listAt, valueAt, withField, withoutItem } from '../model/bench.ts';
import { ChoiceField, FieldFindings, LengthField } from '../parts/field.tsx';
import { art, bench, change, findingsAt } from '../store.ts';
import { UnderLayer } from './under-layer.tsx';

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
          <NotDrawn index={i} colour={colour} />
        </li>
      ))}
    </ol>
  </>
);

/** What stands against a colour of the order, as after the artwork was changed for another; and a way to be rid of it. */
function NotDrawn({ index, colour }: { readonly index: number; readonly colour: string }) {
  const path = `layers.order[${index}]`;
  const found = findingsAt('job', path);
  if (found.length === 0) return null;
  return (
    <>
      <button
        type="button"
        class="quiet"
        data-path={`job:${path}`}
        onClick={() => change(withoutItem(bench.value, 'job', 'layers.order', index), `remove ${path}`)}
      >
        Take it out <span class="unseen">of the order, {colour}</span>
      </button>
      <FieldFindings id={`${path}-says`} found={found} />
    </>
  );
}

export function LayersGroup() {
  const all = colours();
  const isOrdered = all.length > 1 || findingsAt('job', 'layers.order').length > 0;
  return (
    <details class="more" open={valueAt(bench.value.job, 'layers') !== undefined}>
      <summary>Layers of film</summary>
      {isOrdered ? (
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
      <UnderLayer
        path="layers.underlay"
        says="A white underlay, for print on clear film"
        by={{ key: 'choke', label: 'Back from the edge', help: 'under' }}
        colour={{ label: 'Its colour', standard: '#ffffff' }}
      />
      <UnderLayer
        path="layers.backing"
        says="A backing with a smooth outline"
        by={{ key: 'grow', label: 'Past the pattern', help: 'under' }}
        colour={{ label: 'Its colour', standard: '#d8cfb8' }}
      />
    </details>
  );
}
