// Blanks for the tests, and what is thrown about the wrong ones.
import { type Blank, type Station, standardReading } from '../../src/blank/blank.ts';
import { type Finding, Refused } from '../../src/finding.ts';

type Given = {
  readonly height?: number;
  readonly along?: number;
  readonly across?: number;
  readonly girth?: number;
};

/** A station as in a blank file, in mm. */
export const station = ({ height, along = 0, across, girth = 0 }: Given): Station => ({
  position: height === undefined ? { kind: 'along', mm: along } : { kind: 'height', mm: height },
  reading: across === undefined ? { kind: 'girth', mm: girth } : { kind: 'across', mm: across },
});

export const aBlank = (stations: readonly Given[], rest: Partial<Blank> = {}): Blank => ({
  name: 'test cup',
  stations: stations.map(station),
  footRound: 0,
  lipRound: 0,
  wall: 'straight',
  flatGap: 0.15,
  reading: standardReading,
  heightReading: 0,
  tape: 0,
  ...rest,
});

/** The findings some work is refused with; fails when it is not refused. */
export function refusalsOf(work: () => unknown): readonly Finding[] {
  try {
    work();
  } catch (error) {
    if (error instanceof Refused) return error.findings;
    throw error;
  }
  throw new Error('nothing was refused');
}
