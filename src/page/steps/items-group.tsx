// Single motifs, each at a place of its own.
import { goTo } from '../going.ts';
import { listAt, valueAt, withField, withFile } from '../model/bench.ts';
import { lengthInFile } from '../model/typed.ts';
import { LengthField } from '../parts/field.tsx';
import { drawings, FileButton } from '../parts/file-button.tsx';
import { artOfSample, sampleArt } from '../samples.ts';
import { bench, change } from '../store.ts';
import { ListHead } from './list-head.tsx';
import { jobUnits, MotifPlace, middleOfFront } from './motif-place.tsx';

/** How wide a motif is taken at first, mm: to be seen, and to be changed. */
const firstAcross = 40;

function Item({ index }: { readonly index: number }) {
  const path = `items[${index}]`;
  return (
    <li class="station">
      <ListHead
        half="job"
        list="items"
        index={index}
        name={String(valueAt(bench.value.job, `${path}.file`) ?? '')}
      />
      <div class="field-pair">
        <LengthField half="job" path={`${path}.across`} label="Across" help="itemAcross" required />
        <LengthField half="job" path={`${path}.up`} label="Up" help="itemAcross" standard="as drawn" />
      </div>
      <MotifPlace path={path} standardLay="rigid" />
    </li>
  );
}

/** A motif in the middle of the front; its file goes onto the bench with it. */
function addItem(name: string, bytes: Uint8Array): void {
  const items = listAt(bench.value, 'job', 'items');
  const item = { file: name, across: lengthInFile(firstAcross, jobUnits()), at: middleOfFront() };
  const next = withField(bench.value, 'job', 'items', [...items, item]);
  change(withFile(next, `items[${items.length}].file`, name, bytes), 'add item');
  goTo(`job:items[${items.length}].across`);
}

export function ItemsGroup() {
  const items = listAt(bench.value, 'job', 'items');
  return (
    <>
      <h3 class="group-head">Single motifs</h3>
      {items.length === 0 ? null : (
        <ol class="stations">
          {items.map((_, i) => (
            <Item key={i} index={i} />
          ))}
        </ol>
      )}
      <div class="button-row">
        <FileButton path="items" label="Add a motif" accept={drawings} take={addItem} />
        {sampleArt
          .filter(({ isMotif }) => isMotif)
          .map((sample) => (
            <button
              key={sample.file}
              type="button"
              class="quiet"
              onClick={async () => {
                const [file] = await artOfSample(sample);
                if (file) addItem(sample.file, file.bytes);
              }}
            >
              {sample.label} as a motif
            </button>
          ))}
      </div>
    </>
  );
}
