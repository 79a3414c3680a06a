// The drawing: the vessel's wall, the flat template, the finished vessel and the artwork, one at a time.
import type { ComponentChildren } from 'preact';
import {
  areSidesSeen,
  art,
  chooseView,
  flat,
  hasArtwork,
  isUntouched,
  rolled,
  seam,
  sides,
  type ViewName,
  vessel,
  view,
} from '../store.ts';
import { VesselBoard } from '../vessel/vessel-board.tsx';
import { ArtBoard } from './art-board.tsx';
import { FlatBoard } from './flat-board.tsx';
import { SeamBoard } from './seam-board.tsx';
import { WallBoard } from './wall-board.tsx';
import { Welcome } from './welcome.tsx';

const views: readonly { readonly name: ViewName; readonly label: string }[] = [
  { name: 'wall', label: 'Wall' },
  { name: 'art', label: 'Artwork' },
  { name: 'flat', label: 'Flat' },
  { name: 'vessel', label: 'Vessel' },
  { name: 'both', label: 'Both' },
  { name: 'seam', label: 'Seam' },
];

const busyOf = (name: ViewName): boolean => {
  const finished = areSidesSeen.value ? sides : rolled;
  const heard = { wall: vessel, flat, vessel: finished, both: finished, seam, art }[name];
  return heard.value.busy;
};

function Shown(): ComponentChildren {
  if (isUntouched.value) return <Welcome />;
  switch (view.value) {
    case 'wall':
      return <WallBoard />;
    case 'vessel':
      return <VesselBoard />;
    case 'flat':
      return <FlatBoard />;
    case 'art':
      return <ArtBoard />;
    case 'seam':
      return <SeamBoard />;
    case 'both':
      return (
        <div class="both-board">
          <div>
            <FlatBoard />
          </div>
          <div>
            <VesselBoard />
          </div>
        </div>
      );
  }
}

/** Tabs as the pattern for them has it: arrows go from one to the next, only the chosen one is in the tab order. */
export function Board() {
  const names = views.map(({ name }) => name);
  const go = (by: number) => {
    const next = names[(names.indexOf(view.value) + by + names.length) % names.length];
    if (!next) return;
    chooseView(next);
    document.getElementById(`tab-${next}`)?.focus();
  };
  return (
    <section class="board" id="drawing" tabIndex={-1} aria-label="Drawing">
      <div class="tabs" role="tablist" aria-label="Views">
        {views.map(({ name, label }) => (
          <button
            key={name}
            id={`tab-${name}`}
            class={name === 'both' ? 'tab-wide' : undefined}
            type="button"
            role="tab"
            aria-selected={view.value === name}
            aria-controls="board-view"
            tabIndex={view.value === name ? 0 : -1}
            disabled={false}
            onClick={() => {
              chooseView(name);
            }}
            onKeyDown={(event) => {
              if (event.key === 'ArrowRight') go(1);
              if (event.key === 'ArrowLeft') go(-1);
            }}
          >
            {label}
            {name === 'art' && !hasArtwork.value ? <span class="unseen"> (none yet)</span> : null}
          </button>
        ))}
      </div>
      <span class="busy" aria-hidden="true">
        {busyOf(view.value) ? 'drawing…' : ''}
      </span>
      <div class="board-view" id="board-view" role="tabpanel" aria-labelledby={`tab-${view.value}`}>
        <Shown />
      </div>
    </section>
  );
}
