// The blank as the maker measured it, resolved: everything in mm, nothing left out.
import type { KeepOut } from './keep-out.ts';
import type { PaperFit } from './paper-miss.ts';

/** One reading on the blank: how high, and how far around or across. */
export interface Station {
  readonly position: {
    /** `height`: vertical; `along`: up the wall, measured on it. Both from the foot corner. */
    readonly kind: 'height' | 'along';
    /** 0 or more. */
    readonly mm: number;
    /** Beside a height: the same place read along the wall too, mm. The two together tell the lean. */
    readonly along?: number;
  };
  readonly reading: {
    readonly kind: 'across' | 'girth';
    /** More than 0, as read: a girth still has the tape's thickness in it. */
    readonly mm: number;
    /** The diameters of one place that `mm` is the mean of, where more than one was read. */
    readonly diameters?: readonly number[];
  };
  /** Where it was typed, when several readings were typed as one station: that station's index, and the key in it. */
  readonly typed?: { readonly station: number; readonly key: string };
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
  /** `straight`: one line fitted to all stations; `stepped`: straight between them; `smooth`: one curve through them. */
  readonly wall: 'straight' | 'stepped' | 'smooth';
  /** Gap under a straightedge that still counts as touching, mm. */
  readonly flatGap: number;
  readonly handle?: Handle;
  /** Standard uncertainty of one girth or diameter reading as taken, mm; 0 claims a perfect reading. */
  readonly reading: number;
  /** Whether `reading` is the standard one, because the maker named none. */
  readonly isReadingAssumed?: true;
  /** Standard uncertainty of one height or along, mm; 0 when it is taken as exact. */
  readonly heightReading: number;
  /** Thickness of the tape a girth was read with, mm. */
  readonly tape: number;
  /** What has to stay bare, or free of a seam; none when left out. */
  readonly keepOuts?: readonly KeepOut[];
  /** Paper templates wrapped so far, the first one first; none when left out. */
  readonly fits?: readonly PaperFit[];
  /** What it is for; taken as drunk from when left out. */
  readonly use?: 'drinking' | 'other';
  /** How far the lip zone reaches down from the lip corner, mm along the wall, 0 for none; 20 when left out. */
  readonly lipZone?: number;
  /** Where the figures come from, in the words of whoever wrote the file. */
  readonly source?: string;
}

/**
 * Standard uncertainty of a reading when the blank names none, mm. A tape is read to the nearest mm, which alone is
 * 0.5/√3 = 0.29 mm (JCGM 100:2008, 4.3.7); a tape not quite level or not quite tight adds as much again. Common
 * practice, no source for the sum.
 */
export const standardReading = 0.5;
