// Drawings laid over the pattern, from the lowest up: each is films of its own.
import {
  isObject,
  type Json,
  listAt,
  valueAt,
  withField,
  withFile,
  withItem,
  withoutItem,
} from '../model/bench.ts';
import { ColourField, FieldFindings } from '../parts/field.tsx';
import { drawings, FileButton } from '../parts/file-button.tsx';
import { bench, change, findings } from '../store.ts';

const list = 'artwork.over';
/** The colour that a drawing all in one begins with. */
const firstColour = '#d8b26a';

const fileOf = (one: Json | undefined): string => String(isObject(one) ? one.file : one);

function addOver(name: string, bytes: Uint8Array): void {
  const index = listAt(bench.value, 'job', list).length;
  const next = withItem(bench.value, 'job', list, name);
  change(withFile(next, `${list}[${index}]`, name, bytes), 'add drawing over');
}

function Over({ index }: { readonly index: number }) {
  const path = `${list}[${index}]`;
  const one = valueAt(bench.value.job, path);
  const file = fileOf(one);
  const isOne = isObject(one) && one.colour !== undefined;
  const turn = () => {
    const next = isOne ? file : { file, colour: firstColour };
    change(withField(bench.value, 'job', path, next), `colour of ${path}`);
  };
  return (
    <li class="station">
      <div class="station-head">
        <h4>{file}</h4>
        <button
          type="button"
          class="quiet"
          onClick={() => change(withoutItem(bench.value, 'job', list, index), `remove ${path}`)}
        >
          Remove <span class="unseen">{file}</span>
        </button>
      </div>
      <div class="button-row">
        <label class="tick">
          <input type="checkbox" checked={isOne} onChange={turn} />
          All in one colour
        </label>
        {isOne ? (
          <ColourField half="job" path={`${path}.colour`} label="Its colour" standard={firstColour} />
        ) : null}
      </div>
      <FieldFindings
        id={`${path}-says`}
        found={findings.value.filter(({ where }) => where.file === file && where.x === undefined)}
      />
    </li>
  );
}

export function OverGroup() {
  const all = listAt(bench.value, 'job', list);
  return (
    <details class="more" open={all.length > 0}>
      <summary>Drawings laid over it</summary>
      <p class="aside">Of the same size as the pattern’s, corner on corner: one film over the next.</p>
      {all.length === 0 ? null : (
        <ol class="stations">
          {all.map((_, i) => (
            <Over key={i} index={i} />
          ))}
        </ol>
      )}
      <FileButton path="over" label="Lay a drawing over it" accept={drawings} take={addOver} />
    </details>
  );
}
