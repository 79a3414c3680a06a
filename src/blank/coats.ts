// Coats: how thick one is that was poured by volume, and how much each makes the girth grow.

/** Coats thicker than this are asked about, and than this refused, mm: a pour by hand gives 1 to 2 at a time. Ours. */
export const oddCoat = { asked: 3, refused: 25 };

export interface CoatGrowth {
  readonly name: string;
  readonly over: boolean;
  /** mm, along the wall's normal. */
  readonly thickness: number;
  /** By how much it makes the girth grow, mm; the same from foot to lip. */
  readonly girthGrowth: number;
  /** Girth of the coated vessel in the middle of the band, mm; over the film, the film is counted too. */
  readonly girthAfter: number;
}

/**
 * Thickness of a coat poured by volume, mm: what is left of it, spread evenly.
 * Source: a litre over a square metre is a millimetre (spreading rate of a coating, 100 % solids).
 */
export const pouredThickness = (millilitres: number, loss: number, area: number): number =>
  (1000 * millilitres * (1 - loss)) / area;

/** Volume of a coat of this thickness on this area (mm²), ml, with what is lost on the way. */
export const coatVolume = (thickness: number, loss: number, area: number): number =>
  (thickness * area) / (1000 * (1 - loss));

/** How much a coat makes the girth of a wall grow, mm: along the normal, so by the cosine of the lean less than upright. */
export const girthGrowth = (thickness: number, lean: number): number =>
  2 * Math.PI * thickness * Math.cos(lean);

/** How far the thickness of a coat may be from what was meant, as a standard share. Common practice, no source. */
const coatDoubt = 0.2;

/**
 * Standard uncertainty of the girth that coats add, mm: a hand that pours one thick pours all thick, so their doubts
 * add up rather than cancel.
 */
export const growthUncertainty = (growth: number): number => coatDoubt * growth;

/** Coats in the order they go on: those under the film, then those over it. */
export const asLaid = <C extends { readonly over: boolean }>(coats: readonly C[]): readonly C[] => [
  ...coats.filter(({ over }) => !over),
  ...coats.filter(({ over }) => over),
];

/** Thickness of all coats under the film together, mm. */
export const thicknessUnder = (
  coats: readonly { readonly thickness: number; readonly over: boolean }[],
): number => coats.filter(({ over }) => !over).reduce((sum, { thickness }) => sum + thickness, 0);

/**
 * Girth after each coat as it is laid, in the order of `asLaid`, from the bare girth; `film` mm of it comes before the
 * first coat that is over it.
 */
export function coatGrowths(
  coats: readonly { readonly name: string; readonly thickness: number; readonly over: boolean }[],
  { girth, lean, film }: { readonly girth: number; readonly lean: number; readonly film: number },
): readonly CoatGrowth[] {
  let built = 0;
  return asLaid(coats).map(({ name, thickness, over }) => {
    built += thickness;
    const grown = girthGrowth(built + (over ? film : 0), lean);
    return { name, over, thickness, girthGrowth: girthGrowth(thickness, lean), girthAfter: girth + grown };
  });
}

/** Whether the coats' own doubt has outgrown that of reading the girth again with a tape. */
export const isBetterMeasured = (growth: number, reading: number): boolean =>
  growthUncertainty(growth) > reading;
