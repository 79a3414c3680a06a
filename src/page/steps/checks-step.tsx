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

/** The drawing it is on; in a low window that may have scrolled away. */
function look(at: 'flat' | 'art'): void {
  chooseView(at);
  document.querySelector('#drawing')?.scrollIntoView({ block: 'nearest' });
}

/** Where a finding is, as far as the page can show it. */
function select(finding: Finding): void {
  // Chosen anew each time, so that the view goes there again.
  selected.value = undefined;
  wentTo.value = undefined;
  selected.value = finding;
  const { where } = finding;
  if (where.along !== undefined) look('flat');
  else if (where.x !== undefined) look('art');
  else if (where.key !== undefined) {
    const half = where.file === bench.value.blankFile ? 'blank' : 'job';
    goTo(`${half}:${where.key}`);
  } else if (where.file !== undefined) {
    const key = sizeKeyOf(where.file);
    if (key !== undefined) goTo(`job:${key}`);
  }
}

interface Numbered {
  readonly finding: Finding;
  /** As its mark on the drawing has it. */
  readonly number: number;
}

/** More of one rule than this would hide what else was found: a pattern can be too thin in a hundred places. */
const mostOfRule = 8;

/** The first of each rule, and all that is like them. */
function byRule(told: readonly Numbered[]): { readonly first: Numbered[]; readonly rest: Numbered[] } {
  const counts = new Map<string, number>();
  const [first, rest]: [Numbered[], Numbered[]] = [[], []];
  for (const one of told) {
    const rule = `${one.finding.level} ${one.finding.rule}`;
    const count = (counts.get(rule) ?? 0) + 1;
    counts.set(rule, count);
    (count <= mostOfRule ? first : rest).push(one);
  }
  return { first, rest };
}

const shown = ({ finding, number }: Numbered) => (
  <li key={`${finding.rule} ${finding.says} ${findingPlace(finding)}`}>
    <button
      type="button"
      class={`finding finding-${finding.level}`}
      aria-pressed={isSelected(finding)}
      onClick={() => select(finding)}
    >
      <span class="finding-number">{number}</span>
      <LevelSign level={finding.level} />
      <span class="finding-says">{findingSays(finding)}</span>
      <span class="finding-place">
        <span class="unseen">. </span>
        {findingPlace(finding)}
      </span>
    </button>
  </li>
);

export function ChecksStep() {
  const all = findings.value;
  const { fault } = flat.value;
  const waiting = all.filter(isStillToGive);
  const told = all.filter((finding) => !isStillToGive(finding));
  const { first, rest } = byRule(told.map((finding, i) => ({ finding, number: waiting.length + i + 1 })));
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
      <ol class="findings">{first.map(shown)}</ol>
      {rest.length > 0 ? (
        <details class="more" open={rest.some(({ finding }) => isSelected(finding))}>
          <summary>{rest.length} more like these</summary>
          <ol class="findings">{rest.map(shown)}</ol>
        </details>
      ) : null}
    </>
  );
}
