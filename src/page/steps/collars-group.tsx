// Collars that are cut with the job: paper arcs that give level lines before the film is laid.
import { isObject, type Json, listAt, valueAt, withField, withItem, withoutItem } from '../model/bench.ts';
import { lengthInFile } from '../model/typed.ts';
import { LengthField } from '../parts/field.tsx';
import { bench, change, flat } from '../store.ts';
import { jobUnits } from './motif-place.tsx';
import { Wanted } from './wanted.tsx';

/** Across the paper, mm. */
const firstWidth = 20;

const edges: readonly (readonly [string, string])[] = [
  ['', 'edge by the band'],
  ['lower', 'lower edge'],
  ['upper', 'upper edge'],
];

/** Another edge of a line, which is a height alone where none is said. */
function setEdge(path: string, line: Json | undefined, edge: string): void {
  const along = isObject(line) ? (line.along ?? '') : (line ?? '');
  const next = withField(bench.value, 'job', path, edge === '' ? along : { along, edge });
  change(next, `edge of ${path}`);
}

function Line({ index }: { readonly index: number }) {
  const path = `collars.at[${index}]`;
  const line = valueAt(bench.value.job, path);
  return (
    <li class="station">
      <div class="field-pair">
        <LengthField
          half="job"
          path={isObject(line) ? `${path}.along` : path}
          label="Level line at"
          help="collarLine"
          required
        />
        <label class="pick">
          <span>On it runs the paper’s</span>
          <select
            value={isObject(line) ? String(line.edge ?? '') : ''}
            onChange={({ currentTarget }) => setEdge(path, line, currentTarget.value)}
          >
            {edges.map(([value, says]) => (
              <option key={value} value={value}>
                {says}
              </option>
            ))}
          </select>
        </label>
      </div>
      <button
        type="button"
        class="quiet"
        onClick={() => change(withoutItem(bench.value, 'job', 'collars.at', index), `remove line ${index}`)}
      >
        Remove <span class="unseen">level line {index + 1}</span>
      </button>
    </li>
  );
}

export function CollarsGroup() {
  const lines = listAt(bench.value, 'job', 'collars.at');
  const addLine = () => {
    const { from, to } = flat.value.answer?.report.template?.band ?? { from: 0, to: 40 };
    const middle = lengthInFile((from + to) / 2, jobUnits());
    change(withItem(bench.value, 'job', 'collars.at', middle), 'add level line');
  };
  return (
    <Wanted
      path="collars"
      says="Paper collars, for level lines to lay by"
      help="collar"
      begun={{ width: lengthInFile(firstWidth, jobUnits()) }}
    >
      {lines.length === 0 ? (
        <p class="aside">One at each edge of the band.</p>
      ) : (
        <ol class="stations">
          {lines.map((_, i) => (
            <Line key={i} index={i} />
          ))}
        </ol>
      )}
      <button type="button" class="plain" onClick={addLine}>
        {lines.length === 0 ? 'At a height of your own instead' : 'Another level line'}
      </button>
      <div class="field-pair">
        <LengthField half="job" path="collars.width" label="Strip is wide" help="collar" required />
        <LengthField
          half="job"
          path="collars.overlap"
          label="Tab past the seam"
          help="collarTab"
          standard="10 mm"
        />
        <LengthField
          half="job"
          path="collars.paper"
          label="Paper is thick"
          help="collarPaper"
          standard="0.1 mm"
        />
      </div>
    </Wanted>
  );
}
