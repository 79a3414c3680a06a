// Fonts that texts in the drawings are set in.
import { listAt, withFile, withItem, withoutItem } from '../model/bench.ts';
import { FieldFindings } from '../parts/field.tsx';
import { FileButton, fonts } from '../parts/file-button.tsx';
import { bench, change, findingsAt } from '../store.ts';

const list = 'artwork.fonts';

function addFont(name: string, bytes: Uint8Array): void {
  const index = listAt(bench.value, 'job', list).length;
  const next = withItem(bench.value, 'job', list, name);
  change(withFile(next, `${list}[${index}]`, name, bytes), 'add a font of the drawings');
}

export function FontsGroup() {
  const all = listAt(bench.value, 'job', list).map(String);
  return (
    <details class="more" open={all.length > 0}>
      <summary>Fonts of texts in the drawings</summary>
      <p class="aside">
        Only what is opened here is used, and the font that comes with us. Or turn the text into outlines.
      </p>
      {all.map((name, i) => (
        <div class="button-row" key={name}>
          <span class="aside">{name}</span>
          <button
            type="button"
            class="quiet"
            onClick={() => change(withoutItem(bench.value, 'job', list, i), `remove ${list}[${i}]`)}
          >
            Remove <span class="unseen">{name}</span>
          </button>
        </div>
      ))}
      <FieldFindings id={`${list}-says`} found={findingsAt('job', list)} />
      <FileButton path={list} label="Open a font for them" accept={fonts} take={addFont} />
    </details>
  );
}
