// The ways a pattern can close on the vessel, as pictures to pick from.
import { useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { isObject, valueAt, withField } from '../model/bench.ts';
import type { WaysAnswer } from '../model/messages.ts';
import { FieldFindings } from '../parts/field.tsx';
import { Help, helpKey } from '../parts/help.tsx';
import { inPlainWords } from '../parts/plain-words.ts';
import { usePicture } from '../parts/use-picture.ts';
import { bench, change, ways } from '../store.ts';
import { drawNext, pictureOf, wantPicture } from './way-pictures.ts';

type Way = WaysAnswer['ways'][number];

/** The way that is laid: the one named by key or number, or the one that is taken unasked. */
function chosenKey(): string | undefined {
  const way = valueAt(bench.value.job, 'artwork.way');
  const { answer } = ways.value;
  if (typeof way === 'string') return way;
  if (typeof way === 'number') return answer?.ways[way - 1]?.key;
  return valueAt(bench.value.job, 'artwork.around') === undefined ? (answer?.taken ?? undefined) : undefined;
}

/** So many of the best are seen at once; the rest is a press away. */
const shownWays = 4;

export function Ways() {
  useSignalEffect(drawNext);
  const { answer, refused, busy } = ways.value;
  // What is said of the file itself stands beside it.
  const ofWays = refused?.filter(({ where }) => where.file !== valueAt(bench.value.job, 'artwork.file'));
  if (ofWays && !answer) return <FieldFindings id="ways-says" found={ofWays} />;
  if (!answer) return <p class="aside">{busy ? 'Looking at how it repeats…' : ''}</p>;
  const key = chosenKey();
  const pick = (way: string) => {
    const artwork = valueAt(bench.value.job, 'artwork');
    const { around: _, ...rest } = isObject(artwork) ? artwork : {};
    change(withField(bench.value, 'job', 'artwork', { ...rest, way }), 'job:artwork.way');
  };
  const card = (way: Way) => (
    <WayCard key={way.key} way={way} isChosen={way.key === key} pick={() => pick(way.key)} />
  );
  const more = answer.ways.slice(shownWays);
  return (
    <fieldset class="choice ways" aria-label="Ways it can close">
      <legend>
        Ways it can close <Help about="ways" label="Ways it can close" byKey />
      </legend>
      <ul class="told">
        {answer.lines.map((line) => (
          <li key={line}>{inPlainWords(line, 'artwork.way')}</li>
        ))}
      </ul>
      {key === undefined && !answer.joins ? (
        <p class="says-look">As drawn it does not meet around this vessel: pick one of these ways.</p>
      ) : null}
      {key === undefined && answer.joins ? (
        <p class="aside">“Repeats around”, above, is laid as typed; a way that is picked takes its place.</p>
      ) : null}
      {answer.ways.slice(0, shownWays).map(card)}
      {more.length > 0 ? (
        <details class="more ways-more" open={more.some((way) => way.key === key)}>
          <summary>
            {more.length} more, which {more.length === 1 ? 'changes' : 'change'} the pattern more
          </summary>
          <div class="ways">{more.map(card)}</div>
        </details>
      ) : null}
    </fieldset>
  );
}

interface WayCardProps {
  readonly way: Way;
  readonly isChosen: boolean;
  readonly pick: () => void;
}

function WayCard({ way, isChosen, pick }: WayCardProps) {
  const card = useRef<HTMLLabelElement>(null);
  useEffect(() => {
    const { current } = card;
    if (!current) return undefined;
    const watch = new IntersectionObserver((seen) => {
      for (const { isIntersecting } of seen) wantPicture(way.key, isIntersecting);
    });
    watch.observe(current);
    return () => {
      watch.disconnect();
      wantPicture(way.key, false);
    };
  }, [way.key]);
  const { label, more } = inShort(way);
  return (
    <label class="way-card" ref={card}>
      <input type="radio" name="way" checked={isChosen} aria-keyshortcuts={helpKey} onChange={pick} />
      <WayOnVessel way={way} />
      <span>
        <span class="choice-label">{label}</span>
        <span class="choice-says">
          <span class="unseen">: </span>
          {more}
        </span>
      </span>
    </label>
  );
}

/** The vessel with it, from the front and at its seam. */
function WayOnVessel({ way }: { readonly way: Way }) {
  const picture = pictureOf(way.key);
  const address = usePicture(picture && 'svg' in picture ? picture.svg : undefined);
  return (
    <span class="way-picture">
      {address ? <img src={address} alt="" /> : null}
      {picture ? null : (
        <span class="aside" aria-hidden="true">
          drawing…
        </span>
      )}
      {picture && 'missing' in picture ? <span class="aside">{picture.missing}</span> : null}
    </span>
  );
}

/** What the engine says of it, parted where it has said how many go around. */
function inShort({ around, says }: Way): { readonly label: string; readonly more: string } {
  const label = `${around} around`;
  return { label, more: says.startsWith(label) ? says.slice(label.length).replace(/^[;,]? /, '') : says };
}
