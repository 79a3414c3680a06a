// The artwork as the engine reads it, with a mark where something is found.

import { measuredLength, type Units } from '../../lengths/length.ts';
import { findingSays } from '../parts/plain-words.ts';
import { art, bench, isSelected } from '../store.ts';

export function ArtBoard() {
  const { answer, refused } = art.value;
  if (!answer)
    return (
      <p class="board-empty">
        {refused ? refused.map(findingSays).join(' ') : 'Choose artwork in step 2, and it is shown here.'}
      </p>
    );
  const { width, height, layers, checks, pieces, cutLength } = answer;
  const { units } = bench.value;
  // What reaches past the tile's border shows faintly: its copies carry it on.
  const beyond = Math.max(width, height);
  const radius = Math.max(width, height) / 32;
  return (
    <div class="picture-board">
      <svg
        class="picture art-picture"
        viewBox={`${-width * 0.04} ${-height * 0.04} ${width * 1.08} ${height * 1.08}`}
        role="img"
        aria-label={`The artwork as it is cut: ${layers.length === 1 ? 'one colour' : `${layers.length} colours`}, ${pieces} pieces`}
      >
        {layers.map(({ name, colour, areas }) => (
          <g key={name} fill={colour} fill-rule="evenodd">
            {areas.map((d) => (
              <path key={d} d={d} />
            ))}
          </g>
        ))}
        <path
          class="art-beside"
          fill-rule="evenodd"
          d={`${frame(-beyond, width + beyond, height + beyond)}${frame(0, width, height)}`}
        />
        <rect class="art-border" width={width} height={height} />
        {checks.map((finding) =>
          finding.where.x === undefined || finding.where.y === undefined ? null : (
            <circle
              key={`${finding.rule} ${finding.says}`}
              class={`art-mark${isSelected(finding) ? ' art-mark-selected' : ''}`}
              cx={finding.where.x}
              cy={finding.where.y}
              r={radius}
            />
          ),
        )}
      </svg>
      <p class="board-figures">
        {measuredLength(width, units)} by {measuredLength(height, units)}; {pieces}{' '}
        {pieces === 1 ? 'piece' : 'pieces'} of film, {cutInWords(cutLength, units)} to cut in one tile.
      </p>
    </div>
  );
}

const frame = (from: number, right: number, bottom: number): string =>
  `M${from} ${from}H${right}V${bottom}H${from}Z`;

/** A length to cut, mm: it runs to metres. */
const cutInWords = (length: number, units: Units): string =>
  units === 'mm' ? `${(length / 1000).toFixed(2)} m` : `${(length / 25.4).toFixed(0)} in`;
