// How readings of a vessel are taken, and where a place on it is.
import { Cup, Span } from './picture-parts.tsx';

export const picturesOfVessel = {
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
  band: () => (
    <>
      <Cup />
      <path class="pic-zone" d="M42 40L46 84Q70 90 94 84L98 40Q70 47 42 40" />
      <Span x1={108} y1={40} x2={103} y2={84} />
    </>
  ),
  itemAcross: () => (
    <>
      <Cup />
      <path class="pic-zone" d="M52 50h36v20h-36z" />
      <Span x1={52} y1={80} x2={88} y2={80} />
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
  shown: () => (
    <>
      <path class="pic-body" d="M40 98L47 28Q48 22 54 22H86Q92 22 93 28L100 98" />
      <ellipse class="pic-lip" cx="70" cy="98" rx="30" ry="6" />
      <path class="pic-read" d="M12 104H128" />
    </>
  ),
} as const;
