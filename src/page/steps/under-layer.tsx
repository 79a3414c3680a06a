// A layer that lies under others, where it is wanted: past them, or back from their edges.
import { valueAt } from '../model/bench.ts';
import { lengthInFile } from '../model/typed.ts';
import { ColourField, LengthField } from '../parts/field.tsx';
import type { HelpKey } from '../parts/help-words.ts';
import { bench, setField } from '../store.ts';
import { jobUnits } from './motif-place.tsx';

interface UnderLayerProps {
  readonly path: string;
  readonly says: string;
  /** What is typed: how far past, or how far back. */
  readonly by: { readonly key: 'choke' | 'grow'; readonly label: string; readonly help: HelpKey };
  readonly colour: { readonly label: string; readonly standard: string };
}

/** What it begins with, mm. Common practice, no source. */
const first = { choke: 0.3, grow: 2 } as const;

export function UnderLayer({ path, says, by, colour }: UnderLayerProps) {
  const has = valueAt(bench.value.job, path) !== undefined;
  const begun = { [by.key]: lengthInFile(first[by.key], jobUnits()) };
  return (
    <>
      <label class="tick">
        <input
          type="checkbox"
          checked={has}
          onChange={() => setField('job', path, has ? undefined : begun)}
        />
        {says}
      </label>
      {has ? (
        <div class="field-pair">
          <LengthField half="job" path={`${path}.${by.key}`} label={by.label} help={by.help} required />
          <ColourField half="job" path={`${path}.colour`} {...colour} />
        </div>
      ) : null}
    </>
  );
}
