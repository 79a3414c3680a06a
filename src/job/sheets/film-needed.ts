// How much film a batch takes, by the sheets its pieces were laid on.

import type { SheetReport } from '../report.ts';
import type { Sheet } from '../typed/material.ts';

export interface FilmNeeded {
  /** The film's colour; `paper` for collars, empty where there is no art. */
  readonly film: string;
  /** Sheets to be cut into; of a roll, the parts it is cut in. */
  readonly sheets: number;
  /** Of a roll: how much of its length is taken, mm. */
  readonly rollLength?: number;
  /** How far the last sheet is used the longer way, its margin with it, mm. */
  readonly lastUsed: number;
  /** Share of what is cut into that ends as waste: whole sheets, and of the last what is used. */
  readonly waste: number;
}

/** The film of a job, film by film. */
export function filmNeeded(reports: readonly SheetReport[], sheet: Sheet): readonly FilmNeeded[] {
  const films = [...new Set(reports.map(({ film }) => film))];
  return films.map((film) => {
    const own = reports.filter((report) => report.film === film);
    const sum = (of: (report: SheetReport) => number) =>
      own.reduce((total, report) => total + report.times * of(report), 0);
    const taken = sum(({ cutInto }) => cutInto);
    const isRoll = sheet.up === undefined;
    return {
      film,
      sheets: sum(() => 1),
      ...(isRoll ? { rollLength: sum(({ up }) => up) } : {}),
      lastUsed: own.at(-1)?.used ?? 0,
      waste: 1 - sum(({ covered }) => covered) / taken,
    };
  });
}
