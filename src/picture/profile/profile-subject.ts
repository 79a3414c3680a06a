// What the picture of a profile shows of a blank.
import type { Band } from '../../blank/flat-band.ts';
import type { ProfileRing } from '../rolled/rolled-rings.ts';

/** Strain of the film around the wall, as shares, and what the film takes. */
export interface ShownStrain {
  readonly places: readonly { readonly along: number; readonly strain: number }[];
  readonly stretch: number;
  readonly gather: number;
}

export interface ProfileOnScreen {
  /** How many times as large as on paper its letters are. */
  readonly letters: number;
  /** Whether there is room for little beside the section: words are broken, and what else tells is left out. */
  readonly isNarrow: boolean;
}

/** All that the picture shows. Lengths in mm. */
export interface ProfileSubject {
  readonly name: string;
  /** Whether it is shown upside down, standing on its lip. */
  readonly standsOnLip?: boolean;
  /** The bare wall between its sharp corners, from the foot up. */
  readonly rings: readonly ProfileRing[];
  readonly footRound: number;
  readonly lipRound: number;
  /** Readings, and what each says in words. */
  readonly stations: readonly { readonly along: number; readonly says: string }[];
  readonly flatBands: readonly Band[];
  /** The band of a job, and what it is in words. */
  readonly band?: Band & { readonly says: string };
  /** Where the lip and rim zone begins on the wall, and how far down it reaches in words; a blank may have none. */
  readonly lipZone?: { readonly from: number; readonly says: string };
  readonly hasHandle: boolean;
  /** Places to keep clear, each by the letter that its note begins with; without `along` from foot to lip. */
  readonly keepOuts: readonly { readonly along?: Band; readonly letter: string }[];
  /** Lines of words under the section. */
  readonly notes: readonly string[];
  /** Where it is drawn for a screen: there it is seen smaller, on ground of its own. */
  readonly onScreen?: ProfileOnScreen;
  /** What a band asks of the film, for a wall that bends. */
  readonly strain?: ShownStrain;
}
