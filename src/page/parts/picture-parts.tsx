// What small pictures of help are drawn of: the same cup every time, its wrap laid flat, a tile, and an arrow for what is read.

/** A tapered cup, foot down. */
export const Cup = () => (
  <>
    <path class="pic-body" d="M40 22 L47 92 Q48 98 54 98 H86 Q92 98 93 92 L100 22" />
    <ellipse class="pic-lip" cx="70" cy="22" rx="30" ry="6" />
  </>
);

/** An arrow with both heads, between two places. */
export const Span = ({ x1, y1, x2, y2 }: { x1: number; y1: number; x2: number; y2: number }) => {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const head = (x: number, y: number, way: number) =>
    `M${x + way * (6 * ux - 3.5 * uy)} ${y + way * (6 * uy + 3.5 * ux)}L${x} ${y}L${x + way * (6 * ux + 3.5 * uy)} ${y + way * (6 * uy - 3.5 * ux)}`;
  return <path class="pic-read" d={`M${x1} ${y1}L${x2} ${y2}${head(x1, y1, 1)}${head(x2, y2, -1)}`} />;
};

export const Tile = ({ x, y, faint = false }: { x: number; y: number; faint?: boolean }) => (
  <g transform={`translate(${x} ${y})`} class={faint ? 'pic-faint' : undefined}>
    <rect class="pic-tile" width="30" height="24" />
    <path class="pic-body" d="M4 18 Q15 2 26 18" />
  </g>
);

/** The wrap laid flat. */
export const Flat = () => <path class="pic-body" d="M20 40 Q70 22 120 40 L112 92 Q70 78 28 92Z" />;
