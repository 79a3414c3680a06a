// The paper a maker names, or gives the size of.
import { type Paper, papers } from '../../deliver/paper.ts';
import { Refused, stop } from '../../finding.ts';
import { inMm, parseLength } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';

export type { Paper };

/** Rulers and the words beside them want so much of the short side, mm; longer than the other no PDF page may be (14,400 points). */
const leastSide = 148;
const mostSide = 5000;

/**
 * The paper of a name as typed, in any case, or of a size such as `210x330 mm` or `8 1/2 x 13in`, either side first.
 * @throws Refused, rule `paper-size`, where it is neither, or too small for the rulers.
 */
export function paperNamed(typed: string): Paper {
  const paper = papers.find(({ name }) => name === typed.trim().toLowerCase());
  return paper ?? paperSized(typed);
}

const refused = (says: string): Refused => new Refused([stop('paper-size', { key: '--paper-size' }, says)]);

/** Two sides, and the unit of the second, which is that of a bare first one too. */
const twoSides = /^(.+?)\s*[x×]\s*(.+?)\s*([a-z"″”']+)$/i;
const endsInUnit = /[a-z"″”']$/i;

function paperSized(typed: string): Paper {
  const [, one, other, unit] = twoSides.exec(typed.trim()) ?? [];
  if (one === undefined || other === undefined || unit === undefined) {
    const names = papers.map(({ name }) => name);
    const known = `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
    throw refused(
      `${shown(typed)} is no paper size here; give ${known}, or a size with its unit, such as "210x330mm"`,
    );
  }
  const sides = [endsInUnit.test(one) ? one : one + unit, other + unit].map((side) => {
    const read = parseLength(side, { units: 'mm', bare: 'number', most: mostSide });
    if (!read.ok) throw refused(read.says);
    return read.mm;
  });
  const [across, up] = [Math.min(...sides), Math.max(...sides)];
  if (across < leastSide)
    throw refused(
      `${shown(typed)} is ${inMm(across)} across, too narrow for the rulers that each page has; give ${inMm(leastSide)} or more`,
    );
  return { name: typed.trim(), across, up };
}
