// Findings as numbered marks on the drawing; each is a button that selects it.
import type { Finding, Where } from '../../finding.ts';
import { findingSays } from '../parts/plain-words.ts';
import { isSelected, selected } from '../store.ts';
import { type Point, rulerWidth, type Size } from './sheet-view.ts';

interface FlatMarksProps {
  readonly findings: readonly Finding[];
  readonly placeOf: (where: Where) => Point | undefined;
  readonly size: Size;
}

export const FlatMarks = ({ findings, placeOf, size }: FlatMarksProps) => (
  <div class="flat-marks">
    {findings.map((finding, i) => {
      const place = placeOf(finding.where);
      if (!place || place.x < rulerWidth || place.y < rulerWidth) return null;
      if (place.x > size.width || place.y > size.height) return null;
      const isChosen = isSelected(finding);
      return (
        <button
          key={`${finding.rule} ${finding.says}`}
          type="button"
          class={`mark mark-${finding.level}${isChosen ? ' mark-selected' : ''}`}
          style={{ left: `${place.x}px`, top: `${place.y}px` }}
          aria-label={`Finding ${i + 1}: ${findingSays(finding)}`}
          aria-pressed={isChosen}
          onClick={() => {
            selected.value = finding;
          }}
        >
          {i + 1}
        </button>
      );
    })}
  </div>
);
