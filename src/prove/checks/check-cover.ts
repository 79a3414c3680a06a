// Does the film cover the band all the way round, and lap over itself by enough everywhere?
import type { Band } from '../../blank/flat-band.ts';
import { asinc } from '../../geometry/sinc.ts';
import { precision } from '../../geometry/tolerance.ts';
import type { Asked } from '../asked.ts';
import { atLeast, atMost, type Check, largest } from '../check.ts';
import { girthOf, type RolledPoint, rollUp } from '../written/rolled-cone.ts';
import type { ProvedRow } from '../written/row.ts';
import { samplesOn } from '../written/samples.ts';

/** Heights looked at on each piece. */
const heights = 200;
/**
 * How many times closer an outline is looked at than other lines: a side beside a handle that is straight on the sheet bends
 * once rolled, on a steep wall by 0.02 mm between two places no closer than those of other lines.
 */
const closer = 8;

/** From one turn to another. */
export type Stretch = readonly [number, number];

/** Stretches of a piece's film at each of some rising heights, by its rolled outline. */
export function stretchesAt(
  outline: readonly (readonly RolledPoint[])[],
  alongs: readonly number[],
): readonly (readonly Stretch[])[] {
  const turns = alongs.map((): number[] => []);
  for (const points of outline)
    for (const [i, p] of points.entries()) {
      const q = points[(i + 1) % points.length] ?? p;
      const [low, high] = [Math.min(p.along, q.along), Math.max(p.along, q.along)];
      for (let k = firstFrom(alongs, low); k < alongs.length; k++) {
        const along = alongs[k] ?? high;
        if (along >= high) break;
        turns[k]?.push(p.turn + ((q.turn - p.turn) * (along - p.along)) / (q.along - p.along));
      }
    }
  return turns.map((crossed) => {
    const rising = crossed.sort((a, b) => a - b);
    return rising.flatMap((turn, i) => (i % 2 === 0 ? [[turn, rising[i + 1] ?? turn] as const] : []));
  });
}

/** The number of the first of some rising values that is no less than `least`. */
function firstFrom(rising: readonly number[], least: number): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] ?? 0) < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The widest of the turns from `low` to `high` that no stretch covers; stretches go round, so each counts once a turn on. */
export function widestBare(stretches: readonly Stretch[], [low, high]: Stretch): number {
  const around = stretches
    .flatMap(([from, to]) => [-1, 0, 1].map((by): Stretch => [from + by, to + by]))
    .sort((a, b) => a[0] - b[0]);
  let widest = 0;
  let reached = low;
  for (const [from, to] of around) {
    if (from > reached) widest = Math.max(widest, Math.min(from, high) - reached);
    reached = Math.max(reached, to);
    if (reached >= high) return widest;
  }
  return Math.max(widest, high - reached);
}

/** A height of a row of panels. */
interface Height {
  readonly girth: number;
  /** The turns that are to be covered. */
  readonly wanted: Stretch;
  /** Of each panel, in the turns of the row. */
  readonly stretches: readonly (readonly Stretch[])[];
}

/** The film of a row at heights close together from one end of its finished band to the other. */
function heightsOf({ panels, cone, band }: ProvedRow): Height[] {
  const rolled = panels.map(({ outline, ...panel }) =>
    outline.map((contour) => samplesOn([contour], closer).map((p) => rollUp(panel.cone, p))),
  );
  const inside = Math.min(precision, (band.to - band.from) / 4);
  const beside = { start: panels[0]?.beside.start ?? 0, finish: panels.at(-1)?.beside.finish ?? 0 };
  // A side beside a handle is parallel to the line up the wall: around the wall it stands a little further off.
  const side = (mm: number, girth: number) =>
    mm === 0 ? 0 : (mm * asinc((2 * Math.PI * mm * cone.sine) / girth) + precision) / girth;
  const alongs = Array.from(
    { length: heights + 1 },
    (_, i) => band.from + inside + ((band.to - band.from - 2 * inside) * i) / heights,
  );
  const films = rolled.map((outline) => stretchesAt(outline, alongs));
  return alongs.map((along, i) => {
    const girth = girthOf(cone, along);
    return {
      girth,
      wanted: [side(beside.start, girth), 1 - side(beside.finish, girth)],
      stretches: panels.map(({ turns }, k) =>
        (films[k]?.[i] ?? []).map(([from, to]): Stretch => [from + turns.from, to + turns.from]),
      ),
    };
  });
}

/** mm up the wall between what the pieces cover and the band's ends, and between one another. */
function gapsUp(rows: readonly ProvedRow[], band: Band): number[] {
  const ends = rows
    .map(({ panels }) =>
      panels.flatMap(({ cone, outline }) => samplesOn(outline).map((p) => rollUp(cone, p).along)),
    )
    .filter((alongs) => alongs.length > 0)
    .map((alongs) => ({ from: Math.min(...alongs), to: Math.max(...alongs) }));
  if (ends.length === 0) return [band.to - band.from];
  const between = ends.slice(1).map((end, i) => end.from - (ends[i]?.to ?? 0));
  return [(ends[0]?.from ?? 0) - band.from, band.to - (ends.at(-1)?.to ?? 0), ...between];
}

/** How far each panel goes on past its finish, at its narrowest, mm. */
function lapsOf({ panels }: ProvedRow, all: readonly Height[]): readonly { isLast: boolean; lap: number }[] {
  return panels.map(({ turns, beside }, k) => ({
    isLast: k === panels.length - 1,
    lap: Math.min(
      ...all.map(({ stretches, girth }) => {
        const film = stretches[k] ?? [];
        // A panel that begins late laps by less; beside a handle it is meant to.
        const past =
          beside.start === 0
            ? film.reduce((sum, [from, to]) => sum + to - from, turns.from - turns.to)
            : Math.max(...film.map(([, to]) => to)) - turns.to;
        return past * girth;
      }),
    ),
  }));
}

/** What the last panel goes on past the seam, the film before it added where the same piece begins with it. */
const lapOf = ({ overlap, before = 0, panels }: Asked): number => overlap - (panels ? before : 0);

export function coverChecks(rows: readonly ProvedRow[], asked: Asked): Check[] {
  const looked = rows.map((row) => ({ row, all: heightsOf(row) }));
  const holes = [
    ...looked.flatMap(({ all }) =>
      all.map(({ stretches, wanted, girth }) => widestBare(stretches.flat(), wanted) * girth),
    ),
    ...gapsUp(rows, asked.band),
  ];
  const covered = atMost({
    rule: 'coverage',
    value: largest(holes),
    limit: precision,
    unit: 'mm',
    says: 'wall left bare in the finished band, at its widest',
  });
  const laps = looked.flatMap(({ row, all }) => lapsOf(row, all));
  const narrowest = (of: readonly { readonly lap: number }[]) =>
    of.length === 0 ? Number.NaN : Math.min(...of.map(({ lap }) => lap));
  const lapCheck = (rule: string, value: number, limit: number, says: string): Check =>
    atLeast({ rule, value, limit, unit: 'mm', says }, precision);
  const seam = narrowest(laps.filter(({ isLast }) => isLast));
  const joint = narrowest(laps.filter(({ isLast }) => !isLast));
  return [
    covered,
    ...(asked.clear === undefined
      ? [lapCheck('overlap', seam, lapOf(asked), 'overlap at the seam, at its narrowest')]
      : []),
    ...(asked.panels
      ? [
          lapCheck(
            'panel-overlap',
            joint,
            asked.panels.overlap,
            'overlap of panels at their joints, at its narrowest',
          ),
        ]
      : []),
  ];
}
