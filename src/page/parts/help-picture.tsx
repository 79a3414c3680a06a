// Small pictures of how a reading is taken: the same cup every time, with what is read drawn in the one strong colour.
import type { HelpKey } from './help-words.ts';

/** A tapered cup, foot down. */
const Cup = () => (
  <>
    <path class="pic-body" d="M40 22 L47 92 Q48 98 54 98 H86 Q92 98 93 92 L100 22" />
    <ellipse class="pic-lip" cx="70" cy="22" rx="30" ry="6" />
  </>
);

/** An arrow with both heads, between two places. */
const Span = ({ x1, y1, x2, y2 }: { x1: number; y1: number; x2: number; y2: number }) => {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const head = (x: number, y: number, way: number) =>
    `M${x + way * (6 * ux - 3.5 * uy)} ${y + way * (6 * uy + 3.5 * ux)}L${x} ${y}L${x + way * (6 * ux + 3.5 * uy)} ${y + way * (6 * uy - 3.5 * ux)}`;
  return <path class="pic-read" d={`M${x1} ${y1}L${x2} ${y2}${head(x1, y1, 1)}${head(x2, y2, -1)}`} />;
};

const Tile = ({ x, y, faint = false }: { x: number; y: number; faint?: boolean }) => (
  <g transform={`translate(${x} ${y})`} class={faint ? 'pic-faint' : undefined}>
    <rect class="pic-tile" width="30" height="24" />
    <path class="pic-body" d="M4 18 Q15 2 26 18" />
  </g>
);

/** The wrap laid flat. */
const Flat = () => <path class="pic-body" d="M20 40 Q70 22 120 40 L112 92 Q70 78 28 92Z" />;

const pictures = {
  height: () => (
    <>
      <Cup />
      <path class="pic-faint-line" d="M10 98H130M100 22H124" />
      <Span x1={118} y1={22} x2={118} y2={98} />
    </>
  ),
  along: () => (
    <>
      <Cup />
      <Span x1={107} y1={22} x2={100} y2={97} />
    </>
  ),
  across: () => (
    <>
      <Cup />
      <path class="pic-faint-line" d="M40 12V30M100 12V30" />
      <Span x1={40} y1={12} x2={100} y2={12} />
    </>
  ),
  girth: () => (
    <>
      <Cup />
      <path class="pic-read" d="M43 52 Q70 62 97 52" />
      <path class="pic-read pic-dashed" d="M43 52 Q70 44 97 52" />
      <path class="pic-read" d="M78 48v16" />
    </>
  ),
  footRound: () => (
    <>
      <path class="pic-body" d="M40 20 L52 70 Q56 92 78 92 H130" />
      <path class="pic-faint-line" d="M52 70 L57 92 H78" />
      <circle class="pic-read" cx="77" cy="69" r="23" />
      <path class="pic-read" d="M77 69L60 85" />
    </>
  ),
  handle: () => (
    <>
      <Cup />
      <path class="pic-body" d="M97 40h12q12 0 12 14t-14 20h-13" />
      <Span x1={88} y1={30} x2={110} y2={30} />
    </>
  ),
  reading: () => (
    <>
      <path class="pic-body" d="M10 60H130M10 78H130" />
      <path
        class="pic-faint-line"
        d="M20 60v8M30 60v8M40 60v8M50 60v12M60 60v8M70 60v8M80 60v8M90 60v8M100 60v12M110 60v8M120 60v8"
      />
      <path class="pic-read" d="M66 40v20M70 40v20M75 40v20" />
    </>
  ),
  wallKind: () => (
    <>
      <Cup />
      <path class="pic-read" d="M106 14L95 104" />
    </>
  ),
  use: () => (
    <>
      <Cup />
      <path class="pic-zone" d="M40 22L42 40Q70 47 98 40L100 22Q70 30 40 22" />
    </>
  ),
  repeat: () => (
    <>
      <Tile x={34} y={36} />
      <Tile x={64} y={36} faint />
      <Tile x={34} y={60} faint />
      <Span x1={34} y1={28} x2={64} y2={28} />
      <Span x1={26} y1={36} x2={26} y2={60} />
    </>
  ),
  drop: () => (
    <>
      <Tile x={34} y={48} />
      <Tile x={64} y={36} faint />
      <Tile x={94} y={48} faint />
      <Span x1={104} y1={36} x2={104} y2={48} />
    </>
  ),
  shift: () => (
    <>
      <Tile x={34} y={60} />
      <Tile x={64} y={60} faint />
      <Tile x={49} y={36} faint />
      <Span x1={34} y1={28} x2={49} y2={28} />
    </>
  ),
  coat: () => (
    <>
      <path class="pic-body" d="M50 20V100" />
      <path class="pic-zone" d="M50 20h12v80h-12z" />
      <Span x1={50} y1={60} x2={62} y2={60} />
    </>
  ),
  band: () => (
    <>
      <Cup />
      <path class="pic-zone" d="M42 40L46 84Q70 90 94 84L98 40Q70 47 42 40" />
      <Span x1={108} y1={40} x2={103} y2={84} />
    </>
  ),
  overlap: () => (
    <>
      <Flat />
      <path class="pic-zone" d="M112 92L120 40L128 43L119 95Z" />
      <path class="pic-read" d="M120 40L112 92" />
    </>
  ),
  lay: () => (
    <>
      <Flat />
      <path class="pic-faint-line" d="M23 57Q70 40 117 57M25 75Q70 59 115 75" />
      <path class="pic-zone" d="M62 34a8 6 0 1 0 16 0a8 6 0 1 0-16 0M64 68a6 6 0 1 0 12 0a6 6 0 1 0-12 0" />
      <Span x1={54} y1={22} x2={86} y2={22} />
    </>
  ),
  stretch: () => (
    <>
      <rect class="pic-body" x="44" y="36" width="52" height="40" />
      <rect class="pic-faint-line pic-hollow" x="32" y="40" width="76" height="32" />
      <Span x1={12} y1={56} x2={128} y2={56} />
    </>
  ),
  colours: () => (
    <>
      <path
        class="pic-zone"
        d="M30 26h14v14h-14zM58 26h14v14h-14zM86 26h14v14h-14zM30 54h14v14h-14zM86 54h14v14h-14zM30 82h14v14h-14zM58 82h14v14h-14z"
      />
      <path class="pic-read" d="M24 20H106V74Q78 104 24 102Z" />
    </>
  ),
  itemAcross: () => (
    <>
      <Cup />
      <path class="pic-zone" d="M52 50h36v20h-36z" />
      <Span x1={52} y1={80} x2={88} y2={80} />
    </>
  ),
  strip: () => (
    <>
      <path class="pic-body" d="M14 30L20 92H66V30ZM74 30V92H120L126 30Z" />
      <path class="pic-zone" d="M58 26H82V96H58Z" />
      <Span x1={58} y1={16} x2={82} y2={16} />
    </>
  ),
  turn: () => (
    <>
      <circle class="pic-body" cx="70" cy="56" r="36" />
      <path class="pic-read" d="M70 92A36 36 0 0 0 106 56M106 56l-7 6M106 56l5 8" />
      <path class="pic-faint-line" d="M70 56V104" />
      <circle class="pic-zone" cx="70" cy="20" r="8" />
    </>
  ),
  placeAlong: () => (
    <>
      <Cup />
      <circle class="pic-zone" cx="70" cy="58" r="10" />
      <path class="pic-faint-line" d="M70 58H112" />
      <Span x1={109} y1={58} x2={104} y2={97} />
    </>
  ),
  capHeight: () => (
    <>
      <path class="pic-body" d="M40 30V84M74 30V84M40 57H74M92 84V62Q92 50 103 50T114 62V84" />
      <path class="pic-faint-line" d="M14 30H120M14 84H130" />
      <Span x1={24} y1={30} x2={24} y2={84} />
    </>
  ),
  fit: () => (
    <>
      <path class="pic-body" d="M28 40V72M46 40V72M28 56H46M60 72V50M74 72V50H86V72M100 40V72H112" />
      <Span x1={26} y1={88} x2={114} y2={88} />
    </>
  ),
  gores: () => (
    <path
      class="pic-body"
      d="M30 14Q12 56 30 98Q48 56 30 14ZM70 14Q52 56 70 98Q88 56 70 14ZM110 14Q92 56 110 98Q128 56 110 14Z"
    />
  ),
  panels: () => (
    <>
      <Flat />
      <path class="pic-zone" d="M62 32L74 31L73 84L63 84Z" />
      <path class="pic-read" d="M68 31V84" />
    </>
  ),
  sheet: () => (
    <>
      <rect class="pic-body" x="14" y="12" width="112" height="86" />
      <rect class="pic-faint-line pic-hollow" x="22" y="20" width="96" height="70" />
      <path class="pic-body" d="M32 60Q70 40 108 60L102 84Q70 70 38 84Z" />
      <Span x1={14} y1={32} x2={126} y2={32} />
    </>
  ),
  trim: () => (
    <>
      <Flat />
      <path class="pic-zone" d="M20 40Q70 22 120 40L122 32Q70 14 18 32Z" />
    </>
  ),
  relief: () => (
    <>
      <Flat />
      <path class="pic-zone" d="M52 44Q60 38 68 44T84 46L80 62Q66 56 54 62Z" />
      <path class="pic-read pic-dashed" d="M36 36L42 88M70 62V82M104 36L98 88" />
    </>
  ),
  stencil: () => (
    <>
      <rect class="pic-body" x="24" y="14" width="92" height="84" />
      <path
        class="pic-zone"
        d="M64 30A28 28 0 0 0 64 82V70A16 16 0 0 1 64 42ZM76 30A28 28 0 0 1 76 82V70A16 16 0 0 0 76 42Z"
      />
      <path class="pic-read" d="M64 30V42M76 30V42M64 70V82M76 70V82" />
    </>
  ),
  mask: () => (
    <>
      <Cup />
      <path class="pic-zone" d="M41 30Q70 37 99 30L96 62Q88 66 82 56T62 54T44 62Z" />
      <circle class="pic-body" cx="72" cy="72" r="9" />
      <Span x1={72} y1={63} x2={72} y2={50} />
    </>
  ),
  collar: () => (
    <>
      <Cup />
      <path class="pic-zone" d="M43 52Q70 60 97 52L96 66Q70 74 44 66Z" />
      <path class="pic-read" d="M43 52Q70 60 97 52" />
    </>
  ),
} as const satisfies Partial<Readonly<Record<HelpKey, () => preact.JSX.Element>>>;

type Drawn = keyof typeof pictures;

/** Help whose reading is taken as another's is: every help has a picture. */
const sameAs: Readonly<Record<Exclude<HelpKey, Drawn>, Drawn>> = {
  lipRound: 'footRound',
  keepOff: 'handle',
  tape: 'girth',
  artwork: 'repeat',
  around: 'repeat',
  ways: 'repeat',
  seam: 'overlap',
  film: 'coat',
  edges: 'band',
  pieces: 'gores',
  hold: 'strip',
  motifLay: 'lay',
  artAcross: 'repeat',
  clear: 'placeAlong',
  pieceSpacing: 'sheet',
  batch: 'sheet',
  spacing: 'fit',
  lineStep: 'capHeight',
  backing: 'capHeight',
  fitMiss: 'overlap',
  fitClimb: 'overlap',
  keepOut: 'band',
  lipZone: 'use',
  layers: 'coat',
  spread: 'coat',
  under: 'coat',
  mend: 'repeat',
  seamTop: 'overlap',
  measured: 'sheet',
  testStrip: 'stretch',
  reliefClear: 'relief',
  thinnest: 'stencil',
  smallest: 'relief',
  gather: 'stretch',
  grain: 'sheet',
  standOff: 'mask',
  maskSmooth: 'mask',
  maskWindow: 'mask',
  collarLine: 'placeAlong',
  collarTab: 'overlap',
  collarPaper: 'coat',
};

const isDrawn = (about: HelpKey): about is Drawn => Object.hasOwn(pictures, about);

/** The picture that goes with help; it says nothing that the words do not. */
export function HelpPicture({ about }: { readonly about: HelpKey }) {
  const Picture = pictures[isDrawn(about) ? about : sameAs[about]];
  return (
    <svg class="help-picture" viewBox="0 0 140 110" aria-hidden="true">
      <Picture />
    </svg>
  );
}
