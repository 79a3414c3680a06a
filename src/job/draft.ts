// A piece of a job between planning and writing.
import type { Finding } from '../finding.ts';
import type { Affine } from '../geometry/affine.ts';
import type { Lay } from '../pattern/lay/lay.ts';
import type { Wrap, WrapLayer } from '../pattern/lay/wrap.ts';
import type { ClearSliver } from '../pattern/seam/clear-slivers.ts';
import type { MendedTile } from './artwork/mend-tile.ts';
import type { PatternPlan } from './closing/pattern-plan.ts';
import type { PieceChecks } from './lay/wrap-checks.ts';
import type { LaidMotif } from './motifs/laid-apart.ts';
import type { PlaceReport } from './motifs/motif-report.ts';
import type { LevelPlace, PanelPlace } from './plan/panel-places.ts';
import type { PatternGround } from './plan/pattern-ground.ts';
import type { Plan } from './plan/plan.ts';
import type { WindingReport } from './plan/winding-report.ts';
import type { PlacedMotif } from './typed/placed-motif.ts';
import type { Artwork, Job } from './typed/resolved-job.ts';

/** A job worked out, before anything is written. */
export interface Draft {
  /** What its files' names have after the stem: the piece's number from the foot, the panel's letter; empty for the only one. */
  readonly mark: string;
  readonly cut: string;
  readonly guide: string;
  /** The job with everything that was worked out put in its place. */
  readonly job: Job;
  /** The plan; of a panel with the panel's own template. */
  readonly plan: Plan;
  /** How far the drawing is turned in its file, radians, x towards y. */
  readonly turned: number;
  readonly panel?: PanelPlace;
  /** Where it stands among the levels of its job. */
  readonly level: LevelPlace;
  readonly pattern: LaidPattern | undefined;
  /** From the flat wall's own frame to both drawings, mm. */
  readonly toFile: Affine;
  /** Everything that is cut of it inside its outline: the pattern, and the motifs that are cut with it. */
  readonly layers: readonly WrapLayer[];
  /** What of the pattern was left out around motifs. */
  readonly leftOut: readonly ClearSliver[];
  /** The motifs of the job, cut with it or apart. */
  readonly motifs: readonly PlacedMotif[];
  /** Each of them laid by itself. */
  readonly laid: readonly LaidMotif[];
  /** How each of them lies. */
  readonly places: readonly PlaceReport[];
  /** What stands against cutting the film of the piece, once a piece: among the findings too. */
  readonly filmChecks?: PieceChecks;
  readonly findings: readonly Finding[];
}

/** A pattern laid over a piece. */
export interface LaidPattern {
  readonly artwork: Artwork;
  readonly plan: PatternPlan;
  readonly ground: PatternGround;
  readonly wrap: Wrap;
  readonly lay: Lay;
  /** Of a job whose artwork is mended. */
  readonly mended?: MendedTile;
  /** Of a seam that winds. */
  readonly winding?: WindingReport;
  readonly findings: readonly Finding[];
}

/** The pieces that drafts are of, from the foot up: of panels the first. */
export const wholePieces = (drafts: readonly Draft[]): readonly Draft[] =>
  drafts.filter(({ panel }) => !panel || panel.index === 0);
