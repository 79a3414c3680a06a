// Film, sheet or cutter by a file: one of those that come with us, or one of the maker's that was opened.
import { useId } from 'preact/hooks';
import { valueAt, withFile } from '../model/bench.ts';
import { inWords, type Material, materialFiles, materialNamed } from '../samples.ts';
import { bench, change, setField } from '../store.ts';

export function MaterialPick({ kind, label }: { readonly kind: Material; readonly label: string }) {
  const id = useId();
  const value = valueAt(bench.value.job, kind);
  const named = typeof value === 'string' ? value : '';
  const files = [...new Set([...materialFiles(kind), ...(named === '' ? [] : [named])])];
  const choose = async (file: string) => {
    if (file === '') return setField('job', kind, undefined);
    const [ours] = await materialNamed(kind, file);
    if (ours) change(withFile(bench.value, kind, file, ours.bytes), `job:${kind}`);
  };
  return (
    <div class="pick">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={named}
        data-path={`job:${kind}`}
        onChange={(event) => void choose(event.currentTarget.value)}
      >
        <option value="">as typed here</option>
        {files.map((file) => (
          <option key={file} value={file}>
            {inWords(file.replace(/\.(film|sheet|cutter)\.json$/, ''))}
          </option>
        ))}
      </select>
    </div>
  );
}
