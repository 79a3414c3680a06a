// What the pieces are cut from: the sheet or the roll, the cutter, how many vessels, and how a piece too large is parted.
import { isObject, valueAt } from '../model/bench.ts';
import { ChoiceField, LengthField, LengthsField, NumberField, TickField } from '../parts/field.tsx';
import { MaterialPick } from '../parts/material-pick.tsx';
import { bench, flat, setField } from '../store.ts';

/** Joints as a choice: where they fall by a rule, or at turns that the maker types. */
function Joints() {
  const joints = valueAt(bench.value.job, 'panels.joints');
  const turns = Array.isArray(joints) ? joints.join(', ') : undefined;
  return (
    <>
      <ChoiceField
        half="job"
        path="panels.joints"
        label="A piece too large for it is parted"
        help="panels"
        standard="least-art"
        options={[
          { value: undefined, label: 'Where least is cut', says: 'through the fewest motifs' },
          { value: 'repeats', label: 'Between repeats' },
          { value: turns === undefined ? [0.5] : (joints ?? [0.5]), label: 'At turns I give' },
          { value: [], label: 'Never' },
        ].filter(({ label }) => turns !== '' || label !== 'At turns I give')}
        isChosen={(value) => JSON.stringify(value ?? 'least-art') === JSON.stringify(joints ?? 'least-art')}
      />
      {turns ? (
        <div class="field">
          <div class="field-head">
            <label for="joint-turns">Turns of the joints</label>
          </div>
          <div class="field-box">
            <input
              id="joint-turns"
              type="text"
              data-path="job:panels.joints[0]"
              defaultValue={turns}
              onChange={({ currentTarget: { value } }) => setField('job', 'panels.joints', turnsOf(value))}
            />
          </div>
        </div>
      ) : null}
    </>
  );
}

/** Turns parted by commas or spaces; what is no number stays as it was typed, for the engine to tell of. */
const turnsOf = (text: string): (number | string)[] =>
  text
    .split(/[,;\s]+/)
    .filter((part) => part !== '')
    .map((part) => (Number.isFinite(Number(part)) ? Number(part) : part));

export function SheetGroup() {
  const sheet = valueAt(bench.value.job, 'sheet');
  const isRoll = isObject(sheet) && sheet.across !== undefined && sheet.up === undefined;
  const panels = flat.value.answer?.view.pieces.filter(({ beside }) => beside > 0).length ?? 0;
  return (
    <details class="more" open={sheet !== undefined}>
      <summary>The sheet you cut from</summary>
      <div class="field-pair">
        <MaterialPick kind="sheet" label="Sheet or roll" />
        <MaterialPick kind="cutter" label="Cutter" />
      </div>
      {typeof sheet === 'string' ? null : (
        <>
          <div class="field-pair">
            <LengthField half="job" path="sheet.across" label="Across" help="sheet" standard="any" />
            <LengthField half="job" path="sheet.up" label="Up" help="sheet" standard="a roll" />
            <LengthField half="job" path="sheet.margin" label="Margin" help="sheet" standard="0" />
            <LengthField
              half="job"
              path="sheet.spacing"
              label="Between pieces"
              help="pieceSpacing"
              standard="2 mm"
            />
          </div>
          {sheet === undefined ? null : (
            <TickField half="job" path="sheet.mirror" label="Cut from the back: mirrored" />
          )}
          {isRoll ? (
            <p class="aside">With nothing for “Up” it is a roll, cut off behind the last piece.</p>
          ) : null}
        </>
      )}
      {sheet === undefined ? null : (
        <>
          <div class="field-pair">
            <NumberField half="job" path="batch" label="Vessels alike" help="batch" standard="1" />
            <LengthField
              half="job"
              path="panels.overlap"
              label="Panels overlap by"
              help="panels"
              standard="6 mm"
            />
          </div>
          <Joints />
          {panels > 0 ? <p class="aside">It is cut in {panels + 1} panels now.</p> : null}
        </>
      )}
      <LengthsField
        half="job"
        path="panels.levels"
        label="Cut level at"
        help="levels"
        standard="only where it has to be"
      />
      <Measured half="printer" label="Printer" />
      {typeof valueAt(bench.value.job, 'cutter') === 'string' ? null : (
        <Measured half="cutter" label="Cutter" />
      )}
    </details>
  );
}

/** What the two scales of a machine's test piece came out as. */
const Measured = ({ half, label }: { readonly half: 'printer' | 'cutter'; readonly label: string }) => (
  <div>
    <p class="aside">{label}: what the test piece’s scales of 150 mm came out as</p>
    <div class="field-pair">
      {(['across', 'up'] as const).map((way) => (
        <LengthField
          key={way}
          half="job"
          path={`${half}.measured.${way}`}
          label={`${label}, ${way}`}
          help="measured"
          standard="150 mm"
        />
      ))}
    </div>
  </div>
);
