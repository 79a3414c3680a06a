// Where a template that is larger than the sheet is parted into panels.

/** A place where two panels may meet, as a position along the template, and what a joint there costs. */
export interface JointPlace {
  readonly at: number;
  readonly cost: number;
}

export interface PanelRange {
  readonly from: number;
  readonly to: number;
  /** Positions strictly between, in rising order. */
  readonly places: readonly JointPlace[];
  /** Whether a panel of this stretch lies on the sheet. A part of a stretch that fits must fit too. */
  readonly fits: (from: number, to: number) => boolean;
}

interface Best {
  readonly panels: number;
  readonly cost: number;
  readonly before: number;
}

/**
 * The joints of as few panels as can be, and of all such the ones that cost least; undefined where no panels fit.
 * Source: a shortest path over the places in order (dynamic programming), weighed by panels first and cost second.
 */
export function panelJoints({ from, to, places, fits }: PanelRange): readonly number[] | undefined {
  const stops = [{ at: from, cost: 0 }, ...places, { at: to, cost: 0 }];
  const best: (Best | undefined)[] = [{ panels: 0, cost: 0, before: -1 }];
  let first = 0;
  for (let i = 1; i < stops.length; i++) {
    const here = stops[i];
    if (!here) continue;
    while (first < i && !fits(stops[first]?.at ?? from, here.at)) first++;
    let found: Best | undefined;
    for (let j = first; j < i; j++) {
      const before = best[j];
      if (!before) continue;
      const tried = { panels: before.panels + 1, cost: before.cost + here.cost, before: j };
      if (!found || tried.panels < found.panels || (tried.panels === found.panels && tried.cost < found.cost))
        found = tried;
    }
    best[i] = found;
  }
  const joints: number[] = [];
  let at = stops.length - 1;
  if (!best[at]) return undefined;
  for (at = best[at]?.before ?? 0; at > 0; at = best[at]?.before ?? 0) joints.unshift(stops[at]?.at ?? from);
  return joints;
}
