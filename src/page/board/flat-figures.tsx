// What the flat drawing says in words: what is measured, moved or pointed at; else what piece it is.
import { measuredLength } from '../../lengths/length.ts';
import { bench, flat, flatLaid, followed, isStillToGive, shownPlace } from '../store.ts';
import { cutInWords } from './cut-in-words.ts';
import { DragInWords } from './drag-words.tsx';
import { dragged } from './motif-drag.ts';
import { PlaceInWords } from './place-words.tsx';
import type { FlatWindow } from './use-flat-window.ts';

export function FlatFigures({ measuring, measured }: Pick<FlatWindow, 'measuring' | 'measured'>) {
  const place = shownPlace.value;
  const { from, to } = measured.value;
  const distance = from && to && Math.hypot(to.x - from.x, to.y - from.y);
  // Read out once the job is laid, not at every key: what is busy waits.
  return (
    <p class="board-figures" id="flat-figures" aria-live="polite" aria-busy={flat.value.busy}>
      {measuring.value && distance === undefined
        ? from
          ? 'Now the second point (or Enter for the middle of the window).'
          : 'Measure: point at the first place (or Enter for the middle of the window).'
        : null}
      {distance === undefined
        ? null
        : `${measuredLength(distance, bench.value.units)} on the flat sheet, point to point.`}
      {dragged.value ? <DragInWords dragged={dragged.value} /> : null}
      {!measuring.value && !dragged.value && place ? <PlaceInWords place={place} /> : null}
      {!measuring.value && !place ? <FlatSummary /> : null}
    </p>
  );
}

function FlatSummary() {
  const { refused } = flat.value;
  const template = followed.value?.template ?? flatLaid.value?.report.template;
  if (refused?.every(isStillToGive) && template)
    return <>This is how it was before: a field is still to be filled in.</>;
  if (refused && !refused.every(isStillToGive))
    return (
      <>
        {template ? 'This is how it was before. It is not laid anew' : 'It is not laid'}: step 4 says what
        stands against it.
      </>
    );
  if (!template)
    return flat.value.busy ? (
      <>Laying it flat…</>
    ) : (
      <>Type the vessel’s readings, and its template is drawn here.</>
    );
  return <>{cutInWords(template, bench.value.units)}</>;
}
