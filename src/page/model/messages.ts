// What the page asks the engine in its worker, and what comes back.
import type { Finding } from '../../finding.ts';
import type { NamedFile } from '../../job/deliverables.ts';
import type { ArtView } from '../../job/inspect/art-view.ts';
import type { NamedRow } from '../../job/list/names.ts';
import type { NamesReport } from '../../job/list/names-report.ts';
import type { PictureWindow, ShownProfile } from '../../job/pictures/profile-picture.ts';
import type { WayReport } from '../../job/repeat/repeat.ts';
import type { WayPicture } from '../../job/repeat/ways-picture.ts';
import type { PatternReport, Report } from '../../job/report.ts';
import type { RefusedRow } from '../../job/typed/list.ts';
import type { FollowedView, Leading } from '../../job/view/followed-view.ts';
import type { LaidView } from '../../job/view/laid-view.ts';
import type { VesselView } from '../../job/view/vessel-view.ts';
import type { Bench } from './bench.ts';
import type { GivenList } from './given-list.ts';

/** A bench whose files have been handed over before: each is named by a mark. */
export interface BenchAsked extends Omit<Bench, 'files'> {
  readonly files: Readonly<Record<string, number>>;
}

/** Every question, with what it is answered by. */
export interface Questions {
  /** The vessel alone: its profile as a picture, and what is known of it. */
  readonly vessel: {
    readonly ask: { readonly bench: BenchAsked; readonly window?: PictureWindow };
    readonly answer: VesselAnswer;
  };
  /** The job laid flat. */
  readonly flat: { readonly ask: { readonly bench: BenchAsked }; readonly answer: LaidView };
  /** The drawing that leads, carried to new readings; without one where it can't be, true to `within` mm. */
  readonly followed: {
    readonly ask: { readonly bench: BenchAsked; readonly within: number };
    readonly answer: { readonly followed?: FollowedView };
  };
  /** All that is said of the job, its film's checks before the blade too. */
  readonly checks: {
    readonly ask: { readonly bench: BenchAsked };
    readonly answer: { readonly checks: readonly Finding[] };
  };
  /** The finished vessel as a solid to turn, where this browser can draw its film. */
  readonly rolled: {
    readonly ask: { readonly bench: BenchAsked };
    readonly answer: { readonly solid?: SolidSeen };
  };
  /** The finished vessel from four sides. */
  readonly sides: {
    readonly ask: { readonly bench: BenchAsked };
    readonly answer: { readonly svg: string };
  };
  /** The artwork: what can be said of it before it is laid. */
  readonly art: { readonly ask: { readonly bench: BenchAsked }; readonly answer: ArtAnswer };
  /** The ways its pattern can close on this vessel. */
  readonly ways: { readonly ask: { readonly bench: BenchAsked }; readonly answer: WaysAnswer };
  /** One of those ways, rolled on this vessel. */
  readonly wayPicture: {
    readonly ask: { readonly bench: BenchAsked; readonly key: string };
    readonly answer: WayPicture;
  };
  /** What the two ends miss each other by on the cut file; without a gap where nothing crosses the seam. */
  readonly seam: {
    readonly ask: { readonly bench: BenchAsked };
    readonly answer: { readonly gap?: NonNullable<PatternReport['seamGap']> };
  };
  /** The rows of a list that can be made of the job, and those that can't. */
  readonly rows: { readonly ask: NamesAsked; readonly answer: RowsAnswer };
  /** The vessel of one row, from four sides. */
  readonly row: {
    readonly ask: NamesAsked & { readonly line: number };
    readonly answer: { readonly svg: string };
  };
  /** The files of all rows that can be made. */
  readonly names: {
    readonly ask: NamesAsked & { readonly paper?: string };
    readonly answer: NamesAnswer;
  };
  /** Every file, as the command writes them. */
  readonly files: {
    readonly ask: { readonly bench: BenchAsked; readonly paper?: string };
    readonly answer: FilesAnswer;
  };
}
/** The threads of the page: what follows typing, what lays the job, and what takes longer. */
export type ThreadName = 'following' | 'laying' | 'slow';

export type Kind = keyof Questions;
export type AskOf<K extends Kind> = Questions[K]['ask'];
export type AnswerOf<K extends Kind> = Questions[K]['answer'];

/** The finished vessel as a solid: its film comes drawn, in place of its outlines. */
export interface SolidSeen extends Omit<VesselView, 'layers' | 'mask'> {
  readonly layers: readonly Omit<VesselView['layers'][number], 'pieces'>[];
  readonly mask?: Omit<NonNullable<VesselView['mask']>, 'pieces'>;
  /** Where the layers cover the sheet, and after them the mask: three to a cover, by `channels`. */
  readonly covers: readonly FilmCover[];
}

/** A picture in strips of its whole width, from the top down. */
export interface FilmCover {
  /** px */
  readonly width: number;
  readonly height: number;
  readonly strips: readonly ImageBitmap[];
}

export interface VesselAnswer {
  readonly profile: ShownProfile;
  readonly lines: readonly string[];
  readonly checks: readonly Finding[];
  /** mm along, from the foot corner. */
  readonly length: number;
  readonly flatBands: readonly { readonly from: number; readonly to: number }[];
}

/** Artwork drawn by the engine's own reading of it: never the file itself. */
export interface ArtAnswer extends ArtView {
  readonly checks: readonly Finding[];
  readonly pieces: number;
  /** mm */
  readonly cutLength: number;
}

export interface WaysAnswer {
  readonly joins: boolean;
  readonly lines: readonly string[];
  readonly ways: readonly WayReport[];
  /** The key of the way that is laid when none is named. */
  readonly taken: string | null;
}

/** A job and the text of a list. */
export interface NamesAsked {
  readonly bench: BenchAsked;
  readonly list: GivenList;
}

export interface RowsAnswer {
  readonly rows: readonly Pick<NamedRow, 'line' | 'label' | 'folder'>[];
  readonly refused: readonly RefusedRow[];
}

export interface NamesAnswer {
  /** An archive, in parts: a folder a row, and what stands beside the folders. */
  readonly parts: readonly Uint8Array<ArrayBuffer>[];
  readonly report: NamesReport;
}

export interface FilesAnswer {
  readonly files: readonly NamedFile[];
  readonly report: Report;
}

/** To the worker. */
export type ToWorker =
  | { readonly kind: 'keep'; readonly mark: number; readonly bytes: Uint8Array }
  | { readonly kind: 'let-go'; readonly marks: readonly number[] }
  | ({ readonly kind: 'lead' } & Leading)
  | { [K in Kind]: { readonly kind: K; readonly id: number } & AskOf<K> }[Kind];

/** From the worker: an answer, a refusal in the maker's words, a fault of ours, or how far long work has come. */
export type FromWorker =
  | { readonly id: number; readonly is: 'answer'; readonly answer: AnswerOf<Kind>; readonly ms: number }
  | { readonly id: number; readonly is: 'refused'; readonly findings: readonly Finding[] }
  | { readonly id: number; readonly is: 'fault'; readonly says: string }
  | {
      readonly id: number;
      readonly is: 'step';
      readonly step: number;
      readonly of: number;
      readonly says: string;
    };
