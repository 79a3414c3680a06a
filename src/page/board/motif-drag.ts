// Taking a motif or a text by hand, on either view: it goes with the pointer, within the band, and its figures with it.
import { signal } from '@preact/signals';
import type { Units } from '../../lengths/length.ts';
import { valueAt, withField } from '../model/bench.ts';
import { type MotifSeen, motifsSeen } from '../model/motifs-seen.ts';
import { lengthInFile } from '../model/typed.ts';
import { bench, change, flat, pointed, said, type WallPlace } from '../store.ts';

/** A motif while it is dragged: where its middle may go, mm along, and where it is. */
export interface Dragged {
  readonly name: string;
  readonly at: WallPlace;
  readonly limits: { readonly from: number; readonly to: number };
  readonly isAtLimit: boolean;
  /** How far it reaches from its middle: mm along down and up, turns to either side. */
  readonly reach: { readonly down: number; readonly up: number; readonly aside: number };
}

export const dragged = signal<Dragged | undefined>(undefined);

/** A grip on a motif. */
export interface Grip {
  /** Where its middle was when it was taken. */
  readonly at: WallPlace;
  readonly to: (place: WallPlace) => void;
  readonly end: () => void;
}

/** Digits of a turn that the page works out: on a girth of 400 mm the last is 0.04 mm. */
const turnDigits = 4;

const onward = (turn: number): number => ((turn % 1) + 1) % 1;

/** The nearest way around from one turn to another, -0.5 to 0.5. */
const aside = (from: number, to: number): number => onward(to - from + 0.5) - 0.5;

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

const isUnder = ({ at, reach }: MotifSeen, { turn, along }: WallPlace): boolean =>
  along >= reach.from &&
  along <= reach.to &&
  Math.abs(aside(at.turn, turn)) <= (reach.turns.to - reach.turns.from) / 2;

/** Takes the motif that lies at a place, the last one first; undefined where none does. */
export function grabMotif(place: WallPlace | undefined): Grip | undefined {
  const report = flat.value.answer?.report;
  const band = report?.template?.band;
  if (!place || !report || !band) return undefined;
  const motif = motifsSeen(report).findLast((one) => isUnder(one, place));
  if (!motif) return undefined;
  const { at, reach, path } = motif;
  const typed = ['file', 'text'].map((key) => valueAt(bench.value.job, `${path}.${key}`));
  const name = String(typed.find((value) => value !== undefined) ?? motif.name);
  const [down, up] = [at.along - reach.from, reach.to - at.along];
  // A motif taller than its band has one place, in the middle of it.
  const middle = (band.from + band.to + down - up) / 2;
  const limits = { from: Math.min(middle, band.from + down), to: Math.max(middle, band.to - up) };
  const grabbed = Date.now();
  const units: Units = bench.value.job.units === 'in' ? 'in' : 'mm';
  return {
    at,
    to: (now) => {
      const asked = at.along + now.along - place.along;
      const along = within(asked, limits.from, limits.to);
      const turn = onward(at.turn + aside(place.turn, now.turn));
      const next = { turn: Number(turn.toFixed(turnDigits)), along: lengthInFile(along, units) };
      dragged.value = {
        name,
        at: { turn, along },
        limits,
        isAtLimit: asked !== along,
        reach: { down, up, aside: (reach.turns.to - reach.turns.from) / 2 },
      };
      pointed.value = { turn, along };
      // One drag is one step back, however long it takes.
      change(withField(bench.value, 'job', `${path}.at`, next), `drag ${path} ${grabbed}`, grabbed);
    },
    end: () => {
      dragged.value = undefined;
      said.value = `${name} moved`;
    },
  };
}
