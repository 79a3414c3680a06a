// Parts of the wall that nothing may lie on: a dent, a thread, a window, the lip's zone.
import { keepOutKinds } from '../../blank/keep-out.ts';
import { listAt, valueAt, withItem } from '../model/bench.ts';
import { FieldFindings, LengthField, NumberField } from '../parts/field.tsx';
import { bench, change, findingsAt } from '../store.ts';
import { ListHead } from './list-head.tsx';

function KeepOut({ index }: { readonly index: number }) {
  const path = `keepOut[${index}]`;
  const what = String(valueAt(bench.value.blank, `${path}.what`) ?? '');
  return (
    <li class="station">
      <ListHead half="blank" list="keepOut" index={index} name={`${what} ${index + 1}`} />
      <div class="field-pair">
        <LengthField half="blank" path={`${path}.along.from`} label="Up from" help="keepOut" />
        <LengthField half="blank" path={`${path}.along.to`} label="Up to" help="keepOut" />
        <NumberField half="blank" path={`${path}.turn.from`} label="From turn" unit="of 1" help="turn" />
        <NumberField half="blank" path={`${path}.turn.to`} label="To turn" unit="of 1" help="turn" />
      </div>
      <FieldFindings
        id={`${path}-says`}
        found={findingsAt('blank', path).filter(({ where: { key } }) =>
          [path, `${path}.along`, `${path}.turn`, `${path}.what`].includes(key ?? ''),
        )}
      />
    </li>
  );
}

export function KeepOutGroup() {
  const all = listAt(bench.value, 'blank', 'keepOut');
  const add = (what: string) => {
    if (what === '') return;
    change(withItem(bench.value, 'blank', 'keepOut', { what }), 'add keep-out');
  };
  return (
    <details class="more" open={all.length > 0}>
      <summary>What to keep bare</summary>
      <p class="aside">
        A weld line, a dent, an embossed mark, a lid, a thread, a window. Without turns it goes all around.
      </p>
      {all.length === 0 ? null : (
        <ol class="stations">
          {all.map((_, i) => (
            <KeepOut key={i} index={i} />
          ))}
        </ol>
      )}
      <div class="field-pair">
        <label class="pick">
          <span>Add one</span>
          <select
            value=""
            onChange={({ currentTarget }) => {
              add(currentTarget.value);
              currentTarget.value = '';
            }}
          >
            <option value="">Pick one…</option>
            {keepOutKinds.map((what) => (
              <option key={what} value={what}>
                {what}
              </option>
            ))}
          </select>
        </label>
        <LengthField half="blank" path="lipZone" label="Lip zone" help="lipZone" standard="20 mm" />
      </div>
    </details>
  );
}
