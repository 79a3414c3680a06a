// Step 3: what lies under the film, the film, and where it begins and ends.

import { measuredLength } from '../../lengths/length.ts';
import { goTo } from '../going.ts';
import { listAt, valueAt, withField, withItem, withoutItem } from '../model/bench.ts';
import { ChoiceField, LengthField, NumberField, TextField } from '../parts/field.tsx';
import { bench, change, flat, hasArtwork, setField } from '../store.ts';
import { CollarsGroup } from './collars-group.tsx';
import { FilmGroup } from './film-group.tsx';
import { MaskGroup } from './mask-group.tsx';
import { SeamGroup } from './seam-group.tsx';
import { WasteGroup } from './waste-group.tsx';

function Coats() {
  const coats = listAt(bench.value, 'job', 'coats');
  const reports = flat.value.answer?.report.coats ?? [];
  /** A coat named by its number; the maker goes on at what is still to be told of it. */
  const add = (told: { readonly thickness: '' } | { readonly volume: number }) => {
    const coat = { name: `coat ${coats.length + 1}`, ...told };
    change(withItem(bench.value, 'job', 'coats', coat), 'add coat');
    goTo(`job:coats[${coats.length}].${Object.keys(told)[0]}`);
  };
  return (
    <>
      <h3 class="group-head">Coats</h3>
      {coats.map((_, i) => {
        const path = `coats[${i}]`;
        const name = valueAt(bench.value.job, `${path}.name`);
        const told = reports.find((coat) => coat.name === name);
        const isPoured = valueAt(bench.value.job, `${path}.volume`) !== undefined;
        return (
          <div class="coat" key={i}>
            <div class="field-pair">
              <TextField half="job" path={`${path}.name`} label="Coat" standard="coat" />
              {isPoured ? (
                <NumberField half="job" path={`${path}.volume`} label="Poured" unit="ml" help="coat" />
              ) : (
                <LengthField half="job" path={`${path}.thickness`} label="Thick" help="coat" required />
              )}
            </div>
            <div class="button-row">
              <label class="tick">
                <input
                  type="checkbox"
                  checked={valueAt(bench.value.job, `${path}.over`) === true}
                  onChange={(event) =>
                    setField('job', `${path}.over`, event.currentTarget.checked ? true : undefined)
                  }
                />
                Over the film
              </label>
              <button
                type="button"
                class="quiet"
                onClick={() => change(withoutItem(bench.value, 'job', 'coats', i), `remove coat ${i}`)}
              >
                Remove <span class="unseen">coat {i + 1}</span>
              </button>
            </div>
            {told ? (
              <p class="aside">
                The girth grows by {measuredLength(told.girthGrowth, bench.value.units)};{' '}
                {told.volume.toFixed(1)} ml for one vessel.
              </p>
            ) : null}
          </div>
        );
      })}
      <div class="button-row">
        <button type="button" class="plain" onClick={() => add({ thickness: '' })}>
          Add a coat by thickness
        </button>
        <button type="button" class="plain" onClick={() => add({ volume: 10 })}>
          Add a poured coat
        </button>
      </div>
      {coats.length > 0 ? (
        <p class="caution" role="note">
          <strong>Take care.</strong> Resins and clear coats: gloves, eye cover, fresh air or the respirator
          that the product’s own sheet names. That sheet and your local rules come first.
        </p>
      ) : null}
    </>
  );
}

export function SeamStep() {
  return (
    <>
      <Coats />
      <FilmGroup />
      <WasteGroup />
      <MaskGroup />
      <h3 class="group-head">Band</h3>
      {/* biome-ignore lint/a11y/useSemanticElements: its name is the heading above. */}
      <div class="field-pair" role="group" aria-label="Band">
        <LengthField half="job" path="band.from" label="From" help="band" standard="flat band" />
        <LengthField half="job" path="band.to" label="To" help="band" standard="flat band" />
      </div>
      <SeamGroup />
      <ChoiceField
        half="job"
        path="edges"
        label="The pattern at the edges"
        help="edges"
        standard="straight"
        options={[
          { value: undefined, label: 'Straight', says: 'cut where the band ends' },
          { value: 'whole-rows', label: 'Whole rows', says: 'no row is cut' },
          { value: 'fade', label: 'Fade', says: 'motifs an edge would cut are left out' },
        ]}
      />
      {valueAt(bench.value.job, 'edges') === 'fade' && hasArtwork.value ? (
        <LengthField
          half="job"
          path="artwork.together"
          label="Gap within a motif"
          help="together"
          standard="0"
        />
      ) : null}
      <ChoiceField
        half="job"
        path="pieces"
        label="Pieces"
        help="pieces"
        standard="one"
        options={[
          { value: undefined, label: 'One' },
          { value: 'stacked', label: 'Stacked', says: 'rings, one above the other' },
          { value: 'gores', label: 'Gores', says: 'upright lenses, side by side' },
        ]}
        choose={(value) => {
          const { gores: _, ...job } = bench.value.job;
          change(withField({ ...bench.value, job }, 'job', 'pieces', value), 'job:pieces');
        }}
      />
      {valueAt(bench.value.job, 'pieces') === 'gores' ? (
        <div class="field-pair">
          <NumberField
            half="job"
            path="gores"
            label="How many gores"
            help="gores"
            standard="as the film needs"
          />
        </div>
      ) : null}
      {valueAt(bench.value.job, 'pieces') === 'gores' &&
      valueAt(bench.value.job, 'collars') === undefined ? null : (
        <CollarsGroup />
      )}
      <p class="caution" role="note">
        <strong>Take care.</strong> Blades: a fresh one, cut away from the hand that holds, cap it when you
        put it down.
      </p>
    </>
  );
}
