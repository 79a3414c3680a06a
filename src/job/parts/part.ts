// A piece of film that a job takes besides its wrap: cut and guided apart, laid where its report says.
import type { Finding } from '../../finding.ts';
import type { Contour } from '../../geometry/contour.ts';
import type { WrittenPiece } from '../deliverables.ts';
import type { Draft } from '../draft.ts';
import type { MakeInput } from '../make-input.ts';

export interface Part extends WrittenPiece {
  /** Left out: the film of the job. */
  readonly material?: 'paper';
  /** Whether it is a cover strip on a border of the pattern. */
  readonly isOnBorder?: boolean;
  /** Draws the paper template that shows where it goes, as an SVG to print: only prints need it. */
  readonly place?: () => string | undefined;
  readonly findings: readonly Finding[];
  /** What the job sheet tells of it, and the outlines by which its film is counted. */
  readonly sheet?: {
    readonly says: string;
    readonly where: string;
    readonly size: string;
    readonly outlines: readonly Contour[];
  };
}

/** The paper templates of parts, to be printed as `STEM.place.print.pdf`. */
export const placesOf = (parts: readonly Part[]): readonly Pick<WrittenPiece, 'stem' | 'guide'>[] =>
  parts.flatMap(({ stem, place }) => {
    const guide = place?.();
    return guide === undefined ? [] : [{ stem: `${stem}.place`, guide }];
  });

/** Gives the parts of one kind; none where the job has none. */
export type PartMaker = (input: MakeInput, drafts: readonly Draft[]) => readonly Part[];
