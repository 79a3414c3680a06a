// What was found, as a sheet of paper tells it.
import type { Finding } from '../../finding.ts';

/** Most lines of one rule on a sheet of paper; the report has all. */
const mostOfRule = 8;

/** What a sentence is about, as the job's own key or another file has it; those the maker typed are known here. */
function about({ where: { file = '', key = '' } }: Finding): string {
  const named = file.endsWith('.json') ? '' : file.replace(/^.*\//, '');
  return [named, key].map((name) => (name === '' ? '' : `${name}: `)).join('');
}

/**
 * Each rule together, what wants an eye before what is only noted, else in the order they first come; of one no more than a person reads,
 * and how many more there are.
 */
export function saidByRule(checks: readonly Finding[]): readonly string[] {
  const rules = new Map<string, Finding[]>();
  const isNote = ({ level }: Finding): boolean => level === 'note';
  for (const check of [...checks.filter((one) => !isNote(one)), ...checks.filter(isNote)]) {
    const key = `${check.level} ${check.rule}`;
    const same = rules.get(key);
    if (same) same.push(check);
    else rules.set(key, [check]);
  }
  return [...rules.values()].flatMap((found) => {
    const said = found.slice(0, mostOfRule).map((check) => `${check.level}: ${about(check)}${check.says}`);
    const left = found.length - said.length;
    return left === 0 ? said : [...said, `${left} more like these are in report.json`];
  });
}
