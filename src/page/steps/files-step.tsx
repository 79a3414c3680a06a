// Step 5: the files, made and proved; each alone, or all of them with the job as one archive.
import { computed, signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Finding } from '../../finding.ts';
import { gapLength } from '../../lengths/closeness.ts';
import type { Step as WorkStep } from '../ask.ts';
import type { Bench } from '../model/bench.ts';
import { archiveName, folderZip } from '../model/contract-files.ts';
import type { FilesAnswer } from '../model/messages.ts';
import { FieldFindings } from '../parts/field.tsx';
import { download } from '../save.ts';
import { bench, findings, said, setField, slow } from '../store.ts';
import { NamesGroup } from './names-group.tsx';
import { SheetGroup } from './sheet-group.tsx';

/** The files that were made last, and from what. */
export const made = signal<{ readonly from: Bench; readonly answer: FilesAnswer } | undefined>(undefined);
const making = signal<WorkStep | undefined>(undefined);
const refusedSays = signal<readonly Finding[]>([]);
/** The paper that was chosen; until one is, what lies in a maker's printer who reads in this unit. */
const chosenPaper = signal<string | undefined>(undefined);
const paper = computed(() => chosenPaper.value ?? (bench.value.units === 'in' ? 'letter' : 'a4'));
/** Paper of a size of its own, as typed; asked for where the choice is `own`. */
const ownPaper = signal('210 x 330 mm');

const papers: readonly (readonly [string, string])[] = [
  ['a4', 'A4'],
  ['a3', 'A3'],
  ['letter', 'Letter'],
  ['tabloid', 'Tabloid'],
  ['own', 'another size'],
  ['', 'no print'],
];

const whatFor: Readonly<Record<string, string>> = {
  cut: 'what the blade follows',
  guide: 'for the eye, the printer or a pen',
  picture: 'picture',
  'job-sheet': 'what to have at the bench',
  job: 'the job as it was worked out',
  blank: 'the vessel as it was worked out',
  print: 'the guide on paper, at true size',
  report: 'every figure',
  index: 'a page that opens all of them',
};

/** The paper as it is asked for; empty for no print. */
const named = (): string => (paper.value === 'own' ? ownPaper.value : paper.value);

async function make(): Promise<void> {
  const from = bench.value;
  making.value = { step: 0, of: 3, says: 'starting' };
  refusedSays.value = [];
  const on = named();
  const more = on === '' ? {} : { paper: on };
  const outcome = await slow.ask('files', from, more, (step) => {
    making.value = step;
  });
  making.value = undefined;
  if (outcome.is === 'answer') {
    made.value = { from, answer: outcome.answer };
    const { files, report } = outcome.answer;
    said.value = `${files.length} files are made${report.proof?.pass ? ', and proved' : `. ${provedInWords(report)}`}`;
  }
  if (outcome.is === 'refused') refusedSays.value = outcome.findings;
  if (outcome.is === 'fault')
    refusedSays.value = [
      { rule: 'fault', level: 'stop', where: {}, says: `a fault of Seamwright's own: ${outcome.says}` },
    ];
}

const sizeInWords = (content: string | Uint8Array): string => {
  const bytes = typeof content === 'string' ? new Blob([content]).size : content.length;
  return bytes < 1e6
    ? `${Math.max(1, Math.round(bytes / 1000))}\u00a0kB`
    : `${(bytes / 1e6).toFixed(1)}\u00a0MB`;
};

const provedInWords = ({ proof }: FilesAnswer['report']): string =>
  proof?.pass
    ? `Proved: the files, rolled back onto the vessel, hold in all ${proof.checks.length} checks.`
    : `The files do not hold in ${proof?.checks.filter(({ pass }) => !pass).length ?? 0} of the checks; see step 4 and report.json before you cut.`;

function Proof({ report }: Pick<FilesAnswer, 'report'>) {
  const { proof, pattern } = report;
  const gap = pattern?.seamGap;
  return (
    <p class={proof?.pass === false ? 'caution' : 'told-line'}>
      {provedInWords(report)}
      {gap && gap.crossings > 0
        ? ` At the seam the ends meet ${gapLength(gap.position, bench.value.units)}.`
        : ''}
    </p>
  );
}

function Made({ from, answer }: { readonly from: Bench; readonly answer: FilesAnswer }) {
  const isOld = from !== bench.value;
  const pdf = answer.files.find(({ role }) => role === 'print');
  return (
    <div class={isOld ? 'made made-old' : 'made'}>
      {isOld ? (
        <p class="says-look">The job was changed since these were made. Make them again before you cut.</p>
      ) : null}
      <Proof report={answer.report} />
      <div class="button-row">
        <button
          type="button"
          class="strong"
          onClick={() => download(`${archiveName(from)}.zip`, folderZip(from, answer.files))}
        >
          Save all as one zip
        </button>
        {pdf && typeof pdf.content !== 'string' ? (
          <button type="button" class="plain" onClick={() => openPdf(pdf.content)}>
            Open the print
          </button>
        ) : null}
        <SheetButton answer={answer} />
      </div>
      <ul class="file-list">
        {answer.files.map(({ file, role, content }) => (
          <li key={file}>
            <button type="button" class="file" onClick={() => download(file, content)}>
              <span class="file-name">{file}</span>
              <span class="file-says">
                {whatFor[role] ?? role}, {sizeInWords(content)}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function openPdf(content: string | Uint8Array): void {
  const part = typeof content === 'string' ? content : content.slice();
  const address = URL.createObjectURL(new Blob([part], { type: 'application/pdf' }));
  window.open(address, '_blank', 'noopener');
  setTimeout(() => URL.revokeObjectURL(address), 600_000);
}

/** The job sheet in a window of the page, to read and to print. */
function SheetButton({ answer }: { readonly answer: FilesAnswer }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const holder = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const sheet = answer.files.find(({ role }) => role === 'job-sheet')?.content;
    const { current } = holder;
    if (!current || typeof sheet !== 'string') return undefined;
    // The engine's own page: its words are escaped, and it has no script; the page's policy would run none.
    // Its own style sheet is for the file alone.
    const text = sheet.replace(/<style>[\s\S]*?<\/style>/, '');
    const page = new DOMParser().parseFromString(text, 'text/html');
    const addresses: string[] = [];
    for (const image of page.querySelectorAll('img')) {
      // The sheet holds its pictures itself; the page shows pictures as blobs only.
      const [, type, held = ''] =
        /^data:(image\/[\w+.-]+);base64,(.*)$/.exec(image.getAttribute('src') ?? '') ?? [];
      if (type === undefined) continue;
      const bytes = Uint8Array.from(atob(held), (letter) => letter.charCodeAt(0));
      const address = URL.createObjectURL(new Blob([bytes], { type }));
      addresses.push(address);
      image.src = address;
    }
    current.replaceChildren(...(page.querySelector('main')?.childNodes ?? []));
    return () => {
      for (const address of addresses) URL.revokeObjectURL(address);
    };
  }, [answer]);
  return (
    <>
      <button type="button" class="plain" onClick={() => dialog.current?.showModal()}>
        Read the job sheet
      </button>
      <dialog ref={dialog} class="sheet-window" aria-label="Job sheet">
        <div class="button-row sheet-tools">
          <button type="button" class="plain" onClick={() => window.print()}>
            Print
          </button>
          <button type="button" class="plain" onClick={() => dialog.current?.close()}>
            Close
          </button>
        </div>
        <div ref={holder} class="job-sheet" />
      </dialog>
    </>
  );
}

export function FilesStep() {
  const hasStop = findings.value.some(({ level }) => level === 'stop');
  return (
    <>
      <TextFieldOfJob />
      <SheetGroup />
      <label class="pick">
        <span>Print the guide on</span>
        <select
          value={paper.value}
          onChange={(event) => {
            chosenPaper.value = event.currentTarget.value;
          }}
        >
          {papers.map(([value, label]) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      {paper.value === 'own' ? (
        <label class="pick">
          <span>Its size, with the unit</span>
          <input
            type="text"
            value={ownPaper.value}
            onInput={(event) => {
              ownPaper.value = event.currentTarget.value;
            }}
          />
        </label>
      ) : null}
      <div class="button-row">
        {/* Not disabled while it works: it would lose the keyboard, which goes on from here. */}
        <button
          type="button"
          class="strong"
          disabled={hasStop}
          aria-disabled={making.value !== undefined}
          onClick={() => (making.value ? undefined : make())}
        >
          Make the files
        </button>
        {making.value ? (
          <>
            <progress max={making.value.of} value={making.value.step} aria-label="Making the files" />
            <span role="status">{making.value.says}…</span>
            <button type="button" class="quiet" onClick={() => slow.cancel('files')}>
              Stop
            </button>
          </>
        ) : null}
      </div>
      <NamesGroup paper={named()} />
      {hasStop ? <p class="aside">What is marked Stop in step 4 comes first.</p> : null}
      <FieldFindings id="files-says" found={refusedSays.value} />
      {made.value ? <Made {...made.value} /> : null}
      <p class="caution" role="note">
        <strong>Before you cut.</strong> Measure the squares on the printed guide: 25 mm and 1 in. Wrap the
        paper first. Nothing here makes a coating safe for food.
      </p>
    </>
  );
}

const TextFieldOfJob = () => (
  <div class="field">
    <div class="field-head">
      <label for="job-name">Name of the job</label>
    </div>
    <div class="field-box">
      <input
        id="job-name"
        type="text"
        value={String(bench.value.job.name ?? '')}
        onInput={(event) => setField('job', 'name', event.currentTarget.value)}
      />
    </div>
  </div>
);
