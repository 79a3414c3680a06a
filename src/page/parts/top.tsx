// The top of the page: the job's name, undo and redo, opening and saving, units, light and dark.
import { useRef } from 'preact/hooks';
import type { Units } from '../../lengths/length.ts';
import { isKeptElsewhere, keepingSays, keepOurs, takeTheirs } from '../keeping.ts';
import { changeLight, type Light, light } from '../light.ts';
import { archiveName, blankText, folderZip, jobText } from '../model/contract-files.ts';
import { openFiles, openingSays, startAnew } from '../opening.ts';
import { download, taken } from '../save.ts';
import { bench, change, history, isUntouched, redo, undo } from '../store.ts';
import { startGuide } from './guide.tsx';

/** Units of what is typed from now on; what was typed keeps its own. A bench with no readings yet takes them whole. */
function setUnits(units: Units): void {
  const now = bench.value;
  const own = isUntouched.value ? { job: { ...now.job, units }, blank: { ...now.blank, units } } : {};
  change({ ...now, ...own, units }, 'units');
}

function SaveMenu() {
  const menu = useRef<HTMLDetailsElement>(null);
  /** Who works by keys goes on at what opened it. */
  const close = () => {
    if (menu.current) menu.current.open = false;
    menu.current?.querySelector('summary')?.focus();
  };
  const save = (name: string, content: string | Uint8Array) => {
    download(name, content);
    close();
  };
  const now = bench.value;
  return (
    <details
      class="menu"
      ref={menu}
      onKeyDown={(event) => {
        if (event.key === 'Escape') close();
      }}
    >
      <summary class="tool">Save</summary>
      <div class="menu-panel">
        <button type="button" onClick={() => save(`${archiveName(now)}.zip`, folderZip(now))}>
          Job, vessel and artwork, as one zip
        </button>
        <button type="button" onClick={() => save(now.jobFile, jobText(now))}>
          Only the job, {now.jobFile}
        </button>
        <button type="button" onClick={() => save(now.blankFile, blankText(now))}>
          Only the vessel, {now.blankFile}
        </button>
      </div>
    </details>
  );
}

export function Top() {
  const input = useRef<HTMLInputElement>(null);
  const { past, future } = history.value;
  return (
    <header class="top">
      <div class="top-row">
        <p class="brand">
          <svg viewBox="0 0 32 32" aria-hidden="true" class="brand-mark">
            <path d="M5 9Q16 3 27 9L24 25Q16 21 8 25Z" />
            <path d="M16 5.5V22.5" class="brand-seam" />
          </svg>
          Seamwright
        </p>
        <nav class="top-tools" aria-label="Job">
          <button type="button" class="tool" onClick={() => startAnew()}>
            New
          </button>
          <button type="button" class="tool" onClick={() => input.current?.click()}>
            Open
          </button>
          <input
            ref={input}
            type="file"
            class="unseen"
            multiple
            tabIndex={-1}
            // The button before it opens it.
            aria-hidden="true"
            id="open-files"
            aria-label="Files to open: a job, a vessel, artwork, a font, or a zip of them"
            accept=".json,.svg,.png,.jpg,.jpeg,.ttf,.otf,.woff,.zip"
            onChange={async (event) => {
              const picker = event.currentTarget;
              await openFiles(taken(picker.files ?? []), 'files');
              picker.value = '';
            }}
          />
          <SaveMenu />
          <button type="button" class="tool" aria-disabled={past.length === 0} onClick={undo}>
            Undo
          </button>
          <button type="button" class="tool" aria-disabled={future.length === 0} onClick={redo}>
            Redo
          </button>
          <fieldset class="units">
            <legend class="unseen">Unit</legend>
            {(['mm', 'in'] as const).map((units) => (
              <label key={units}>
                <input
                  type="radio"
                  name="units"
                  checked={bench.value.units === units}
                  onChange={() => setUnits(units)}
                />
                <span>{units}</span>
              </label>
            ))}
          </fieldset>
          <button type="button" class="tool tool-guide" onClick={startGuide}>
            Guide
          </button>
          <LightButton />
        </nav>
      </div>
      {keepingSays.value ? (
        <p class="bar bar-kept says-look" role="alert">
          {keepingSays.value}
        </p>
      ) : null}
      {isKeptElsewhere.value ? <KeptElsewhere /> : null}
      {openingSays.value.length > 0 ? (
        <div class="bar says-look" role="alert">
          <ul>
            {openingSays.value.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <button
            type="button"
            class="quiet"
            onClick={() => {
              openingSays.value = [];
            }}
          >
            Close
          </button>
        </div>
      ) : null}
    </header>
  );
}

/** The browser keeps one job: which of two tabs' it is, the maker says. */
const KeptElsewhere = () => (
  <div class="bar bar-kept says-look" role="alert">
    <p>
      The job was changed in another tab, and the browser keeps one. What you do here is not kept until you
      choose; if you want both, save one of them as a file first.
    </p>
    <div class="button-row">
      <button type="button" class="plain" onClick={() => void takeTheirs()}>
        Go on with the other tab’s job
      </button>
      <button type="button" class="plain" onClick={() => void keepOurs()}>
        Keep this one
      </button>
    </div>
  </div>
);

const lightWords: Readonly<Record<Light, string>> = {
  system: 'Light: as the system',
  light: 'Light: day',
  dark: 'Light: night',
};

const LightButton = () => (
  <button type="button" class="tool tool-light" onClick={changeLight}>
    {lightWords[light.value]}
  </button>
);
