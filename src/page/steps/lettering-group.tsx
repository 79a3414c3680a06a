// Texts on the vessel: words, font, size and place.
import { goTo } from '../going.ts';
import { listAt, valueAt, withFile, withItem } from '../model/bench.ts';
import { lengthInFile } from '../model/typed.ts';
import { ChoiceField, ColourField, LengthField, TextField } from '../parts/field.tsx';
import { FileButton, fonts } from '../parts/file-button.tsx';
import { bench, change, setField } from '../store.ts';
import { ListHead } from './list-head.tsx';
import { jobUnits, MotifPlace, middleOfFront } from './motif-place.tsx';
import { UnderLayer } from './under-layer.tsx';

/** Height of capitals that a text begins with, mm. */
const firstCapHeight = 12;

function FontRow({ path }: { readonly path: string }) {
  const font = valueAt(bench.value.job, `${path}.font`);
  return (
    <div class="button-row">
      <span class="aside">
        {typeof font === 'string' ? `Font: ${font}` : 'Font: the one that comes with us'}
      </span>
      <FileButton
        path={`${path}.font`}
        label={font === undefined ? 'Your font' : 'Another font'}
        accept={fonts}
        take={(name, bytes) => change(withFile(bench.value, `${path}.font`, name, bytes), `job:${path}.font`)}
      />
      {font === undefined ? null : (
        <button type="button" class="quiet" onClick={() => setField('job', `${path}.font`, undefined)}>
          Ours again
        </button>
      )}
    </div>
  );
}

function LetteringText({ index }: { readonly index: number }) {
  const path = `lettering[${index}]`;
  const text = String(valueAt(bench.value.job, `${path}.text`) ?? '');
  return (
    <li class="station">
      <ListHead half="job" list="lettering" index={index} name={text.split('\n')[0] || `Text ${index + 1}`} />
      <TextField half="job" path={`${path}.text`} label="Words" lines required />
      <FontRow path={path} />
      <div class="field-pair">
        <LengthField
          half="job"
          path={`${path}.capHeight`}
          label="Capitals"
          help="capHeight"
          standard="to fit"
        />
        <LengthField half="job" path={`${path}.fit`} label="Fit within" help="fit" standard="no limit" />
      </div>
      <MotifPlace path={path} standardLay="even" />
      <details class="more">
        <summary>Lines, spacing, colours</summary>
        <ChoiceField
          half="job"
          path={`${path}.align`}
          label="Lines stand"
          standard="middle"
          options={[
            { value: 'left', label: 'Left' },
            { value: undefined, label: 'Middle' },
            { value: 'right', label: 'Right' },
          ]}
        />
        <div class="field-pair">
          <LengthField
            half="job"
            path={`${path}.spacing`}
            label="Between letters"
            help="spacing"
            standard="0"
          />
          <LengthField
            half="job"
            path={`${path}.lineStep`}
            label="Line to line"
            help="lineStep"
            standard="as the font says"
          />
        </div>
        <ChoiceField
          half="job"
          path={`${path}.direction`}
          label="They run"
          standard="auto"
          options={[
            { value: undefined, label: 'As the script does' },
            { value: 'ltr', label: 'To the right' },
            { value: 'rtl', label: 'To the left' },
          ]}
        />
        <ColourField half="job" path={`${path}.colour`} label="Letters" standard="#1c1c1c" />
        <UnderLayer
          path={`${path}.backing`}
          says="On a backing, a layer of its own"
          by={{ key: 'grow', label: 'Past the letters', help: 'backing' }}
          colour={{ label: 'Backing', standard: '#d8cfb8' }}
        />
      </details>
    </li>
  );
}

export function LetteringGroup() {
  const texts = listAt(bench.value, 'job', 'lettering');
  const add = () => {
    const capHeight = lengthInFile(firstCapHeight, jobUnits());
    const text = { text: 'Your words', capHeight, at: { ...middleOfFront() } };
    change(withItem(bench.value, 'job', 'lettering', text), 'add lettering');
    goTo(`job:lettering[${texts.length}].text`);
  };
  return (
    <>
      <h3 class="group-head">Lettering</h3>
      {texts.length === 0 ? null : (
        <ol class="stations">
          {texts.map((_, i) => (
            <LetteringText key={i} index={i} />
          ))}
        </ol>
      )}
      <div class="button-row">
        <button type="button" class="plain" onClick={add}>
          Add a text
        </button>
      </div>
    </>
  );
}
