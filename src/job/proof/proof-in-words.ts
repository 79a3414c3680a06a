// A proof in a maker's words: as a table, as a line, as findings.
import { type Finding, look } from '../../finding.ts';
import type { Check } from '../../prove/check.ts';
import type { Proof } from '../../prove/proof.ts';

const decimals: Readonly<Record<Check['unit'], number>> = { mm: 4, degrees: 3, '%': 4, count: 0 };

/** A value of a check in words, such as `0.0002 mm`. */
function valueInWords(value: number, unit: Check['unit']): string {
  const number = unit === 'count' ? String(value) : String(Number(value.toFixed(decimals[unit])));
  return unit === 'count' ? number : `${number} ${unit}`;
}

const limitInWords = ({ limit, bound, unit }: Check): string =>
  bound === 'most' && limit === 0 ? 'none' : `at ${bound} ${valueInWords(limit, unit)}`;

type Checked = Pick<Proof, 'checks'>;

/** Rules of the rows that do not hold. */
export const failedRules = ({ checks }: Checked): readonly string[] =>
  checks.filter(({ pass }) => !pass).map(({ rule }) => rule);

/** A proof as a table: what was measured, its value, its limit and the verdict. */
export function proofTable({ checks }: Checked): readonly (readonly string[])[] {
  return [
    ['rule', 'measured', 'limit', 'verdict', 'what'],
    ...checks.map((check) => [
      check.rule,
      valueInWords(check.value, check.unit),
      limitInWords(check),
      check.pass ? 'holds' : 'FAILS',
      check.says,
    ]),
  ];
}

/** What the maker can do where a row fails by the artwork's own doing. */
const remedies: Readonly<Record<string, string>> = {
  'lines-once':
    '; film there, or a gap, is as narrow as a hair: mend the artwork, widen or close it, lay the artwork larger, or trace a picture of more pixels',
};

/** What a proof found wrong, as findings that name the row. */
export const proofFindings = ({ checks }: Checked, where: Finding['where']): Finding[] =>
  checks
    .filter(({ pass }) => !pass)
    .map((check) => {
      const measured = `${check.says}: ${valueInWords(check.value, check.unit)}, ${limitInWords(check)} is meant`;
      return look(
        'proof',
        where,
        `fails the proof at "${check.rule}": ${measured}${remedies[check.rule] ?? ''}`,
      );
    });
