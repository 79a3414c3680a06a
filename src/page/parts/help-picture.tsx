// Small pictures of how a reading is taken: the same cup every time, with what is read drawn in the one strong colour.
import type { HelpKey } from './help-words.ts';
import { picturesOfFilm } from './pictures-of-film.tsx';
import { picturesOfVessel } from './pictures-of-vessel.tsx';

const pictures = { ...picturesOfVessel, ...picturesOfFilm } as const satisfies Partial<
  Readonly<Record<HelpKey, () => preact.JSX.Element>>
>;

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
  seamAt: 'repeat',
  film: 'coat',
  edges: 'band',
  together: 'repeat',
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
