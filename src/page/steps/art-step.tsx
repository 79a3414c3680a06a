// Step 2: the artwork, how it repeats, and the ways it can close.
import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Finding } from '../../finding.ts';
import { valueAt } from '../model/bench.ts';
import { openFiles } from '../opening.ts';
import { ChoiceField, FieldFindings, LengthField, NumberField, TickField } from '../parts/field.tsx';
import { drawings } from '../parts/file-button.tsx';
import { Help } from '../parts/help.tsx';
import { artOfSample, sampleArt } from '../samples.ts';
import { taken } from '../save.ts';
import { bench, findings, findingsAt, flat, hasArtwork, setField } from '../store.ts';
import { FontsGroup } from './fonts-group.tsx';
import { GroundGroup } from './ground-group.tsx';
import { ItemsGroup } from './items-group.tsx';
import { LayersGroup } from './layers-group.tsx';
import { LetteringGroup } from './lettering-group.tsx';
import { OverGroup } from './over-group.tsx';
import { Ways } from './ways.tsx';

function ArtPicker() {
  const input = useRef<HTMLInputElement>(null);
  const isOver = useSignal(false);
  const file = valueAt(bench.value.job, 'artwork.file');
  return (
    <section
      aria-label="Artwork file"
      class={isOver.value ? 'drop drop-over' : 'drop'}
      onDragOver={(event) => {
        event.preventDefault();
        isOver.value = true;
      }}
      onDragLeave={() => {
        isOver.value = false;
      }}
      onDrop={async (event) => {
        event.preventDefault();
        event.stopPropagation();
        isOver.value = false;
        await openFiles(taken(event.dataTransfer?.files ?? []), 'artwork', 'artwork');
      }}
    >
      <p class="drop-says">
        {typeof file === 'string' ? (
          <>
            <strong>{file}</strong> is {flat.value.refused ? 'not laid yet' : 'laid'}.
          </>
        ) : (
          'Drop an SVG, PNG or JPEG here, or choose one.'
        )}
      </p>
      <input
        ref={input}
        class="unseen"
        id="art-file"
        type="file"
        accept={drawings}
        aria-label="Artwork file"
        tabIndex={-1}
        // The button below opens it.
        aria-hidden="true"
        onChange={async (event) => {
          const picker = event.currentTarget;
          await openFiles(taken(picker.files ?? []), 'artwork', 'artwork');
          picker.value = '';
        }}
      />
      <div class="button-row">
        <button type="button" class="plain" onClick={() => input.current?.click()}>
          {file ? 'Another file' : 'Choose a file'}
        </button>
        {file ? (
          <button type="button" class="quiet" onClick={() => setField('job', 'artwork', undefined)}>
            No artwork
          </button>
        ) : null}
      </div>
      <fieldset class="button-row">
        <legend class="unseen">Artwork from the samples</legend>
        <span class="aside" aria-hidden="true">
          Samples:
        </span>
        {sampleArt.map((sample) => (
          <button
            key={sample.file}
            type="button"
            class="quiet"
            onClick={() => openFiles(artOfSample(sample), sample.label, 'artwork')}
          >
            {sample.label}
          </button>
        ))}
      </fieldset>
    </section>
  );
}

export const ArtStep = () => (
  <>
    <h3 class="group-head">Pattern all around</h3>
    <ArtPicker />
    {hasArtwork.value ? (
      <PatternFields />
    ) : (
      <>
        <p class="aside">
          Without artwork the template stays plain: wrap it in paper first and see whether it fits.
        </p>
        {/* What was said of the films of an artwork before would stand against the job unseen. */}
        {valueAt(bench.value.job, 'layers') === undefined ? null : <LayersGroup />}
      </>
    )}
    <ItemsGroup />
    <LetteringGroup />
  </>
);

const isPicture = (file: unknown): boolean => typeof file === 'string' && /\.(png|jpe?g)$/i.test(file);

/** What keeps the drawing from being laid: it is said of its file, which is no field. */
const stopsOf = (file: unknown): readonly Finding[] =>
  findings.value.filter(({ level, where }) => level === 'stop' && where.file === file);

const DrawingAcross = () => (
  <LengthField
    half="job"
    path="artwork.across"
    label="Drawing across"
    help="artAcross"
    standard="as its file says"
  />
);

/** A picture mostly does not say how large it is, nor in how many colours: that is asked first. */
const PictureFields = () => (
  <div class="field-pair">
    <DrawingAcross />
    <NumberField
      half="job"
      path="artwork.colours"
      label="Colours"
      help="colours"
      standard="as many as it has"
    />
  </div>
);

function PatternFields() {
  const file = valueAt(bench.value.job, 'artwork.file');
  return (
    <>
      <FieldFindings id="art-says" found={[...findingsAt('job', 'artwork.file'), ...stopsOf(file)]} />
      {isPicture(file) ? <PictureFields /> : null}
      <ChoiceField
        half="job"
        path="artwork.lay"
        label="On a taper, keep"
        help="lay"
        standard="even"
        options={[
          { value: 'even', label: 'Rows even', says: 'motifs widen with the girth' },
          { value: 'conformal', label: 'True angles', says: 'motifs grow with the girth' },
          { value: 'rigid', label: 'Motifs whole', says: 'only the room between them changes' },
        ]}
      />
      <div class="field-pair">
        <NumberField half="job" path="artwork.around" label="Repeats around" help="around" standard="best" />
        <LengthField half="job" path="artwork.repeat.drop" label="Drop" help="drop" standard="0" />
      </div>
      <details class="more">
        <summary>The repeat’s own size</summary>
        <div class="field-pair">
          <LengthField
            half="job"
            path="artwork.repeat.across"
            label="Across"
            help="repeat"
            standard="as drawn"
          />
          <LengthField half="job" path="artwork.repeat.up" label="Up" help="repeat" standard="as drawn" />
          <LengthField half="job" path="artwork.repeat.shift" label="Shift" help="shift" standard="0" />
          {isPicture(file) ? null : <DrawingAcross />}
        </div>
      </details>
      <div class="tick-help">
        <TickField half="job" path="artwork.mend" label="Mend what can’t be cut" />
        <Help about="mend" label="Mend" byKey />
      </div>
      <GroundGroup />
      <OverGroup />
      <FontsGroup />
      <Ways />
      <LayersGroup />
    </>
  );
}
