// What several pieces of one job find alike, told once.
import type { Finding } from '../finding.ts';

/** A tile that does not meet its copies does so on every piece, at other places and so many of them: it is one thing. */
const sameThing = (finding: Finding): string =>
  finding.rule === 'does-not-join' ? `${finding.rule} ${finding.where.file}` : JSON.stringify(finding);

/** Pieces of one job say much of the same; each thing is said once, as the first says it. */
export function toldOnce(findings: readonly Finding[]): Finding[] {
  const told = new Set<string>();
  return findings.filter((finding) => {
    const thing = sameThing(finding);
    const isNew = !told.has(thing);
    told.add(thing);
    return isNew;
  });
}
