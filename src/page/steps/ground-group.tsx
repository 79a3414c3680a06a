// Which colours of the artwork are only the ground that the pattern stands on.

import { colourWords } from '../../job/artwork/colour-words.ts';
import { listAt, valueAt, withField } from '../model/bench.ts';
import { FieldFindings } from '../parts/field.tsx';
import { Help } from '../parts/help.tsx';
import { art, bench, change, findingsAt } from '../store.ts';

const path = 'artwork.ground';

/** Colours named as the ground: a file may have one, or a list. */
function grounds(): readonly string[] {
  const value = valueAt(bench.value.job, path);
  return typeof value === 'string' ? [value] : listAt(bench.value, 'job', path).map(String);
}

function leaveOut(colour: string, isGround: boolean): void {
  const others = grounds().filter((one) => one !== colour);
  const next = isGround ? [...others, colour] : others;
  change(withField(bench.value, 'job', path, next.length > 0 ? next : undefined), `job:${path}`);
}

export function GroundGroup() {
  const left = grounds();
  const cut = (art.value.answer?.layers ?? []).map(({ colour }) => colour);
  const all = [...new Set([...cut, ...left])].sort();
  if (left.length === 0 && all.length < 2) return null;
  return (
    <fieldset class="ground" aria-label="Ground, not cut">
      <legend>
        Ground, not cut <Help about="ground" label="Ground, not cut" byKey />
      </legend>
      {all.map((colour) => (
        <label class="tick" key={colour}>
          <input
            type="checkbox"
            checked={left.includes(colour)}
            onChange={(event) => leaveOut(colour, event.currentTarget.checked)}
          />
          <span class="swatch" style={{ background: colour }} aria-hidden="true" />
          {colour}, {colourWords(colour)}
        </label>
      ))}
      <FieldFindings id={`${path}-says`} found={findingsAt('job', path)} />
    </fieldset>
  );
}
