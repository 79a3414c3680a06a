// What can be done with the turned vessel: its colours, the seam's line, zoom, and saving what is seen.
import type { VesselView } from '../../job/vessel-view.ts';
import { front, looks, side } from './looks.ts';

interface VesselToolsProps {
  readonly solid: VesselView;
  readonly showSides: () => void;
  readonly nearer: (factor: number) => void;
  readonly save: () => void;
}

interface ColourFieldProps {
  readonly label: string;
  readonly value: string;
  readonly choose: (colour: string) => void;
}

const ColourField = ({ label, value, choose }: ColourFieldProps) => (
  <label>
    <input type="color" value={value} onInput={({ currentTarget }) => choose(currentTarget.value)} />
    {label}
  </label>
);

export function VesselTools({ solid, showSides, nearer, save }: VesselToolsProps) {
  const { blank, coat, films, isSeamShown } = looks.value;
  const change = (part: Partial<typeof looks.value>) => {
    looks.value = { ...looks.value, ...part };
  };
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
          onClick={() => change({ isSeamShown: !isSeamShown })}
        >
          Seam line
        </button>
      ) : null}
      <details class="layer-list">
        <summary class="tool">Colours</summary>
        <div class="layer-panel">
          <ColourField label="Vessel" value={blank} choose={(colour) => change({ blank: colour })} />
          {solid.coats.length > 0 ? (
            <ColourField label="Coat" value={coat} choose={(colour) => change({ coat: colour })} />
          ) : null}
          {solid.layers.map(({ name, colour }) => (
            <ColourField
              key={name}
              label={`Film ${name}`}
              value={films[name] ?? colour}
              choose={(chosen) => change({ films: { ...films, [name]: chosen } })}
            />
          ))}
          <p class="aside">Colours on a screen only: no film or coat is matched by them.</p>
        </div>
      </details>
      <button type="button" class="tool" onClick={showSides}>
        Four sides
      </button>
      <button type="button" class="tool" onClick={save}>
        Save picture
      </button>
    </div>
  );
}
