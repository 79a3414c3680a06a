// The film: which one, or its thickness and what it allows; what a strip of it told; what of it stays on the vessel.
import { stripLength } from '../../job/typed/film-giving.ts';
import { measuredLength } from '../../lengths/length.ts';
import { valueAt } from '../model/bench.ts';
import { filmInWords, filmOf, filmTyped } from '../model/film-file.ts';
import { ChoiceField, FieldFindings, LengthField, NumberField } from '../parts/field.tsx';
import { MaterialPick } from '../parts/material-pick.tsx';
import { bench, findingsAt, setField } from '../store.ts';

export function FilmGroup() {
  const isFilmFile = typeof bench.value.job.film === 'string';
  return (
    <>
      <h3 class="group-head">Film</h3>
      <MaterialPick kind="film" label="Which film" />
      {isFilmFile ? (
        <FilmOfFile />
      ) : (
        <>
          <div class="field-pair">
            <LengthField
              half="job"
              path="film.thickness"
              label="Film thickness"
              help="film"
              standard="0.08 mm"
            />
            <NumberField
              half="job"
              path="film.stretch"
              label="It stretches by"
              unit="of 1"
              help="stretch"
              standard="0"
            />
          </div>
          <Strip />
          <details class="more">
            <summary>What it can stand</summary>
            <div class="field-pair">
              <LengthField
                half="job"
                path="film.minWidth"
                label="Thinnest film"
                help="thinnest"
                standard="1 mm"
              />
              <LengthField
                half="job"
                path="film.minGap"
                label="Narrowest gap"
                help="thinnest"
                standard="0.4 mm"
              />
              <NumberField
                half="job"
                path="film.minPiece"
                label="Smallest piece"
                help="smallest"
                unit="mm²"
                standard="4"
              />
              <NumberField
                half="job"
                path="film.gather"
                label="It gathers by"
                unit="of 1"
                help="gather"
                standard="0"
              />
            </div>
            <ChoiceField
              half="job"
              path="film.grain"
              label="Its grain runs"
              help="grain"
              standard=""
              options={[
                { value: undefined, label: 'No matter' },
                { value: 'across', label: 'Across', says: 'along the width of the sheet' },
                { value: 'up', label: 'Up', says: 'along its length' },
              ]}
            />
          </details>
          <ChoiceField
            half="job"
            path="film.use"
            label="What stays on the vessel"
            standard="decal"
            options={[
              { value: undefined, label: 'The artwork', says: 'a decal' },
              { value: 'mask', label: 'All around it', says: 'a mask, pulled after the spray' },
            ]}
          />
        </>
      )}
    </>
  );
}

/** What the film's file has, so that a maker sees what is reckoned with; and a way to go on from it. */
function FilmOfFile() {
  const film = filmOf(bench.value);
  if (!film) return null;
  return (
    <>
      <p class="aside">{filmInWords(film, bench.value.units)}</p>
      <button type="button" class="plain" onClick={() => setField('job', 'film', filmTyped(film))}>
        Type these figures here
      </button>
    </>
  );
}

/** What the marks of the film's test strip came out as. Gores are laid without a pull: they take none. */
function Strip() {
  const { job, units } = bench.value;
  if (valueAt(job, 'pieces') === 'gores' && valueAt(job, 'film.measured') === undefined) return null;
  const drawn = measuredLength(stripLength, units);
  const said = findingsAt('job', 'film.measured').filter(({ where }) => where.key === 'film.measured');
  return (
    <>
      <LengthField
        half="job"
        path="film.measured.laid"
        label={`Its test strip, ${drawn} drawn, came out as`}
        help="testStrip"
        standard={drawn}
      />
      <FieldFindings id="strip-says" found={said} />
    </>
  );
}
