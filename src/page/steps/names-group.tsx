// A list of names: a vessel a row, looked at line by line, seen one by one, made into one archive.
import { signal } from '@preact/signals';
import { type Finding, Refused } from '../../finding.ts';
import type { NamesReport } from '../../job/list/names-report.ts';
import { typedText } from '../../lengths/typed-text.ts';
import type { Step as WorkStep } from '../ask.ts';
import type { Bench } from '../model/bench.ts';
import { archiveName } from '../model/contract-files.ts';
import { emptyList, type GivenList } from '../model/given-list.ts';
import type { RowsAnswer } from '../model/messages.ts';
import { FileButton } from '../parts/file-button.tsx';
import { findingPlace, findingSays, inPlainWords } from '../parts/plain-words.ts';
import { usePicture } from '../parts/use-picture.ts';
import { download } from '../save.ts';
import { bench, giveList, list, said, slow } from '../store.ts';

/** What was said of the rows, and of which list and job. */
const looked = signal<
  { readonly from: Bench; readonly of: GivenList; readonly answer: RowsAnswer } | undefined
>(undefined);
const seen = signal<{ readonly line: number; readonly svg: string } | undefined>(undefined);
const work = signal<WorkStep | undefined>(undefined);
const says = signal<readonly string[]>([]);

const isOld = (): boolean =>
  looked.value !== undefined && (looked.value.from !== bench.value || looked.value.of !== list.value);

const inWords = (found: Finding): string => `${findingPlace(found)}: ${findingSays(found)}`;

function give(given: GivenList): void {
  giveList(given);
  seen.value = undefined;
  says.value = [];
}

function open(file: string, bytes: Uint8Array): void {
  try {
    give({ file, text: typedText(bytes, file) });
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault;
    says.value = fault.findings.map(inWords);
  }
}

/** Asks one thing of the list as it is now; what stands against it is said. */
async function asked<K extends 'rows' | 'row' | 'names'>(kind: K, more: object = {}) {
  const [from, of] = [bench.value, list.value];
  work.value = { step: 0, of: 1, says: 'reading the list' };
  says.value = [];
  const outcome = await slow.ask(kind, from, { list: of, ...more }, (step) => {
    work.value = step;
  });
  work.value = undefined;
  if (outcome.is === 'refused') says.value = outcome.findings.map(inWords);
  if (outcome.is === 'fault') says.value = [`a fault of Seamwright's own: ${outcome.says}`];
  return outcome.is === 'answer' ? { from, of, answer: outcome.answer } : undefined;
}

async function look(): Promise<void> {
  seen.value = undefined;
  const answered = await asked('rows');
  looked.value = answered;
  const [first] = answered?.answer.rows ?? [];
  if (answered)
    said.value = `${answered.answer.rows.length} rows can be made, ${answered.answer.refused.length} left out`;
  if (first) await show(first.line);
}

async function show(line: number): Promise<void> {
  const answered = await asked('row', { line });
  if (answered) seen.value = { line, svg: answered.answer.svg };
}

async function makeAll(paper: string): Promise<void> {
  const answered = await asked('names', paper === '' ? {} : { paper });
  if (!answered) return;
  const { parts, report } = answered.answer;
  const file = `${archiveName(answered.from)}-names.zip`;
  download(file, new Uint8Array(await new Blob([...parts]).arrayBuffer()));
  says.value = doneInWords(report, file);
  said.value = says.value.join('. ');
}

/** What was made, and what of it a maker must not cut. */
function doneInWords({ done, rows, shared }: NamesReport, file: string): readonly string[] {
  const failed = rows.filter(({ proved }) => proved === false).map(({ label }) => label);
  const sheets = shared?.sets.reduce((sum, set) => sum + set.sheets.length, 0) ?? 0;
  const theirs = sheets === 1 ? 'one sheet' : `${sheets} sheets`;
  const hold = shared?.proved
    ? 'proved to hold every piece'
    : 'which do NOT hold every piece: do not cut them';
  return [
    `${done === 1 ? 'One vessel' : `${done} vessels`} made; ${file} saved`,
    ...(shared ? [`They share ${theirs}, ${hold}`] : []),
    ...(failed.length > 0 ? [`The files of ${failed.join(', ')} do not hold: do not cut them`] : []),
  ];
}

/** `paper`: what guides are printed on; empty for no print. */
export function NamesGroup({ paper }: { readonly paper: string }) {
  const isBusy = work.value !== undefined;
  const { text, file } = list.value;
  const isEmpty = text.trim() === '';
  const answer = looked.value?.answer;
  return (
    <details class="more" open={!isEmpty}>
      <summary>A list of names: a vessel a row</summary>
      <div class="made names">
        <p class="aside">
          Write <kbd>{'{name}'}</kbd> in a text or a field above, and each row of the list fills it from its
          column of that name. The first line names the columns.
        </p>
        <div class="field">
          <div class="field-head">
            <label for="names-text">Rows, pasted from a table or opened as CSV</label>
          </div>
          <div class="field-box">
            <textarea
              id="names-text"
              rows={5}
              spellcheck={false}
              value={text}
              onInput={({ currentTarget }) => give({ ...emptyList, text: currentTarget.value })}
            />
          </div>
        </div>
        <div class="button-row">
          <FileButton path="names" label="Open a list" accept=".csv,.txt,text/csv,text/plain" take={open} />
          <button type="button" class="plain" disabled={isEmpty || isBusy} onClick={() => void look()}>
            Look at the rows
          </button>
          <span class="aside">{isEmpty ? '' : file}</span>
        </div>
        {work.value ? (
          <div class="button-row">
            <progress max={work.value.of} value={work.value.step} aria-label="Working on the list" />
            <span role="status">{work.value.says}…</span>
            <button
              type="button"
              class="quiet"
              onClick={() => {
                for (const kind of ['rows', 'row', 'names'] as const) slow.cancel(kind);
              }}
            >
              Stop
            </button>
          </div>
        ) : null}
        {says.value.length > 0 ? (
          <ul class="field-says">
            {says.value.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        ) : null}
        {answer ? <Looked answer={answer} isBusy={isBusy} paper={paper} /> : null}
      </div>
    </details>
  );
}

interface LookedProps {
  readonly answer: RowsAnswer;
  readonly isBusy: boolean;
  readonly paper: string;
}

function Looked({ answer, isBusy, paper }: LookedProps) {
  const { rows, refused } = answer;
  const address = usePicture(seen.value?.svg);
  const shown = rows.find(({ line }) => line === seen.value?.line);
  return (
    <>
      {isOld() ? (
        <p class="says-look">The job or the list was changed since: look at the rows again.</p>
      ) : null}
      <p class="told-line">
        {rows.length === 1 ? 'One row' : `${rows.length} rows`} can be made; {refused.length} left out.
      </p>
      {refused.length > 0 ? (
        <ul class="field-says says-stop" aria-label="Rows left out">
          {refused.map(({ line, says: words }) => (
            <li key={line}>
              Line {line}: {inPlainWords(words)}
            </li>
          ))}
        </ul>
      ) : null}
      {rows.length > 0 ? (
        <>
          <label class="pick">
            <span>See the vessel of</span>
            <select
              value={seen.value?.line}
              disabled={isBusy}
              onChange={(event) => void show(Number(event.currentTarget.value))}
            >
              {rows.map(({ line, label }) => (
                <option key={line} value={line}>
                  line {line}: {label}
                </option>
              ))}
            </select>
          </label>
          {address && shown ? (
            <img class="row-picture" src={address} alt={`The vessel of line ${shown.line}, ${shown.label}`} />
          ) : null}
          <div class="button-row">
            <button
              type="button"
              class="strong"
              disabled={isBusy || isOld()}
              onClick={() => void makeAll(paper)}
            >
              Make all rows, as one zip
            </button>
          </div>
        </>
      ) : null}
    </>
  );
}
