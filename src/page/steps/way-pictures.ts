// Pictures of the ways a pattern can close: each is drawn once its card is in sight, one after the other, and kept.
import { signal } from '@preact/signals';
import type { WayPicture } from '../../job/repeat/ways-picture.ts';
import { type Bench, isObject, valueAt } from '../model/bench.ts';
import { bench, drawingWay, slow, ways } from '../store.ts';

interface Drawn {
  /** What they are pictures of. */
  readonly of: string;
  readonly art: Uint8Array | undefined;
  readonly pictures: ReadonlyMap<string, WayPicture>;
}

const drawn = signal<Drawn>({ of: '', art: undefined, pictures: new Map() });
/** Keys of the ways whose cards are in sight. */
const wanted = signal<ReadonlySet<string>>(new Set());

/** All that a picture of a way shows: the way that is chosen, and what lies on the pattern, are not of it. */
function shownOf({ job, blank, files, units }: Bench): Pick<Drawn, 'of' | 'art'> {
  const { artwork, items: _, lettering: __, layers: ___, name: ____, ...rest } = job;
  const { way: _____, around: ______, ...art } = isObject(artwork) ? artwork : {};
  return {
    of: JSON.stringify([blank, rest, art, units]),
    art: files[String(valueAt(job, 'artwork.file'))],
  };
}

const isOf = (now: Pick<Drawn, 'of' | 'art'>, { of, art }: Drawn): boolean =>
  now.of === of && now.art === art;

/** The picture of a way of what lies on the bench; undefined while it is not drawn. */
export function pictureOf(key: string): WayPicture | undefined {
  return isOf(shownOf(bench.value), drawn.value) ? drawn.value.pictures.get(key) : undefined;
}

/** Say whether a way's card is in sight. */
export function wantPicture(key: string, isSeen: boolean): void {
  const next = new Set(wanted.peek());
  if (isSeen) next.add(key);
  else next.delete(key);
  wanted.value = next;
}

/** Draws one more of those in sight, once the list itself is known. */
export function drawNext(): void {
  if (ways.value.busy || drawingWay.value) return;
  const now = bench.value;
  const shown = shownOf(now);
  const key = ways.value.answer?.ways
    .map((way) => way.key)
    .find((one) => wanted.value.has(one) && !pictureOf(one));
  if (key === undefined) return;
  drawingWay.value = true;
  void slow.ask('wayPicture', now, { key }).then((outcome) => {
    if (isOf(shown, { ...shownOf(bench.peek()), pictures: new Map() }) && outcome.is !== 'overtaken') {
      const before = isOf(shown, drawn.peek()) ? drawn.peek().pictures : new Map<string, WayPicture>();
      const picture = outcome.is === 'answer' ? outcome.answer : { missing: 'could not be drawn' };
      drawn.value = { ...shown, pictures: new Map([...before, [key, picture]]) };
    }
    drawingWay.value = false;
  });
}
