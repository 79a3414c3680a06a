// The two ends of the wrap side by side, as they meet at the seam: at a chosen zoom, with what they miss each other by in figures.

import { gapAngle, gapLength } from '../../lengths/closeness.ts';
import { measuredLength } from '../../lengths/length.ts';
import { bench, flat, seam } from '../store.ts';
import { onKeys } from './key-hands.ts';
import { type SeamWindow, useSeamWindow } from './use-seam-window.ts';

export function SeamBoard() {
  const shown = useSeamWindow();
  const { canvas, along, ends, hands, keys } = shown;
  return (
    <div class="flat-board">
      <SeamTools shown={shown} />
      <div class="flat-window">
        <div
          class="flat-hands"
          role="application"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is moved with the arrow keys.
          tabIndex={0}
          aria-label="The seam. Up and down arrows go along it, plus and minus zoom."
          aria-describedby="seam-figures"
          onKeyDown={onKeys(keys)}
          {...hands.on}
        >
          <canvas ref={canvas} class="flat-canvas" />
        </div>
        {ends.value ? (
          <>
            <span class="seam-end seam-end-left">End, turn 1</span>
            <span class="seam-end seam-end-right">Beginning, turn 0</span>
          </>
        ) : (
          <NoSeam />
        )}
      </div>
      <p class="board-figures" id="seam-figures" aria-live="polite">
        {ends.value ? `${measuredLength(along.value, bench.value.units)} along from the foot. ` : ''}
        <GapInWords />
      </p>
    </div>
  );
}

function SeamTools({ shown }: { readonly shown: SeamWindow }) {
  const { isApart, zoomBy, goTo } = shown;
  return (
    <div class="board-tools" role="toolbar" aria-label="Seam">
      <button type="button" class="tool" aria-label="Nearer" onClick={() => zoomBy(1.5)}>
        +
      </button>
      <button type="button" class="tool" aria-label="Further away" onClick={() => zoomBy(1 / 1.5)}>
        −
      </button>
      <button type="button" class="tool" onClick={() => goTo('to')}>
        Lip
      </button>
      <button type="button" class="tool" onClick={() => goTo('from')}>
        Foot
      </button>
      <button
        type="button"
        class="tool"
        aria-pressed={isApart.value}
        onClick={() => {
          isApart.value = !isApart.value;
        }}
      >
        Hold apart
      </button>
    </div>
  );
}

/** What stands in place of the ends. */
const NoSeam = () => (
  <p class="board-empty seam-none">
    {flat.value.answer
      ? 'No two ends of a wrap meet here: it is in gores, or a handle lies between them.'
      : 'The seam is shown here once the readings are whole.'}
  </p>
);

/** What the ends miss each other by, as it was measured on the cut file. */
function GapInWords() {
  const { answer, busy, refused, fault } = seam.value;
  if (busy) return <>Measuring the cut file…</>;
  if (refused ?? fault) return <>It is measured once nothing stands against the job.</>;
  const gap = answer?.gap;
  if (!gap || gap.crossings === 0) return answer ? <>No edge of the pattern crosses the seam.</> : null;
  return (
    <>
      The ends meet <strong>{gapLength(gap.position, bench.value.units)}</strong> and{' '}
      <strong>{gapAngle(gap.tangentDeg)}</strong>, at {gap.crossings} edges of the cut file.
    </>
  );
}
