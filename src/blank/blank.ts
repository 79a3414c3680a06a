// The blank as the maker measured it, resolved: everything in mm, nothing left out.

/** One reading on the blank: how high, and how far around or across. */
export interface Station {
  readonly position: {
    /** `height`: vertical; `along`: up the wall, measured on it. Both from the foot corner. */
    readonly kind: 'height' | 'along';
    /** 0 or more. */
    readonly mm: number;
  };
  readonly reading: {
    readonly kind: 'across' | 'girth';
    /** More than 0, as read: a girth still has the tape's thickness in it. */
    readonly mm: number;
  };
}

/** A handle takes the same width from foot to lip, centred on turn 0. */
export interface Handle {
  /** Width it takes, mm along the girth. */
  readonly spans: number;
  /** Bare wall left on either side of it, mm along the girth. */
  readonly keepOff: number;
}

export interface Blank {
  readonly name: string;
  /** Two or more, from the foot up. */
  readonly stations: readonly Station[];
  /** Radius of the rounded edge at the foot, mm; 0 for a sharp one. Stations give the sharp corner. */
  readonly footRound: number;
  /** Radius of the rounded edge at the lip, mm; 0 for a sharp one. */
  readonly lipRound: number;
  readonly wall: 'straight';
  readonly handle?: Handle;
  /** Standard uncertainty of one girth or diameter reading as taken, mm; 0 claims a perfect reading. */
  readonly reading: number;
  /** Standard uncertainty of one height or along, mm; 0 when it is taken as exact. */
  readonly heightReading: number;
  /** Thickness of the tape a girth was read with, mm. */
  readonly tape: number;
}

/**
 * Standard uncertainty of a reading when the blank names none, mm. A tape is read to the nearest mm, which alone is
 * 0.5/√3 = 0.29 mm (JCGM 100:2008, 4.3.7); a tape not quite level or not quite tight adds as much again. Common
 * practice, no source for the sum.
 */
export const standardReading = 0.5;
