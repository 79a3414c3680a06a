// Step 4: everything that stands against the job or wants the maker's eye; select one, and the view goes there.
import type { Finding } from '../../finding.ts';
import { goTo } from '../going.ts';
import { findingPlace, findingSays, sizeKeyOf } from '../parts/plain-words.ts';
import { LevelSign } from '../parts/sign.tsx';
import {
  bench,
  chooseView,
  findings,
  flat,
  isSelected,
  isStillToGive,
  isUntouched,
  selected,
  wentTo,
} from '../store.ts';

/** Where a finding is, as far as the page can show it. */
function select(finding: Finding): void {
  // Chosen anew each time, so that the view goes there again.
  selected.value = undefined;
  wentTo.value = undefined;
  selected.value = finding;
  const { where } = finding;
  if (where.along !== undefined) chooseView('flat');
  else if (where.x !== undefined) chooseView('art');
  else if (where.key !== undefined) {
    const half = where.file === bench.value.blankFile ? 'blank' : 'job';
    goTo(`${half}:${where.key}`);
  } else if (where.file !== undefined) {
    const key = sizeKeyOf(where.file);
    if (key !== undefined) goTo(`job:${key}`);
  }
}

export function ChecksStep() {
  const all = findings.value;
  const { fault } = flat.value;
  const waiting = all.filter(isStillToGive);
  const told = all.filter((finding) => !isStillToGive(finding));
  return (
    <>
      {fault ? (
        <p class="caution" role="alert">
          A fault of Seamwright’s own: {fault}. What you typed is kept; undo the last change and go on.
        </p>
      ) : null}
      {waiting.length > 0 ? (
        <p class="aside">
          {waiting.length === 1 ? 'One field is' : `${waiting.length} fields are`} still to give; the rest is
          checked once they are there.
        </p>
      ) : null}
      {told.length === 0 && waiting.length === 0 ? (
        <p>
          {isUntouched.value
            ? 'Type the readings in step 1, and everything is checked as you type.'
            : 'Nothing stands against it.'}
        </p>
      ) : null}
      <ol class="findings">
        {told.map((finding, i) => (
          <li key={`${finding.rule} ${finding.says} ${findingPlace(finding)}`}>
            <button
              type="button"
              class={`finding finding-${finding.level}`}
              aria-pressed={isSelected(finding)}
              onClick={() => select(finding)}
            >
              <span class="finding-number">{waiting.length + i + 1}</span>
              <LevelSign level={finding.level} />
              <span class="finding-says">{findingSays(finding)}</span>
              <span class="finding-place">
                <span class="unseen">. </span>
                {findingPlace(finding)}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </>
  );
}
