// What can be done with the flat drawing: zoom, the whole of it, measuring, and which of its layers are seen.
import type { Signal } from '@preact/signals';
import { colourWords } from '../../job/artwork/colour-words.ts';
import { flatLaid } from '../store.ts';
import { isSprayed, sprayKey } from './sprays-shown.ts';

const roleWords: Readonly<Record<string, string>> = {
  relief: 'Relief cuts',
  seam: 'Seam',
  trim: 'Finished edges',
  'flat-limit': 'Flat limits',
  register: 'Register marks',
  note: 'Words and named places',
};

interface FlatToolsProps {
  readonly zoomBy: (by: number) => void;
  readonly showWhole: () => void;
  readonly isMeasuring: boolean;
  readonly toggleMeasure: () => void;
  readonly hidden: Signal<ReadonlySet<string>>;
}

export function FlatTools({ zoomBy, showWhole, isMeasuring, toggleMeasure, hidden }: FlatToolsProps) {
  const groups = flatLaid.value?.view.pieces.flatMap(({ groups }) => groups) ?? [];
  const layers = [
    ...new Map(groups.flatMap(({ layer, colour }) => (layer ? [[layer, colour] as const] : []))),
  ];
  const roles = [...new Set(groups.map(({ role }) => role))].filter((role) => roleWords[role]);
  const toggle = (key: string) => {
    const next = new Set(hidden.value);
    if (!next.delete(key)) next.add(key);
    hidden.value = next;
  };
  return (
    <div class="board-tools" role="toolbar" aria-label="Flat template">
      <button type="button" class="tool" aria-label="Zoom in" onClick={() => zoomBy(1.25)}>
        +
      </button>
      <button type="button" class="tool" aria-label="Zoom out" onClick={() => zoomBy(0.8)}>
        −
      </button>
      <button type="button" class="tool" onClick={showWhole}>
        Whole
      </button>
      <button type="button" class="tool" aria-pressed={isMeasuring} onClick={toggleMeasure}>
        Measure
      </button>
      <details class="layer-list">
        <summary class="tool">Shown</summary>
        <div class="layer-panel">
          {layers.map(([layer, colour]) => (
            <label key={layer}>
              <input
                type="checkbox"
                checked={!hidden.value.has(`layer:${layer}`)}
                onChange={() => toggle(`layer:${layer}`)}
              />
              <span class="swatch" style={{ background: colour }} aria-hidden="true" />
              Layer {layer}, {colourWords(colour)}
            </label>
          ))}
          {isSprayed() ? (
            <label>
              <input
                type="checkbox"
                checked={!hidden.value.has(sprayKey)}
                onChange={() => toggle(sprayKey)}
              />
              Sprays, in their colours
            </label>
          ) : null}
          {roles.map((role) => (
            <label key={role}>
              <input type="checkbox" checked={!hidden.value.has(role)} onChange={() => toggle(role)} />
              {roleWords[role]}
            </label>
          ))}
        </div>
      </details>
    </div>
  );
}
