// What can be done with the turned vessel: the seam's line, zoom, colours and layers, the mask, and saving what is seen.
import type { SolidSeen } from '../model/messages.ts';
import { front, isColouring, looks, mannerOf, type Stage, show, side } from './looks.ts';

interface VesselToolsProps {
  readonly solid: SolidSeen;
  readonly showSides: () => void;
  readonly nearer: (factor: number) => void;
  readonly save: () => void;
  readonly saveTurning: () => void;
  /** How far the turning picture is, 0 to 1, while one is made. */
  readonly turning: number | undefined;
}

const stages: readonly { readonly stage: Stage; readonly label: string }[] = [
  { stage: 'masked', label: 'Masked' },
  { stage: 'sprayed', label: 'Sprayed' },
  { stage: 'pulled', label: 'Mask pulled' },
];

const StageTools = () => (
  <fieldset class="stages">
    <legend class="unseen">Of the mask</legend>
    {stages.map(({ stage, label }) => (
      <button
        key={stage}
        type="button"
        class="tool"
        aria-pressed={looks.value.stage === stage}
        onClick={() => {
          show({ stage });
        }}
      >
        {label}
      </button>
    ))}
  </fieldset>
);

export function VesselTools({ solid, showSides, nearer, save, saveTurning, turning }: VesselToolsProps) {
  const { isSeamShown, isStripShown } = looks.value;
  return (
    <div class="board-tools" role="toolbar" aria-label="Finished vessel">
      <button type="button" class="tool" aria-label="Nearer" onClick={() => nearer(1.25)}>
        +
      </button>
      <button type="button" class="tool" aria-label="Further away" onClick={() => nearer(0.8)}>
        −
      </button>
      <button
        type="button"
        class="tool"
        onClick={() => {
          side.value = front;
        }}
      >
        Front
      </button>
      <button
        type="button"
        class="tool"
        onClick={() => {
          side.value = { ...front, facing: 0 };
        }}
      >
        Seam side
      </button>
      {solid.seam ? (
        <button
          type="button"
          class="tool"
          aria-pressed={isSeamShown}
          onClick={() => {
            show({ isSeamShown: !isSeamShown });
          }}
        >
          Seam line
        </button>
      ) : null}
      {solid.extras.strips.length > 0 ? (
        <button
          type="button"
          class="tool"
          aria-pressed={isStripShown}
          onClick={() => {
            show({ isStripShown: !isStripShown });
          }}
        >
          Cover strip
        </button>
      ) : null}
      {solid.mask || mannerOf(looks.value, solid.use) === 'mask' ? <StageTools /> : null}
      <button
        type="button"
        class="tool"
        aria-expanded={isColouring.value}
        aria-controls="vessel-colours"
        onClick={() => {
          isColouring.value = !isColouring.value;
        }}
      >
        Colours
      </button>
      <button type="button" class="tool" onClick={showSides}>
        Four sides
      </button>
      <button type="button" class="tool" onClick={save}>
        Save picture
      </button>
      <button
        type="button"
        class="tool"
        aria-disabled={turning !== undefined}
        onClick={() => (turning === undefined ? saveTurning() : undefined)}
      >
        {turning === undefined ? 'Save turning' : `Turning ${Math.round(turning * 100)} %`}
      </button>
    </div>
  );
}
