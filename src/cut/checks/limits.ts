// What a film and a cutter can do, as the checks need it.

export interface CutLimits {
  /** Thinnest film that holds, and narrowest gap that a blade opens, mm. */
  readonly minWidth: number;
  readonly minGap: number;
  /** Smallest piece that holds, mm². */
  readonly minPiece: number;
  /** Sharpest point that stays down, radians. */
  readonly minAngle: number;
  /** The cutter's step: nodes closer than this are one to it, mm. */
  readonly step: number;
}
