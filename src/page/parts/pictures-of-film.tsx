// What is done with pattern, film and sheet.
import { Cup, Flat, Span, Tile } from './picture-parts.tsx';

export const picturesOfFilm = {
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
  ground: () => (
    <>
      <path class="pic-body" d="M24 20H116V92H24Z" />
      <path
        class="pic-zone"
        d="M34 30h14v14h-14zM63 30h14v14h-14zM92 30h14v14h-14zM34 66h14v14h-14zM63 66h14v14h-14zM92 66h14v14h-14z"
      />
    </>
  ),
  strip: () => (
    <>
      <path class="pic-body" d="M14 30L20 92H66V30ZM74 30V92H120L126 30Z" />
      <path class="pic-zone" d="M58 26H82V96H58Z" />
      <Span x1={58} y1={16} x2={82} y2={16} />
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
  levels: () => (
    <>
      <Flat />
      <path class="pic-zone" d="M24 62Q70 45 116 62L115 71Q70 54 25 71Z" />
      <path class="pic-read" d="M24 66Q70 49 116 66" />
    </>
  ),
} as const;
