// The job as the rest of the house sees it: everything in mm, nothing that has a standard left out.
import type { Blank } from '../../blank/blank.ts';
import type { Point } from '../../geometry/point.ts';
import type { Units } from '../../lengths/length.ts';
import type { MotifLay } from '../../pattern/rigid/motif.ts';
import {
  type Cutter,
  type Film,
  type JobCoat,
  type Sheet,
  standardCutter,
  standardFilm,
} from './material.ts';
import type { Measured } from './measured.ts';
import type { Collars } from './resolved-collars.ts';
import type { Mask, Relief, Stencil } from './resolved-mask.ts';
import type { AskedStrips } from './strips.ts';

/**
 * How the tile repeats, mm in the drawing. `grid`: `across` and `up` are the tile's own size where they are left out;
 * `drop` moves the next repeat around by so much up, `shift` the next row up by so much around.
 * `lattice`: two vectors, y down as in the drawing.
 */
export type Repeat =
  | {
      readonly kind: 'grid';
      readonly across?: number;
      readonly up?: number;
      readonly drop: number;
      readonly shift: number;
    }
  | { readonly kind: 'lattice'; readonly a: Point; readonly b: Point };

/** A drawing laid over another: `colour` makes it one layer, whatever it is drawn in. */
export interface OverArt {
  /** Relative to the job file. */
  readonly file: string;
  readonly colour?: string;
}

export interface Artwork {
  /** Relative to the job file. */
  readonly file: string;
  /** Drawings of the same size laid over it, from the lowest up. */
  readonly over?: readonly OverArt[];
  readonly repeat: Repeat;
  /** `even` keeps rows equally far apart, `conformal` keeps every angle, `rigid` moves each motif whole. */
  readonly lay: MotifLay;
  /** Whole number of repeats around; left out, the one nearest to the drawn size. */
  readonly around?: number;
  readonly strips?: AskedStrips;
  /** A way that `repeat` lists, by its key or by its number; not beside `around`. */
  readonly way?: string | number;
  /** How far along the drawing from its left edge the seam is, drawn mm, or where a straight one cuts least; left out, that of a crop, else the edge. */
  readonly seamAt?: number | 'gaps';
  /** Whether it is mended before it is laid; as drawn if left out. */
  readonly mend?: boolean;
  /** Pieces no further apart than this are one motif, mm; left out, what stands clearly nearer together than to all else. */
  readonly together?: number;
  /** `both` keeps the tile's proportions, `across` changes its size only around the vessel. */
  readonly scale: 'both' | 'across';
  /** How wide the artwork is, mm; left out, what its file says. */
  readonly across?: number;
  /** Font files, relative to the job file, for texts in the drawings of the job. */
  readonly fonts?: readonly string[];
  /** In how many colours a picture made of pixels is traced; left out, as many as it plainly has. */
  readonly colours?: number;
  /** Colours of the drawings, `#rrggbb`, that are the ground the pattern stands on and are not cut. */
  readonly ground?: readonly string[];
}

/** A single motif, laid upright with its middle at a place of the wall. */
export interface Item {
  /** Relative to the job file. */
  readonly file: string;
  /** mm. */
  readonly across: number;
  /** mm; left out, what the drawing's own proportions give. */
  readonly up?: number;
  readonly at: { readonly turn: number; readonly along: number };
  /** `rigid` keeps its shape; `even` and `conformal` bend it along the level line of a wall that tapers. */
  readonly lay: MotifLay;
  /** Whether it is cut as a piece of its own; left out, where there is no pattern to cut it with. */
  readonly apart?: boolean;
  /** How far around it the pattern under it is taken away, mm; left out, it is laid on the pattern. */
  readonly clear?: number;
}

/** How a piece that its sheet can't hold is parted into panels. */
export interface Panels {
  /** What a panel goes on past its joint, mm; 0 for panels that meet edge to edge. */
  readonly overlap: number;
  /** Where the least art is crossed, between repeats, or at these turns; no turns: never parted. */
  readonly joints: 'least-art' | 'repeats' | readonly number[];
  /** Heights at which the band is cut level as well, mm along, rising; none: never. Left out: where its sheet is too small for it. */
  readonly levels?: readonly number[];
}

/** How the two ends of a wrap meet. */
export interface Seam {
  /** `cut-through`: overlapped, then both layers cut at once along turn 0; `strip`: end to end under a cover strip; `winding`: along a line through the pattern's gaps. */
  readonly style: 'butt' | 'overlap' | 'cut-through' | 'strip' | 'winding';
  /** mm; 0 where the ends meet edge to edge. */
  readonly overlap: number;
  /** Least film that has to be left to hold, mm: of the overlap, or of a cover strip on either side. */
  readonly hold?: number;
  /** Width of the cover strip, mm; there with the style `strip`, and only there. */
  readonly strip?: number;
  /** Of an overlap: the end that lies on top; `finish` where it is left out. */
  readonly top?: 'finish' | 'start';
}

/** A text laid about a place of the wall. */
export interface Lettering {
  /** One line, or several parted by line breaks. */
  readonly text: string;
  /** Whether it is left out where its text is empty, as in rows of a list; left out, an empty text is refused. */
  readonly optional?: boolean;
  /** A font file, relative to the job file; left out, the one that comes with us. */
  readonly font?: string;
  /** Height of a capital, mm; left out, letters fill the width of `fit`. One of the two is given. */
  readonly capHeight?: number;
  /** Width that no line may pass, mm. */
  readonly fit?: number;
  /** Halfway across, and halfway between the first line's capitals and the last baseline. */
  readonly at: Item['at'];
  /** Added between letters, mm. */
  readonly spacing: number;
  readonly lay: Item['lay'];
  readonly align: 'middle' | 'left' | 'right';
  /** From baseline to baseline, mm; left out, as the font says. */
  readonly lineStep?: number;
  readonly direction: 'auto' | 'ltr' | 'rtl';
  /** `#rrggbb` */
  readonly colour: string;
  /** A layer that goes under the letters and past them. */
  readonly backing?: {
    /** How far it goes past them, mm. */
    readonly grow: number;
    /** Radius that its inner corners are rounded to, mm. */
    readonly smooth: number;
    readonly colour: string;
  };
  readonly apart?: boolean;
  readonly clear?: number;
}

/** How the colours of the drawings become films that go over one another. Lengths in mm. */
export interface Layers {
  /** Colours from the lowest layer up, `#rrggbb`; those left out come over them as the drawing has them. */
  readonly order?: readonly {
    readonly colour: string;
    /** Left out, that of all layers. */
    readonly spread?: number;
  }[];
  /** `stacked`: a film goes on under those above it; `knocked-out`: their shape is cut from it. */
  readonly style: 'stacked' | 'knocked-out';
  /**
   * How far a film goes on under the edge of one above it. Negative: choked, so far it stays back from its own edge under it;
   * knocked out, the gap between them.
   */
  readonly spread: number;
  /** A film under all colours, for print on clear film: how far it stays back from the edge of what shows. */
  readonly underlay?: { readonly choke: number; readonly colour: string };
  /** A film under everything and past it, as under lettering. */
  readonly backing?: NonNullable<Lettering['backing']>;
  /** Whether all layers of a piece are in one cut file, or each in one of its own. */
  readonly files: 'one' | 'each';
}

export interface Job {
  readonly name: string;
  /** The unit the file's bare numbers were in. Every length here is in mm already. */
  readonly units: Units;
  readonly blank:
    | { readonly kind: 'file'; readonly file: string }
    | { readonly kind: 'here'; readonly blank: Blank };
  /** mm along the wall; left out, the flat band. */
  readonly band?: { readonly from: number; readonly to: number };
  readonly coats: readonly JobCoat[];
  /** How the vessel stands when it is looked at; on its lip, art and lettering are laid on their heads. Upright if left out. */
  readonly shown?: 'upside-down';
  readonly film: Film;
  readonly cutter: Cutter;
  /** What the test piece of the printer measured; left out, it is true. */
  readonly printer?: { readonly measured: Measured };
  readonly artwork?: Artwork;
  /** Left out: each colour is cut as it is drawn, over those before it. */
  readonly layers?: Layers;
  readonly mask?: Mask;
  /** Left out, the waste is not cut. */
  readonly relief?: Relief;
  /** Left out, islands of a mask are laid by its carrier. */
  readonly stencil?: Stencil;
  /** One or more; left out where there are none. */
  readonly items?: readonly Item[];
  /** One or more; left out where there are none. */
  readonly lettering?: readonly Lettering[];
  /** Whether the band is one piece; or stacked sectors or gores, where the wall bends more than the film gives. */
  readonly pieces: 'one' | 'stacked' | 'gores';
  /** So many gores; left out, as many as the film needs. Only with `pieces` gores. */
  readonly gores?: number;
  /** Cut straight, on whole rows, or without the motifs that would be cut. */
  readonly edges: 'straight' | 'whole-rows' | 'fade';
  readonly seam: Seam;
  readonly trim: { readonly lip: number; readonly foot: number };
  /** Paper arcs cut with it; left out, none. */
  readonly collars?: Collars;
  readonly sheet?: Sheet;
  /** How a piece larger than its sheet is parted; left out, as `standardPanels` says. */
  readonly panels?: Panels;
  /** Vessels that are made alike; 1 where it is left out. */
  readonly batch?: number;
}

/** Fewer gores than this are no gores; more nobody cuts and lays. */
export const goreCounts = { least: 3, most: 48 };

/** What holds when a job says nothing else; mm. */
export const standardOverlap = 6;
/** Wide enough to hold on either side, narrow enough to lie down on a taper. Common practice, no source. */
export const standardStrip = 10;
export const standardTrim = { lip: 3, foot: 3 };
/** As at the seam. Common practice, no source. */
export const standardPanels: Panels = { overlap: standardOverlap, joints: 'least-art' };
/** A job that says nothing but what it decorates. */
export const standardJob = {
  coats: [],
  film: standardFilm,
  cutter: standardCutter,
  pieces: 'one',
  edges: 'straight',
  seam: { style: 'overlap', overlap: standardOverlap },
  trim: standardTrim,
} as const satisfies Partial<Job>;

/** Artwork of which nothing is said: it repeats by its own size. */
export const standardArtwork: Artwork = {
  file: '',
  repeat: { kind: 'grid', drop: 0, shift: 0 },
  lay: 'even',
  scale: 'both',
};

/** Whether a job's layers have cut files of their own. */
export const cutsEach = ({ layers }: Pick<Job, 'layers'>): boolean => layers?.files === 'each';
