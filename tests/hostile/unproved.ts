// What is not as it should be of a job that was made: rows of its proof that fail, and figures that are none.
import type { Report } from '../../src/job/report.ts';
import type { Proof } from '../../src/prove/proof.ts';

/** Rows of the proof that fail where the job asks more of its film or its sheet than that has, and what tells the maker so before. */
const toldBefore: Readonly<Record<string, readonly string[]>> = {
  stretch: ['needs-stretch', 'gore-strain'],
  sheet: ['sheet-too-small'],
};

/** In words; none where all is well. */
export function unprovedOf(report: Pick<Report, 'checks'>, { checks }: Proof): readonly string[] {
  const told = report.checks.map(({ rule }) => rule);
  const failed = checks.filter(
    ({ pass, rule }) => !pass && !toldBefore[rule]?.some((other) => told.includes(other)),
  );
  const figures = /.{30}(?:undefined|NaN|Infinity|\[object).{20}/.exec(JSON.stringify(report))?.[0];
  return [
    ...failed.map(({ rule, value, limit }) => `${rule}: ${value}, and the limit is ${limit}`),
    ...(figures === undefined ? [] : [`told: ${figures}`]),
  ];
}
