// The two drawings of gores that share coordinates: loose ones side by side, or a comb.
import type { Drawing, DrawnGroup, DrawnPath } from '../../drawing/drawing.ts';
import type { DrawWords } from '../../drawing/words.ts';
import {
  type Affine,
  compose,
  moveContour,
  movePoint,
  moveSegment,
  translation,
} from '../../geometry/affine.ts';
import { boxAround, grow } from '../../geometry/box.ts';
import { type Contour, polyline, type Segment, type Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { GoreComb } from '../../unroll/gore-comb.ts';
import {
  type GoreOptions,
  type GoreWall,
  goreEdge,
  goreLevel,
  goreOutline,
  mirrored,
} from '../../unroll/gores.ts';
import { guideSheet } from '../guide/guide-sheet.ts';
import { crossMark, type NotedPlace, notedMeaning, placeWords, tick, wordSize } from '../guide/marks.ts';
import type { LineMeaning } from '../guide/note-strip.ts';
import { type GorePatch, patchOnGores } from './gore-places.ts';
import type { LaidGore } from './laid-gore.ts';

export interface GoreDrawingOptions {
  /** What the film follows. */
  readonly wall: GoreWall;
  /** Of the last gore: its band is the piece's, with the trims. */
  readonly options: GoreOptions;
  /** The finished band, mm along. */
  readonly band: { readonly from: number; readonly to: number };
  /** Where the wall stops being flat, mm on; level lines there where the piece reaches so far. */
  readonly flatLimits?: readonly number[];
  /** Layers of art, each gore's areas in the drawing of its own outline; none on a plain template. */
  readonly layers?: readonly GoreArt[];
  /** Left out, gores are loose. */
  readonly comb?: GoreComb;
  /** What has to stay bare, mm on. */
  readonly bare?: readonly GorePatch[];
  readonly notes: readonly string[];
  readonly words: DrawWords;
}

/** A layer of art on gores from turn 0 on. */
export interface GoreArt {
  readonly name: string;
  readonly colour: string;
  readonly gores: readonly (readonly Shape[])[];
}

export interface GoreDrawings {
  readonly cut: Drawing;
  readonly guide: Drawing;
  /** Width and height of each gore's own outline, and of all that is cut, mm. */
  readonly sizes: readonly Size[];
  readonly whole: Size;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room around the pieces for marks, and between loose ones, mm. */
const margin = 14;
const between = 5;

const path = (contour: Contour, id?: string): DrawnPath => ({
  ...(id === undefined ? {} : { id }),
  contours: [contour],
});

const open = (segments: readonly Segment[]): Contour => ({ closed: false, segments });

/** Every gore where it lies: only the last has the overlap. */
function lay({ wall, options, comb }: GoreDrawingOptions): LaidGore[] {
  const { overlap = 0, ...plain } = options;
  let x = 0;
  return Array.from({ length: options.count }, (_, i) => {
    const isLast = i === options.count - 1;
    const ownOptions = isLast ? { ...plain, overlap } : plain;
    const own = goreOutline(wall, ownOptions);
    const box = tightBox([own]);
    const place = comb?.places[i] ?? translation(x - box.minX, 0);
    x += box.maxX - box.minX + between;
    return { number: i + 1, own, options: ownOptions, place };
  });
}

const levels = (laid: readonly LaidGore[], wall: GoreWall, along: number): Contour[] =>
  laid.map(({ options, place }) => open([moveSegment(place, goreLevel(wall, options, along))]));

function guideLines(
  { wall, band, options, flatLimits = [] }: GoreDrawingOptions,
  laid: readonly LaidGore[],
): DrawnGroup[] {
  const [first, last] = [laid[0], laid.at(-1)];
  if (!first || !last) return [];
  const finished = { ...options, band };
  const onPiece = translation(0, options.band.from - band.from);
  const right = goreEdge(wall, finished);
  const edge = (segments: readonly Segment[], place: Affine) =>
    open(segments.map((s) => moveSegment(compose(onPiece, place), s)));
  return [
    {
      role: 'seam',
      paths: [
        path(edge(right.map(mirrored), first.place), 'seam-start'),
        path(edge(right, last.place), 'seam-finish'),
      ],
    },
    {
      role: 'trim',
      paths: [
        { id: 'trim-foot', contours: levels(laid, wall, band.from) },
        { id: 'trim-lip', contours: levels(laid, wall, band.to) },
      ],
    },
    {
      role: 'flat-limit',
      paths: [...new Set(flatLimits)]
        .filter((on) => on >= options.band.from && on <= options.band.to)
        .map((on, i) => ({ id: `flat-limit-${i + 1}`, contours: levels(laid, wall, on) })),
    },
  ];
}

/** The art of every gore, moved to where its gore lies. */
const artwork = ({ layers = [] }: GoreDrawingOptions, laid: readonly LaidGore[]): DrawnGroup[] =>
  layers.map(({ name, colour, gores }) => ({
    role: 'artwork',
    layer: name,
    colour,
    paths: laid.flatMap(({ place }, i) =>
      (gores[i] ?? []).map(({ contours }) => ({ contours: contours.map((c) => moveContour(place, c)) })),
    ),
  }));

/** The middle line of every gore over the finished band, from the foot up: what it is laid by. */
const middles = (laid: readonly LaidGore[], { from, to }: GoreDrawingOptions['band']): DrawnPath[] =>
  laid.map(({ number, options, place }) => {
    const line = [from, to].map((on) => ({ x: 0, y: options.band.from - on }));
    return path(moveContour(place, polyline(line)), `gore-${number}-middle`);
  });

/** Marks of a gore in its own drawing: a tick past each end of its middle line. */
function ticksOf({ options, place }: LaidGore): Contour[] {
  const { from, to } = options.band;
  return [
    { y: 0, sign: 1 },
    { y: from - to, sign: -1 },
  ].map(({ y, sign }) =>
    moveContour(
      place,
      polyline([tick.clear, tick.clear + tick.length].map((away) => ({ x: 0, y: y + sign * away }))),
    ),
  );
}

/** Words with their middle at a point of a gore's own drawing, turned as the gore is. */
function wordsAt(
  contours: readonly Contour[],
  { x, y }: { x: number; y: number },
  place: Affine,
): DrawnPath[] {
  if (contours.length === 0) return [];
  const box = tightBox(contours);
  const middle = translation(x - (box.minX + box.maxX) / 2, y + wordSize / 3);
  return [{ contours: contours.map((c) => moveContour(compose(middle, place), c)) }];
}

function wordsOf(laid: readonly LaidGore[], words: DrawWords): DrawnPath[] {
  const [foot, lip] = ['foot', 'lip'].map((text) => words(text, wordSize));
  if (!foot || !lip) return [];
  const away = tick.clear + tick.length + wordSize * 0.6;
  const room = Math.max(0, ...[foot, lip].filter((w) => w.length > 0).map((w) => tightBox(w).maxX)) + 1;
  return laid.flatMap((gore, i) => {
    const { from, to } = gore.options.band;
    const number = words(String(gore.number), wordSize);
    const marks = wordsAt(number, { x: 0, y: (from - to) / 2 }, gore.place);
    const ends = [
      { text: foot, y: away },
      { text: lip, y: from - to - away },
    ].filter(({ y }) => i === 0 || isApart(gore.place, laid[i - 1]?.place, y, room));
    return [...marks, ...ends.flatMap(({ text, y }) => wordsAt(text, { x: 0, y }, gore.place))];
  });
}

/** Whether the words at one end of two neighbours have room beside each other. */
function isApart(place: Affine, before: Affine | undefined, y: number, room: number): boolean {
  if (!before) return true;
  const [a, b] = [movePoint(place, { x: 0, y }), movePoint(before, { x: 0, y })];
  return Math.hypot(a.x - b.x, a.y - b.y) >= room;
}

const meaningsOf = (noted: readonly Pick<NotedPlace, 'says'>[]): readonly LineMeaning[] => [
  { role: 'outline', says: 'cut' },
  { role: 'seam', says: 'seam' },
  { role: 'trim', says: 'trim to here' },
  { role: 'flat-limit', says: 'flat up to here' },
  { role: 'note', says: notedMeaning(noted) },
];

/** The cut drawing and the guide of gores. */
export function goreDrawings(drawn: GoreDrawingOptions): GoreDrawings {
  const { comb, notes, words } = drawn;
  const laid = lay(drawn);
  const onSheet = laid.map(({ own, place }) => moveContour(place, own));
  const outlines = comb
    ? [path(comb.outline, 'gores')]
    : onSheet.map((contour, i) => path(contour, `gore-${i + 1}`));
  const cutBox = tightBox(outlines.flatMap(({ contours }) => contours));
  const noted = (drawn.bare ?? []).map((patch) => patchOnGores(drawn.wall, laid, patch));
  const wordPaths = wordsOf(laid, words);
  const noteBoxes = wordPaths.map(({ contours }) => tightBox(contours));
  const room = grow(boxAround([grow(cutBox, 2), ...noteBoxes]), margin / 2);
  const corners = [room.minX + 4, room.maxX - 4].flatMap((x) =>
    [room.minY + 4, room.maxY - 4].map((y) => ({ contours: crossMark({ x, y }) })),
  );
  const { cut, guide } = guideSheet({
    blade: [...artwork(drawn, laid), { role: 'outline', paths: outlines }],
    guide: [
      ...guideLines(drawn, laid),
      {
        role: 'register',
        paths: [
          ...corners,
          ...middles(laid, drawn.band),
          ...laid.flatMap(ticksOf).map((contour) => path(contour)),
        ],
      },
      { role: 'note', lines: true, paths: noted.flatMap(({ shapes }) => shapes) },
      {
        role: 'note',
        paths: [
          ...wordPaths,
          ...noted.flatMap((place) => placeWords(place, words)).map((contours) => ({ contours })),
        ],
      },
    ],
    room,
    margin: margin / 2,
    notes,
    meanings: meaningsOf(noted),
    words,
  });
  return {
    cut,
    guide,
    sizes: laid.map(({ own }) => sizeOf(own)),
    whole: { width: cutBox.maxX - cutBox.minX, height: cutBox.maxY - cutBox.minY },
  };
}

function sizeOf(contour: Contour): Size {
  const { minX, minY, maxX, maxY } = tightBox([contour]);
  return { width: maxX - minX, height: maxY - minY };
}
