// Colours of the vessel, its coats and its layers; which of them are seen; and how colour comes onto it.

import { colourWords } from '../../job/artwork/colour-words.ts';
import type { Manner } from '../model/colours.ts';
import type { SolidSeen } from '../model/messages.ts';
import { colour, coloursOf, isColouring, looks, mannerOf, maskNames, mostBlended, show } from './looks.ts';

interface ColourFieldProps {
  readonly label: string;
  readonly value: string;
  readonly choose: (colour: string) => void;
}

const ColourField = ({ label, value, choose }: ColourFieldProps) => (
  <label>
    <input type="color" value={value} onInput={({ currentTarget }) => choose(currentTarget.value)} />
    {label}
  </label>
);

const manners: readonly { readonly manner: Manner; readonly label: string }[] = [
  { manner: 'cut', label: 'Cut from film' },
  { manner: 'print', label: 'Printed on film' },
  { manner: 'mask', label: 'Sprayed through a mask' },
];

const words: Readonly<Record<Manner, string>> = { cut: 'Film', print: 'Print', mask: 'Spray' };

interface ShownTickProps {
  readonly label: string;
  readonly isShown: boolean;
  readonly toggle: () => void;
}

const ShownTick = ({ label, isShown, toggle }: ShownTickProps) => (
  <label>
    <input type="checkbox" checked={isShown} onChange={toggle} />
    {label}
  </label>
);

/** A layer's colours from the foot up: several only of a spray, which is blended along the wall. */
function LayerColours({
  layer,
  manner,
}: {
  readonly layer: Pick<SolidSeen['layers'][number], 'name' | 'colour'>;
  readonly manner: Manner;
}) {
  const { hidden } = looks.value;
  const { name } = layer;
  const colours = coloursOf(looks.value, layer);
  const shown = manner === 'mask' ? colours : colours.slice(0, 1);
  const set = (next: readonly string[], at = `of ${next.length}`) =>
    colour({ layers: { ...looks.value.layers, [name]: next } }, `${name} ${at}`);
  const isHidden = hidden.includes(name);
  return (
    <fieldset class="layer-colours">
      <legend class="unseen">
        {words[manner]} {name}, drawn in {colourWords(layer.colour)}
      </legend>
      {shown.map((each, i) => (
        <ColourField
          key={i}
          label={i === 0 ? `${words[manner]} ${name}` : `and up the wall, ${i + 1}`}
          value={each}
          choose={(chosen) => set(colours.with(i, chosen), String(i))}
        />
      ))}
      {manner === 'mask' ? (
        <div class="button-row">
          {colours.length < mostBlended ? (
            <button
              type="button"
              class="quiet"
              onClick={() => set([...colours, colours.at(-1) ?? layer.colour])}
            >
              Blend into another <span class="unseen">colour, spray {name}</span>
            </button>
          ) : null}
          {colours.length > 1 ? (
            <button type="button" class="quiet" onClick={() => set(colours.slice(0, -1))}>
              One less <span class="unseen">colour, spray {name}</span>
            </button>
          ) : null}
        </div>
      ) : null}
      <ShownTick
        label={`Show ${name}`}
        isShown={!isHidden}
        toggle={() => show({ hidden: isHidden ? hidden.filter((one) => one !== name) : [...hidden, name] })}
      />
    </fieldset>
  );
}

/** What opens the panel is where the hand goes on when it is closed. */
function close(): void {
  isColouring.value = false;
  document.querySelector<HTMLElement>('[aria-controls="vessel-colours"]')?.focus();
}

export function ColourPanel({ solid }: { readonly solid: SolidSeen }) {
  const { blank, coat, film, isCoatShown } = looks.value;
  const manner = mannerOf(looks.value, solid.use);
  return (
    <section
      class="colour-panel"
      id="vessel-colours"
      aria-label="Colours of the vessel"
      onKeyDown={({ key }) => {
        if (key === 'Escape') close();
      }}
    >
      {/* Where the panel lies over the steps: it says what it is, and how to come back to them. */}
      <div class="colour-head">
        <b>The vessel’s colours</b>
        <button type="button" class="tool" onClick={close}>
          Done <span class="unseen">with colours</span>
        </button>
      </div>
      <fieldset>
        <legend class="unseen">How colour comes onto it</legend>
        {manners.map(({ manner: one, label }) => (
          <label key={one}>
            <input
              type="radio"
              name="manner"
              checked={one === manner}
              onChange={() => colour({ manner: one }, 'manner')}
            />
            {label}
          </label>
        ))}
      </fieldset>
      <ColourField label="Vessel" value={blank} choose={(chosen) => colour({ blank: chosen }, 'blank')} />
      {solid.coats.length > 0 ? (
        <>
          <ColourField label="Coat" value={coat} choose={(chosen) => colour({ coat: chosen }, 'coat')} />
          <ShownTick
            label="Show coats"
            isShown={isCoatShown}
            toggle={() => show({ isCoatShown: !isCoatShown })}
          />
        </>
      ) : null}
      {manner === 'cut' ? null : (
        <ColourField
          label={manner === 'print' ? 'Film under the print' : 'Mask'}
          value={film}
          choose={(chosen) => colour({ film: chosen }, 'film')}
        />
      )}
      {solid.layers.map((layer) => (
        <LayerColours key={layer.name} layer={layer} manner={manner} />
      ))}
      {solid.mask ? <MaskColours mask={solid.mask} /> : null}
      <p class="aside">Colours on a screen only: no film or coat is matched by them.</p>
    </section>
  );
}

/** Of a job's own mask: what it is cut from, and what is sprayed around it. */
function MaskColours({ mask }: { readonly mask: NonNullable<SolidSeen['mask']> }) {
  const { film, spray } = maskNames;
  const [shown = mask.film] = coloursOf(looks.value, { name: film, colour: mask.film });
  return (
    <>
      <ColourField
        label="Mask"
        value={shown}
        choose={(chosen) => colour({ layers: { ...looks.value.layers, [film]: [chosen] } }, film)}
      />
      <LayerColours layer={{ name: spray, colour: mask.sprayed }} manner="mask" />
    </>
  );
}
