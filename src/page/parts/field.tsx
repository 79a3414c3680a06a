// Fields of a job and its blank: each shows what is typed, what is wrong with it, and how to take that reading.
import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { Finding } from '../../finding.ts';
import type { Units } from '../../lengths/length.ts';
import { type Half, type Json, valueAt } from '../model/bench.ts';
import {
  lengthsToField,
  lengthsToFile,
  lengthToField,
  lengthToFile,
  namesItsUnit,
  numberToFile,
  shownText,
  standardToField,
} from '../model/typed.ts';
import { bench, findingsAt, isStillToGive, setField } from '../store.ts';
import { Help, helpKey } from './help.tsx';
import type { HelpKey } from './help-words.ts';
import { findingSays } from './plain-words.ts';
import { LevelSign } from './sign.tsx';

export interface FieldPlace {
  readonly half: Half;
  /** The key it writes, such as `stations[1].across`. */
  readonly path: string;
  readonly label: string;
  /** What goes without saying where nothing is typed. */
  readonly standard?: string;
  readonly help?: HelpKey;
  /** Whether a field that is left empty is kept as one to fill in, where any other is left out. */
  readonly required?: boolean;
  /** Takes the label from sight where a table's head says it. */
  readonly bare?: boolean;
}

const fileUnits = (half: Half): Units => {
  const { job, blank } = bench.value;
  const own = (half === 'blank' ? blank.units : undefined) ?? job.units;
  return own === 'in' ? 'in' : 'mm';
};

export const FieldFindings = ({ id, found }: { readonly id: string; readonly found: readonly Finding[] }) =>
  found.length === 0 ? null : (
    <ul class="field-says" id={id}>
      {found.map((finding) => (
        <li key={finding.says} class={`says-${isStillToGive(finding) ? 'wait' : finding.level}`}>
          {isStillToGive(finding) ? null : <LevelSign level={finding.level} />}
          {isStillToGive(finding) ? 'still to give' : findingSays(finding)}
        </li>
      ))}
    </ul>
  );

interface TypedFieldProps extends FieldPlace {
  readonly shown: string;
  readonly unit?: string;
  readonly keyboard: 'decimal' | 'text';
  /** Whether several lines can be typed. */
  readonly lines?: boolean;
  readonly onType: (text: string) => void;
}

function TypedField({
  half,
  path,
  label,
  standard,
  help,
  bare,
  shown,
  unit,
  keyboard,
  lines,
  onType,
}: TypedFieldProps) {
  const id = useId();
  // While it is typed in, a field shows what was typed; after that, what stands in the file.
  const typed = useSignal<string | undefined>(undefined);
  const found = findingsAt(half, path);
  const isWrong = found.some((finding) => finding.level === 'stop' && !isStillToGive(finding));
  const described = [...(unit ? [`${id}-unit`] : []), ...(found.length > 0 ? [`${id}-says`] : [])];
  const box = {
    autocomplete: 'off',
    spellcheck: false,
    'data-path': `${half}:${path}`,
    placeholder: standard,
    value: typed.value ?? shown,
    'aria-invalid': isWrong,
    'aria-describedby': described.length > 0 ? described.join(' ') : undefined,
    'aria-keyshortcuts': help ? helpKey : undefined,
    onInput: ({ currentTarget: { value } }: { readonly currentTarget: { readonly value: string } }) => {
      typed.value = value;
      onType(value);
    },
    onBlur: () => {
      typed.value = undefined;
    },
  } as const;
  return (
    <div class={bare ? 'field field-bare' : 'field'}>
      <div class="field-head">
        <label for={id} class={bare ? 'unseen' : undefined}>
          {label}
        </label>
        {help ? <Help about={help} label={label} byKey /> : null}
      </div>
      <div class="field-box">
        {lines ? (
          <textarea id={id} rows={Math.max(2, shown.split('\n').length)} {...box} />
        ) : (
          <input id={id} type="text" inputMode={keyboard} {...box} />
        )}
        {unit ? (
          <span class="field-unit" id={`${id}-unit`} aria-hidden="true">
            {unit}
          </span>
        ) : null}
      </div>
      <FieldFindings id={`${id}-says`} found={found} />
    </div>
  );
}

/** A length, in the maker's unit unless another is typed with it. */
export function LengthField(place: FieldPlace) {
  const { half, path, standard } = place;
  const { units } = bench.value;
  const shown = lengthToField(valueAt(bench.value[half], path), units, fileUnits(half));
  return (
    <TypedField
      {...place}
      {...(standard === undefined ? {} : { standard: standardToField(standard, units) })}
      shown={shown}
      {...(namesItsUnit(shown) ? {} : { unit: units })}
      keyboard="text"
      onType={(text) =>
        setField(half, path, lengthToFile(text, units, fileUnits(half)) ?? (place.required ? '' : undefined))
      }
    />
  );
}

/** Several lengths, parted by commas. */
export function LengthsField(place: FieldPlace) {
  const { half, path } = place;
  const { units } = bench.value;
  return (
    <TypedField
      {...place}
      shown={lengthsToField(valueAt(bench.value[half], path), units, fileUnits(half))}
      unit={units}
      keyboard="text"
      onType={(text) => setField(half, path, lengthsToFile(text, units, fileUnits(half)))}
    />
  );
}

export function NumberField({ unit, ...place }: FieldPlace & { readonly unit?: string }) {
  const { half, path, required } = place;
  return (
    <TypedField
      {...place}
      {...(unit === undefined ? {} : { unit })}
      shown={shownText(valueAt(bench.value[half], path))}
      keyboard="decimal"
      onType={(text) => setField(half, path, numberToFile(text) ?? (required ? '' : undefined))}
    />
  );
}

export function TextField(place: FieldPlace & { readonly lines?: boolean }) {
  const { half, path, required } = place;
  return (
    <TypedField
      {...place}
      shown={shownText(valueAt(bench.value[half], path))}
      keyboard="text"
      onType={(text) => setField(half, path, text === '' && !required ? undefined : text)}
    />
  );
}

export interface Option {
  /** undefined: the key is left out, and what goes without saying holds. */
  readonly value: Json | undefined;
  readonly label: string;
  readonly says?: string;
  readonly picture?: preact.ComponentChildren;
}

/** How so many choices stand beside one another, where they do so in a way of their own. */
const rowOf: Readonly<Record<number, string>> = { 3: ' choice-three', 4: ' choice-two-up' };

/** One of a few, all of them seen at once. `standard`: the value that holds where the key is left out. */
export function ChoiceField({
  half,
  path,
  label,
  help,
  options,
  standard,
  choose = (value) => setField(half, path, value),
  isChosen,
}: Omit<FieldPlace, 'standard' | 'bare'> & {
  readonly options: readonly Option[];
  readonly standard: Json;
  /** Where choosing changes more than the key. */
  readonly choose?: (value: Json | undefined) => void;
  /** Where a value is not told by being the same. */
  readonly isChosen?: (value: Json | undefined) => boolean;
}) {
  const name = useId();
  const value = valueAt(bench.value[half], path) ?? standard;
  const found = findingsAt(half, path);
  return (
    <fieldset
      class="choice"
      aria-label={label}
      aria-describedby={found.length > 0 ? `${name}-says` : undefined}
    >
      <legend>
        {label} {help ? <Help about={help} label={label} byKey /> : null}
      </legend>
      <div class={`choice-row${rowOf[options.length] ?? ''}`}>
        {options.map((option) => (
          <label key={option.label} class="choice-card">
            <input
              type="radio"
              name={name}
              data-path={`${half}:${path}`}
              aria-keyshortcuts={help ? helpKey : undefined}
              checked={isChosen ? isChosen(option.value) : (option.value ?? standard) === value}
              onChange={() => choose(option.value)}
            />
            {option.picture}
            <span class="choice-label">{option.label}</span>
            {option.says ? (
              <span class="choice-says">
                <span class="unseen">: </span>
                {option.says}
              </span>
            ) : null}
          </label>
        ))}
      </div>
      <FieldFindings id={`${name}-says`} found={found} />
    </fieldset>
  );
}

/** Yes or no; no leaves the key out. */
export const TickField = ({ half, path, label }: Pick<FieldPlace, 'half' | 'path' | 'label'>) => (
  <label class="tick">
    <input
      type="checkbox"
      data-path={`${half}:${path}`}
      checked={valueAt(bench.value[half], path) === true}
      onChange={(event) => setField(half, path, event.currentTarget.checked ? true : undefined)}
    />
    {label}
  </label>
);

/** A colour, as `#rrggbb`. */
export const ColourField = ({
  half,
  path,
  label,
  standard,
}: Pick<FieldPlace, 'half' | 'path' | 'label'> & { readonly standard: string }) => (
  <label class="tick">
    <input
      type="color"
      data-path={`${half}:${path}`}
      value={String(valueAt(bench.value[half], path) ?? standard)}
      onInput={(event) => setField(half, path, event.currentTarget.value)}
    />
    {label}
  </label>
);
