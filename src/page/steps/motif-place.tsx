// Where a single motif or a text lies, and what is done with the pattern under it.

import type { Units } from '../../lengths/length.ts';
import { lengthInFile } from '../model/typed.ts';
import { ChoiceField, FieldFindings, LengthField, NumberField, TickField } from '../parts/field.tsx';
import { bench, findingsAt, flat } from '../store.ts';

/** Fields of a motif's place: `path` is its own key, such as `items[0]`. */
export function MotifPlace({ path, standardLay }: { readonly path: string; readonly standardLay: string }) {
  return (
    <>
      <div class="field-pair">
        <NumberField half="job" path={`${path}.at.turn`} label="Turn" unit="of 1" help="turn" required />
        <LengthField half="job" path={`${path}.at.along`} label="Along the wall" help="placeAlong" required />
      </div>
      <details class="more">
        <summary>How it lies</summary>
        <ChoiceField
          half="job"
          path={`${path}.lay`}
          label="On a taper, keep"
          help="motifLay"
          standard={standardLay}
          options={[
            { value: 'rigid', label: 'Its shape', says: 'straight as drawn' },
            { value: 'even', label: 'Rows even', says: 'bent along the level' },
            { value: 'conformal', label: 'True angles', says: 'bent, angles kept' },
          ]}
        />
        <div class="field-pair">
          <LengthField
            half="job"
            path={`${path}.clear`}
            label="Clear around it"
            help="clear"
            standard="on the pattern"
          />
        </div>
        <TickField half="job" path={`${path}.apart`} label="Cut as a piece of its own" />
      </details>
      <FieldFindings
        id={`${path}-says`}
        found={findingsAt('job', path).filter(
          ({ where }) => where.key === path || where.key === `${path}.at`,
        )}
      />
    </>
  );
}

/** The unit of bare numbers in the job's file. */
export const jobUnits = (): Units => (bench.value.job.units === 'in' ? 'in' : 'mm');

/** The middle of the front, in the words of the job's file. */
export function middleOfFront(): { readonly turn: number; readonly along: number } {
  const { from, to } = flat.value.answer?.report.template?.band ?? { from: 0, to: 100 };
  return { turn: 0.5, along: lengthInFile((from + to) / 2, jobUnits()) };
}
