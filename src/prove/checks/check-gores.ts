// Are gores the shares of this wall that they should be, and do they close on it?
import { moveContour } from '../../geometry/affine.ts';
import { precision } from '../../geometry/tolerance.ts';
import type { AskedGores } from '../asked-gores.ts';
import { atLeast, atMost, type Check, largest } from '../check.ts';
import type { ProvedGore, ProvedGores } from '../written/gore-pieces.ts';
import { guideCurves } from '../written/piece.ts';
import { type GoreSpot, halfShare, rollGore, surfaceAt } from '../written/rolled-gore.ts';
import { samplesOn } from '../written/samples.ts';
import { type Stretch, stretchesAt, widestBare } from './check-cover.ts';

/** Heights at which the gores are looked at together. */
const heights = 200;

const rolledOutline = ({ surface, band }: AskedGores, { outline }: ProvedGore): GoreSpot[][] =>
  outline.map((contour) => samplesOn([contour]).map((p) => rollGore(surface, band.from, p)));

const overlapOf = ({ surface, overlap }: AskedGores, { number }: ProvedGore): number =>
  number === surface.count ? overlap : 0;

/** How far a point of the outline is from all four borders that its gore should have, mm. */
function borderOff(asked: AskedGores, gore: ProvedGore, { aside, on }: GoreSpot): number {
  const { surface, band, trim } = asked;
  const half = halfShare(surface, on);
  const inner = [
    on - (band.from - trim.foot),
    band.to + trim.lip - on,
    aside + half,
    half + overlapOf(asked, gore) - aside,
  ];
  return Math.min(...inner) < -precision ? -Math.min(...inner) : Math.min(...inner.map(Math.abs));
}

/** Finished edges of all gores on the guide, off their level. */
function levelsOff({ surface, band }: AskedGores, { sheet, gores }: ProvedGores): number[] {
  return (['trim-foot', 'trim-lip'] as const).flatMap((id) => {
    const lines = guideCurves(sheet, 'trim', id);
    if (lines.length !== gores.length) return [Number.NaN];
    return gores.flatMap(({ place }, i) => {
      const line = lines[i];
      const points = line ? samplesOn([moveContour(place, line)]) : [];
      const level = id === 'trim-foot' ? band.from : band.to;
      return points.map((p) => Math.abs(rollGore(surface, band.from, p).on - level));
    });
  });
}

/** The film of all gores at some rising heights, in turns. */
function filmAt(
  asked: AskedGores,
  rolled: readonly (readonly GoreSpot[][])[],
  ons: readonly number[],
): readonly (readonly Stretch[])[] {
  const { surface } = asked;
  const films = rolled.map((outline, i) => {
    const around = 2 * surface.count;
    const points = outline.map((spots) =>
      spots.map((spot) => ({
        along: spot.on,
        turn: (2 * i + 1 + spot.aside / halfShare(surface, spot.on)) / around,
      })),
    );
    return stretchesAt(points, ons);
  });
  return ons.map((_, k) => films.flatMap((film) => film[k] ?? []));
}

/** Does the film cover the band all the way round, and lap by enough at the seam? */
function coverChecks(asked: AskedGores, gores: readonly ProvedGore[]): Check[] {
  const { band, surface, overlap } = asked;
  const rolled = gores.map((gore) => rolledOutline(asked, gore));
  const ons = Array.from(
    { length: heights + 1 },
    (_, i) => band.from + precision + ((band.to - band.from - 2 * precision) * i) / heights,
  );
  const films = filmAt(asked, rolled, ons);
  const rows = ons.map((on, i) => {
    const girth = 2 * Math.PI * surfaceAt(surface, on).radius;
    const film = films[i] ?? [];
    const [first, last] = [film[0], film.at(-1)];
    const round = first && last ? last[1] - first[0] : 0;
    return { bare: widestBare(film, [0, 1]) * girth, lap: (round - 1) * girth };
  });
  return [
    atMost({
      rule: 'coverage',
      value: largest(rows.map(({ bare }) => bare)),
      limit: precision,
      unit: 'mm',
      says: 'wall left bare between gores in the finished band, at its widest',
    }),
    atLeast(
      {
        rule: 'overlap',
        value: Math.min(...rows.map(({ lap }) => lap)),
        limit: overlap,
        unit: 'mm',
        says: 'overlap at the seam, at its narrowest',
      },
      precision,
    ),
  ];
}

/** What the widest gore asks of the film. */
function strainCheck({ surface, band, film, strainAt }: AskedGores): Check {
  const strains = Array.from({ length: heights + 1 }, (_, i) => {
    const on = band.from + ((band.to - band.from) * i) / heights;
    return strainAt(on, 2 * halfShare(surface, on));
  });
  return atMost({
    rule: 'stretch',
    value: 100 * largest(strains),
    limit: 100 * film.stretch + 0.01,
    unit: '%',
    says: 'stretch asked of the film up the middle of a gore',
  });
}

export function goreChecks(asked: AskedGores, proved: ProvedGores): Check[] {
  const { gores } = proved;
  const outline = gores.flatMap((gore) =>
    rolledOutline(asked, gore)
      .flat()
      .map((spot) => borderOff(asked, gore, spot)),
  );
  const row = (rule: string, values: readonly number[], says: string): Check =>
    atMost({ rule, value: largest(values), limit: precision, unit: 'mm', says });
  return [
    row('finished-edges', levelsOff(asked, proved), 'finished edges off their level on the wall'),
    row('outline', outline, 'cut outline off the share of this wall that each gore has'),
    ...coverChecks(asked, gores),
    strainCheck(asked),
  ];
}
