// A mask whose edge follows the single motifs and texts, and that covers the rest to one edge of the band.
import { listAt, valueAt } from '../model/bench.ts';
import { lengthInFile } from '../model/typed.ts';
import { ChoiceField, ColourField, LengthField } from '../parts/field.tsx';
import { bench, setField } from '../store.ts';
import { jobUnits } from './motif-place.tsx';
import { Wanted } from './wanted.tsx';

/** What it begins with, mm. Common practice, no source. */
const first = { standOff: 2, grow: -0.5 } as const;

/** Names of all that it can follow, as its files have them, with what each is. */
function motifs(): readonly { readonly name: string; readonly says: string }[] {
  const { job } = bench.value;
  const named = (list: string, kind: string, key: string) =>
    listAt(bench.value, 'job', list).map((_, i) => ({
      name: `${kind}-${i + 1}`,
      says: `${i + 1}: ${String(valueAt(job, `${list}[${i}].${key}`) ?? kind)}`,
    }));
  return [...named('items', 'item', 'file'), ...named('lettering', 'lettering', 'text')];
}

/** Which of them it follows; all where the key is left out. */
function Follows() {
  const all = motifs();
  if (all.length < 2) return null;
  const chosen = listAt(bench.value, 'job', 'mask.follows').map(String);
  const follows = (name: string): boolean => chosen.length === 0 || chosen.includes(name);
  const turn = (name: string) => {
    const next = all.map((one) => one.name).filter((one) => (one === name ? !follows(one) : follows(one)));
    // It has to follow something.
    if (next.length > 0) setField('job', 'mask.follows', next.length === all.length ? undefined : next);
  };
  return (
    <fieldset class="choice">
      <legend>It follows</legend>
      <div class="button-row">
        {all.map(({ name, says }) => (
          <label class="tick" key={name}>
            <input type="checkbox" checked={follows(name)} onChange={() => turn(name)} />
            {says}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

export function MaskGroup() {
  if (motifs().length === 0 && valueAt(bench.value.job, 'mask') === undefined) return null;
  const begun = { covers: 'lip', standOff: lengthInFile(first.standOff, jobUnits()) };
  return (
    <Wanted
      path="mask"
      says="A mask that follows the motifs, to spray beside them"
      help="mask"
      begun={begun}
      unseen={['follows']}
    >
      <ChoiceField
        half="job"
        path="mask.covers"
        label="It covers the wall"
        help="mask"
        standard="lip"
        options={[
          { value: 'lip', label: 'Up to the lip', says: 'from the upper edge of the motifs' },
          { value: 'foot', label: 'Down to the foot', says: 'from their lower edge' },
        ]}
      />
      <Follows />
      <div class="field-pair">
        <LengthField half="job" path="mask.standOff" label="Stays away" help="standOff" required />
        <LengthField half="job" path="mask.smooth" label="Rounded to" help="maskSmooth" standard="0" />
      </div>
      <Wanted
        path="mask.window"
        says="And a window: film with openings to spray through"
        help="maskWindow"
        begun={{ grow: lengthInFile(first.grow, jobUnits()) }}
      >
        <div class="field-pair">
          <LengthField half="job" path="mask.window.grow" label="Past the edge" help="maskWindow" required />
        </div>
      </Wanted>
      <div class="button-row">
        <ColourField half="job" path="mask.sprayed" label="Spray" standard="#7d9aa5" />
        <ColourField half="job" path="mask.film" label="Film of the mask" standard="#e8d9a0" />
      </div>
      <p class="caution" role="note">
        <strong>Take care.</strong> Spray and solvents: fresh air, gloves and breathing protection that suit
        the product. Its own sheet and your local rules come first.
      </p>
    </Wanted>
  );
}
