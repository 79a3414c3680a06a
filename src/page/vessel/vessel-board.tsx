// The finished vessel: turned in 3D where the browser can, else from four sides as the engine drew it.
import { signal } from '@preact/signals';
import { PictureBoard } from '../board/picture-board.tsx';
import { flat, isStillToGive, rolled } from '../store.ts';
import { SolidView } from './solid-view.tsx';

/** Whether the four sides are wanted in place of the 3D view. */
const isFromSides = signal(false);
/** Whether this browser gave no 3D. */
const isWithout3d = signal(false);

/** What stands where there is no vessel yet. */
function emptyWords(): string {
  const { refused } = rolled.value;
  if (refused && !refused.every(isStillToGive))
    return 'The finished vessel is drawn here once what stands against it in step 4 is settled.';
  return flat.value.answer && !refused
    ? 'The finished vessel is being drawn…'
    : 'The finished vessel is drawn here once its readings are whole.';
}

export function VesselBoard() {
  const { answer, refused } = rolled.value;
  const solid = answer?.solid;
  const isFlatOnly = isWithout3d.value || (answer !== undefined && !solid);
  const isStale = refused !== undefined;
  if (solid && !isFromSides.value && !isWithout3d.value)
    return (
      <SolidView
        solid={solid}
        isStale={isStale}
        showSides={() => {
          isFromSides.value = true;
        }}
        giveUp={() => {
          isWithout3d.value = true;
        }}
      />
    );
  return (
    <>
      {solid && !isWithout3d.value ? (
        <div class="board-tools" role="toolbar" aria-label="Finished vessel">
          <button
            type="button"
            class="tool"
            onClick={() => {
              isFromSides.value = false;
            }}
          >
            Turn it in 3D
          </button>
        </div>
      ) : null}
      <PictureBoard
        svg={answer?.svg}
        name="The finished vessel from four sides, drawn from the flat template"
        empty={emptyWords()}
        isStale={isStale}
      />
      {answer && isFlatOnly ? (
        <p class="board-figures">
          This browser shows no 3D (WebGL is off or missing), so the vessel is shown from four sides.
        </p>
      ) : null}
    </>
  );
}
