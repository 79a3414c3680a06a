// Step 1: the vessel, by its readings from the foot up.
import { goOnIn, goTo } from '../going.ts';
import { isObject, listAt, valueAt, withField, withItem, withoutItem } from '../model/bench.ts';
import { ChoiceField, FieldFindings, LengthField, TextField } from '../parts/field.tsx';
import { inPlainWords, nameOfStation } from '../parts/plain-words.ts';
import { WallPicture } from '../parts/wall-pictures.tsx';
import { bench, change, findingsAt, setField, vessel } from '../store.ts';
import { FitGroup } from './fit-group.tsx';
import { KeepOutGroup } from './keep-out-group.tsx';
import { Shelf } from './shelf.tsx';

/** How a place's height is read: upright, or along the wall. */
type Upward = 'height' | 'along';
type Around = 'across' | 'girth';

function StationRow({ index, count }: { readonly index: number; readonly count: number }) {
  const path = `stations[${index}]`;
  const { blank } = bench.value;
  const upward: Upward =
    valueAt(blank, `${path}.along`) !== undefined && valueAt(blank, `${path}.height`) === undefined
      ? 'along'
      : 'height';
  const around: Around = valueAt(blank, `${path}.girth`) !== undefined ? 'girth' : lastAround(index);
  const name = nameOfStation(index);
  return (
    <li class="station">
      <fieldset class="station-group" aria-label={`${name}, the reading`}>
        <div class="station-head">
          <h4>{name}</h4>
          {count > 2 ? (
            <button
              type="button"
              class="quiet"
              onClick={() =>
                change(withoutItem(bench.value, 'blank', 'stations', index), `remove station ${index}`)
              }
            >
              Remove <span class="unseen">the reading {name}</span>
            </button>
          ) : null}
        </div>
        <div class="station-fields">
          <LengthField
            half="blank"
            path={`${path}.${upward}`}
            label={upward === 'height' ? 'Height' : 'Along the wall'}
            help={upward}
            required
          />
          <LengthField
            half="blank"
            path={`${path}.${around}`}
            label={around === 'across' ? 'Across' : 'Girth'}
            help={around}
            required
          />
        </div>
        <p class="station-swap">
          {index > 0 ? (
            <Swap
              path={path}
              from={upward}
              to={upward === 'height' ? 'along' : 'height'}
              says={upward === 'height' ? 'I read along the wall' : 'I read the height'}
              name={name}
            />
          ) : null}
          <Swap
            path={path}
            from={around}
            to={around === 'across' ? 'girth' : 'across'}
            says={around === 'across' ? 'I read the girth' : 'I read across'}
            name={name}
          />
        </p>
      </fieldset>
    </li>
  );
}

/** Nothing typed yet: the foot is mostly read across, for a tape slips off it; the lip around. */
const lastAround = (index: number): Around =>
  index > 0 && valueAt(bench.value.blank, `stations[${index}].across`) === undefined ? 'girth' : 'across';

interface SwapProps {
  readonly path: string;
  readonly from: Upward | Around;
  readonly to: Upward | Around;
  readonly says: string;
  readonly name: string;
}

/** Turns one kind of reading into the other; what was typed would be wrong there, so the field starts empty. */
function Swap({ path, from, to, says, name }: SwapProps) {
  const swap = () => {
    const station = valueAt(bench.value.blank, path);
    const { [from]: _, ...rest } = isObject(station) ? station : {};
    change(withField(bench.value, 'blank', path, { ...rest, [to]: '' }), `swap ${path}`);
    goOnIn(`blank:${path}.${to}`);
  };
  return (
    <button type="button" class="quiet" onClick={swap}>
      {says} <span class="unseen">at the reading {name}</span>
    </button>
  );
}

/** What kind of wall it is. */
const WallKind = () => (
  <ChoiceField
    half="blank"
    path="wall"
    label="Its wall"
    help="wallKind"
    standard="straight"
    options={[
      {
        value: 'straight',
        label: 'Straight',
        says: 'upright or tapered',
        picture: <WallPicture kind="straight" />,
      },
      {
        value: 'stepped',
        label: 'Stepped',
        says: 'straight stretches',
        picture: <WallPicture kind="stepped" />,
      },
      {
        value: 'smooth',
        label: 'Smooth',
        says: 'bends all the way',
        picture: <WallPicture kind="smooth" />,
      },
    ]}
  />
);

/** The readings, one a row, and room for more between them. */
function Readings() {
  const stations = listAt(bench.value, 'blank', 'stations');
  const addBetween = () => {
    const between = stations.length - 1;
    change(withItem(bench.value, 'blank', 'stations', {}, between), 'add station');
    goTo(`blank:stations[${between}]`);
  };
  return (
    <>
      <h3 class="group-head">Readings, from the foot up</h3>
      <p class="aside">
        Lengths such as <kbd>62</kbd>, <kbd>8.6cm</kbd> or <kbd>2 7/16in</kbd>. Read to the sharp corners, as
        if the edges were not rounded.
      </p>
      <ol class="stations">
        {stations.map((_, i) => (
          <StationRow key={i} index={i} count={stations.length} />
        ))}
      </ol>
      <button type="button" class="plain" onClick={addBetween}>
        Add a reading between
      </button>
      <FieldFindings
        id="stations-says"
        found={findingsAt('blank', 'stations').filter(({ where }) => where.key === 'stations')}
      />
    </>
  );
}

/** Whether it has a handle; and if so, how wide. */
function Handle() {
  const hasHandle = valueAt(bench.value.blank, 'handle') !== undefined;
  return (
    <>
      <label class="tick">
        <input
          type="checkbox"
          checked={hasHandle}
          onChange={() => setField('blank', 'handle', hasHandle ? undefined : { spans: '' })}
        />
        It has a handle
      </label>
      {hasHandle ? (
        <div class="field-pair">
          <LengthField half="blank" path="handle.spans" label="The handle takes" help="handle" required />
          <LengthField half="blank" path="handle.keepOff" label="Keep off it" help="keepOff" standard="0" />
        </div>
      ) : null}
    </>
  );
}

/** What it is for, and how it stands. */
const Standing = () => (
  <>
    <ChoiceField
      half="blank"
      path="use"
      label="Drunk from?"
      help="use"
      standard="drinking"
      options={[
        { value: undefined, label: 'Yes, lips touch it' },
        { value: 'other', label: 'No' },
      ]}
    />
    <ChoiceField
      half="job"
      path="shown"
      label="Seen standing"
      help="shown"
      standard="upright"
      options={[
        { value: undefined, label: 'On its foot' },
        { value: 'upside-down', label: 'On its lip', says: 'upside down' },
      ]}
    />
  </>
);

const HowWellRead = () => (
  <details class="more">
    <summary>How well you read</summary>
    <div class="field-pair">
      <LengthField
        half="blank"
        path="reading"
        label="One reading is sure to"
        help="reading"
        standard="0.5 mm"
      />
      <LengthField half="blank" path="tape" label="Tape is thick" help="tape" standard="0" />
      <LengthField
        half="blank"
        path="heightReading"
        label="A height is sure to"
        help="reading"
        standard="taken as exact"
      />
    </div>
  </details>
);

/** What is told of a wall at once; the rest is a press away. */
const shownLines = 3;

/** What the engine makes of the readings. */
function ReadingsSay() {
  const { answer, refused } = vessel.value;
  if (!answer || refused) return null;
  const lines = answer.lines.slice(1);
  return (
    <div class="told">
      <h3 class="group-head">What the readings say</h3>
      <ul>
        <Told lines={lines.slice(0, shownLines)} />
      </ul>
      {lines.length > shownLines ? (
        <details class="more">
          <summary>All of it, with how sure each figure is</summary>
          <ul>
            <Told lines={lines.slice(shownLines)} />
          </ul>
        </details>
      ) : null}
    </div>
  );
}

const Told = ({ lines }: { readonly lines: readonly string[] }) => (
  <>
    {lines.map((line) => (
      <li key={line}>{inPlainWords(line)}</li>
    ))}
  </>
);

export const VesselStep = () => (
  <>
    <Shelf />
    <TextField half="blank" path="name" label="What vessel is it?" />
    <WallKind />
    <Readings />
    <div class="field-pair">
      <LengthField half="blank" path="footRound" label="Foot round" help="footRound" standard="0" />
      <LengthField half="blank" path="lipRound" label="Lip round" help="lipRound" standard="0" />
    </div>
    <Handle />
    <Standing />
    <KeepOutGroup />
    <FitGroup />
    <HowWellRead />
    <ReadingsSay />
  </>
);
