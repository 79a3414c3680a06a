// The paper a maker names.
import { type Paper, papers } from '../deliver/paper.ts';
import { Refused, stop } from '../finding.ts';
import { shown } from '../lengths/shown.ts';

export type { Paper };

/** The paper of a name as typed, in any case. @throws Refused, rule `paper-size`, where there is none of that name. */
export function paperNamed(typed: string): Paper {
  const paper = papers.find(({ name }) => name === typed.trim().toLowerCase());
  if (paper) return paper;
  const names = papers.map(({ name }) => name);
  const says = `${shown(typed)} is no paper size here; give ${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
  throw new Refused([stop('paper-size', { key: '--paper-size' }, says)]);
}
