// A part of the job that is there or not: a tick, and its fields below it while it is.
import type { ComponentChildren } from 'preact';
import { type JsonObject, valueAt } from '../model/bench.ts';
import { FieldFindings } from '../parts/field.tsx';
import { Help, helpKey } from '../parts/help.tsx';
import type { HelpKey } from '../parts/help-words.ts';
import { bench, findingsAt, setField } from '../store.ts';

interface WantedProps {
  /** The key of the job that it writes. */
  readonly path: string;
  readonly says: string;
  readonly help?: HelpKey;
  /** What it begins with. */
  readonly begun: JsonObject;
  /** Keys within it that no field shows: what is found of them stands below the tick. */
  readonly unseen?: readonly string[];
  readonly children: ComponentChildren;
}

export function Wanted({ path, says, help, begun, unseen = [], children }: WantedProps) {
  const has = valueAt(bench.value.job, path) !== undefined;
  const told = [path, ...unseen.map((key) => `${path}.${key}`)];
  const found = findingsAt('job', path).filter(({ where: { key } }) => told.includes(key ?? ''));
  return (
    <>
      <div class="tick-help">
        <label class="tick">
          <input
            type="checkbox"
            data-path={`job:${path}`}
            checked={has}
            aria-keyshortcuts={help ? helpKey : undefined}
            aria-describedby={found.length > 0 ? `${path}-says` : undefined}
            onChange={() => setField('job', path, has ? undefined : begun)}
          />
          {says}
        </label>
        {help ? <Help about={help} label={says} byKey /> : null}
      </div>
      <FieldFindings id={`${path}-says`} found={found} />
      {has ? children : null}
    </>
  );
}
