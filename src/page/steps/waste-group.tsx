// What is done with film that does not stay: cuts across large waste, and bridges that hold a mask together.
import { listAt, valueAt } from '../model/bench.ts';
import { filmOf } from '../model/film-file.ts';
import { lengthInFile } from '../model/typed.ts';
import { LengthField } from '../parts/field.tsx';
import { bench, hasArtwork } from '../store.ts';
import { jobUnits } from './motif-place.tsx';
import { Wanted } from './wanted.tsx';

/** What each begins with, mm. Common practice, no source. */
const first = { strips: 40, bridge: 1.2 } as const;

export function WasteGroup() {
  const { job } = bench.value;
  const hasOpenings =
    hasArtwork.value || ['items', 'lettering'].some((key) => listAt(bench.value, 'job', key).length > 0);
  const isStencil = valueAt(job, 'stencil') !== undefined;
  return (
    <>
      <Wanted
        path="relief"
        says="Cut large waste into strips that lift"
        help="relief"
        begun={{ every: lengthInFile(first.strips, jobUnits()) }}
      >
        <div class="field-pair">
          <LengthField half="job" path="relief.every" label="Strips about" help="relief" required />
          <LengthField
            half="job"
            path="relief.clear"
            label="Clear of what stays"
            help="reliefClear"
            standard="0.5 mm"
          />
        </div>
      </Wanted>
      {isStencil || (hasOpenings && filmOf(bench.value)?.use === 'mask') ? (
        <Wanted
          path="stencil"
          says="A stencil: bridges hold it together"
          help="stencil"
          begun={{ bridge: lengthInFile(first.bridge, jobUnits()) }}
        >
          <div class="field-pair">
            <LengthField half="job" path="stencil.bridge" label="Bridges are wide" help="stencil" required />
          </div>
        </Wanted>
      ) : null}
    </>
  );
}
