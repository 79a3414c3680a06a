// Places of the bare wall as places of a piece's sheet: what the maker types in mm along, told in mm on.
import type { Band } from '../../blank/flat-band.ts';
import type { KeepOut } from '../../blank/keep-out.ts';
import type { Finding } from '../../finding.ts';
import type { SheetLengths } from '../../unroll/sheet-wall.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';

export const bandOnSheet = <B extends Band>(band: B, { toGrown }: SheetLengths): B => ({
  ...band,
  from: toGrown(band.from),
  to: toGrown(band.to),
});

export const bandOnWall = <B extends Band>(band: B, { toBare }: SheetLengths): B => ({
  ...band,
  from: toBare(band.from),
  to: toBare(band.to),
});

export const keepOutOnSheet = (keepOut: KeepOut, lengths: SheetLengths): KeepOut =>
  keepOut.along ? { ...keepOut, along: bandOnSheet(keepOut.along, lengths) } : keepOut;

/** The motif where it is to lie on the sheet. */
export const motifOnSheet = (placed: PlacedMotif, { toGrown }: SheetLengths): PlacedMotif => ({
  ...placed,
  at: { ...placed.at, along: toGrown(placed.at.along) },
});

/** Findings that name a place on the sheet, told by the bare wall. */
export const findingsOnWall = (findings: readonly Finding[], { toBare }: SheetLengths): readonly Finding[] =>
  findings.map((finding) =>
    finding.where.along === undefined
      ? finding
      : { ...finding, where: { ...finding.where, along: toBare(finding.where.along) } },
  );
