// Findings as numbered marks on the drawing; each is a button that selects it.
import type { Finding, Where } from '../../finding.ts';
import { findingSays } from '../parts/plain-words.ts';
import { isSelected, selected } from '../store.ts';
import { marksApart } from './marks-apart.ts';
import { type Point, rulerWidth, type Size } from './sheet-view.ts';

interface FlatMarksProps {
  readonly findings: readonly Finding[];
  readonly placeOf: (where: Where) => Point | undefined;
  readonly size: Size;
}

/** Nearer than this, px, one mark hides most of another. */
const apart = 26;

export function FlatMarks({ findings, placeOf, size }: FlatMarksProps) {
  const seen = findings.flatMap((finding, i) => {
    const at = placeOf(finding.where);
    if (!at || at.x < rulerWidth || at.y < rulerWidth || at.x > size.width || at.y > size.height) return [];
    return [{ of: { finding, number: i + 1, isChosen: isSelected(finding) }, at }];
  });
  // The one that was selected is always seen.
  const inOrder = [...seen].sort((a, b) => Number(b.of.isChosen) - Number(a.of.isChosen));
  return (
    <div class="flat-marks">
      {marksApart(inOrder, apart).map(({ of: { finding, number, isChosen }, at, more }) => (
        <button
          key={`${finding.rule} ${finding.says}`}
          type="button"
          class={`mark mark-${finding.level}${isChosen ? ' mark-selected' : ''}`}
          // In shares of the window: on paper it has another size.
          style={{ left: `${(100 * at.x) / size.width}%`, top: `${(100 * at.y) / size.height}%` }}
          aria-label={`Finding ${number}${more > 0 ? `, and ${more} more close by` : ''}: ${findingSays(finding)}`}
          aria-pressed={isChosen}
          onClick={() => {
            selected.value = finding;
          }}
        >
          {number}
          {more > 0 ? <span class="mark-more">+{more}</span> : null}
        </button>
      ))}
    </div>
  );
}
