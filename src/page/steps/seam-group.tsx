// How the two ends of the wrap meet, and what is cut away after laying.
import { isObject, type Json, valueAt, withField } from '../model/bench.ts';
import { ChoiceField, LengthField } from '../parts/field.tsx';
import { bench, change, hasArtwork } from '../store.ts';

/** What each style of seam can have beside it. */
const takes: Readonly<Record<string, readonly string[]>> = {
  overlap: ['overlap', 'hold', 'top'],
  'cut-through': ['overlap'],
  butt: [],
  strip: ['strip', 'hold'],
  winding: ['overlap', 'hold'],
};

/** Another style takes along only what it can have. */
function chooseStyle(value: Json | undefined): void {
  const style = typeof value === 'string' ? value : 'overlap';
  const seam = valueAt(bench.value.job, 'seam');
  const kept = Object.entries(isObject(seam) ? seam : {}).filter(([key]) => takes[style]?.includes(key));
  const next = { ...Object.fromEntries(kept), style };
  change(withField(bench.value, 'job', 'seam', next), 'job:seam.style');
}

export function SeamGroup() {
  const isGores = valueAt(bench.value.job, 'pieces') === 'gores';
  const style = valueAt(bench.value.job, 'seam.style') ?? (isGores ? 'butt' : 'overlap');
  const has = (key: string): boolean => takes[String(style)]?.includes(key) === true;
  return (
    <>
      <h3 class="group-head">Seam</h3>
      <ChoiceField
        half="job"
        path="seam.style"
        label="How the ends meet"
        help="seam"
        standard={isGores ? 'butt' : 'overlap'}
        choose={chooseStyle}
        options={[
          {
            value: 'overlap',
            label: 'Overlap',
            says: 'the end lies on the beginning',
            picture: <SeamPicture kind="overlap" />,
          },
          { value: 'butt', label: 'Butt', says: 'edge to edge', picture: <SeamPicture kind="butt" /> },
          {
            value: 'cut-through',
            label: 'Cut through',
            says: 'overlapped, then both cut at once',
            picture: <SeamPicture kind="cut-through" />,
          },
          {
            value: 'strip',
            label: 'Strip',
            says: 'edge to edge, a strip over it',
            picture: <SeamPicture kind="strip" />,
          },
          {
            value: 'winding',
            label: 'Winding',
            says: 'through the gaps of the pattern',
            picture: <SeamPicture kind="winding" />,
          },
        ].filter(({ value }) => !isGores || value === 'overlap' || value === 'butt')}
      />
      {has('top') ? (
        <ChoiceField
          half="job"
          path="seam.top"
          label="The end on top"
          help="seamTop"
          standard="finish"
          options={[
            { value: undefined, label: 'The finish', says: 'its edge shows past the seam line' },
            { value: 'start', label: 'The start', says: 'its edge shows on the seam line' },
          ]}
        />
      ) : null}
      {hasArtwork.value && (isGores || style !== 'winding') ? (
        <ChoiceField
          half="job"
          path="artwork.seamAt"
          label="The pattern begins"
          help="seamAt"
          standard="edge"
          options={[
            { value: undefined, label: 'At its edge', says: 'a crop where the seam cuts least' },
            { value: 'gaps', label: 'Where the seam cuts least', says: 'through the gaps of the pattern' },
          ]}
        />
      ) : null}
      <div class="field-pair">
        {has('overlap') ? (
          <LengthField half="job" path="seam.overlap" label="Overlap" help="overlap" standard="6 mm" />
        ) : null}
        {has('strip') ? (
          <LengthField half="job" path="seam.strip" label="Strip is wide" help="strip" standard="10 mm" />
        ) : null}
        {has('hold') ? (
          <LengthField half="job" path="seam.hold" label="Must hold on" help="hold" standard="not asked" />
        ) : null}
        <LengthField half="job" path="trim.lip" label="Trim at the lip" help="trim" standard="3 mm" />
        <LengthField half="job" path="trim.foot" label="Trim at the foot" help="trim" standard="3 mm" />
      </div>
    </>
  );
}

type Kind = 'overlap' | 'butt' | 'cut-through' | 'strip' | 'winding';

/** The two ends in section, of a winding seam from the front; what is asked for besides in the strong colour. */
const pictures: Readonly<Record<Kind, { readonly body: string; readonly read?: string }>> = {
  overlap: { body: 'M4 28H40M28 20H60' },
  butt: { body: 'M4 24H31M33 24H60' },
  'cut-through': { body: 'M4 30H40M24 22H60', read: 'M32 8V42' },
  strip: { body: 'M4 28H31M33 28H60', read: 'M20 20H44' },
  winding: { body: 'M30 4C44 14 44 20 32 26S22 40 34 46' },
};

const SeamPicture = ({ kind }: { readonly kind: Kind }) => (
  <svg class="choice-picture" viewBox="0 0 64 48" aria-hidden="true">
    <path class="pic-body" d={pictures[kind].body} />
    {pictures[kind].read ? <path class="pic-read" d={pictures[kind].read} /> : null}
  </svg>
);
