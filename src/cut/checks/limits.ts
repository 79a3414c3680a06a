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

/** A piece smaller by less than this share is as large as the limit: the drawing's numbers are read to seven digits. */
const areaRounding = 1e-3;

/** Whether a piece of so many mm² is too small to hold. */
export const isSmallPiece = (area: number, { minPiece }: Pick<CutLimits, 'minPiece'>): boolean =>
  area < (1 - areaRounding) * minPiece;
