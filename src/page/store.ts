// What the page shows, as signals: the bench with its history, and what the engine last said of it.
import { computed, signal } from '@preact/signals';
import type { Finding } from '../finding.ts';
import type { PictureWindow } from '../job/pictures/profile-picture.ts';
import type { FollowedView } from '../job/view/followed-view.ts';
import { Engine, type Outcome } from './ask.ts';
import {
  type Bench,
  emptyBench,
  type Half,
  isUntyped,
  type Json,
  valueAt,
  withField,
} from './model/bench.ts';
import { type Colours, firstColours } from './model/colours.ts';
import { emptyList, type GivenList } from './model/given-list.ts';
import type { Held } from './model/held.ts';
import { changed, type History, historyOf, redone, undone } from './model/history.ts';
import type { AnswerOf, Kind } from './model/messages.ts';

export const history = signal<History<Held>>(
  historyOf({ bench: emptyBench('mm'), list: emptyList, colours: firstColours }),
);
export const held = computed(() => history.value.present);
export const bench = computed(() => held.value.bench);
export const list = computed(() => held.value.list);
export const colours = computed(() => held.value.colours);

/** What was kept, with no step before it. */
export function begin(kept: Partial<Held>): void {
  history.value = historyOf({ ...history.peek().present, ...kept });
}

/** What another tab keeps, as one step. */
export function takeUp(kept: Partial<Held>): void {
  const next = { ...history.value.present, ...kept };
  history.value = changed(history.value, next, 'another tab', Date.now());
}

/** Change the bench; `at` names what is changed, so that typing on in one field is one step back. `when`: ms. */
export function change(next: Bench, at: string, when = Date.now()): void {
  const { present } = history.value;
  if (next !== present.bench) history.value = changed(history.value, { ...present, bench: next }, at, when);
}

export function giveList(next: GivenList): void {
  const held = { ...history.value.present, list: next };
  history.value = changed(history.value, held, `list ${next.file}`, Date.now());
}

/** `at` names what is coloured: going through colours to choose one is one step back. */
export function changeColours(next: Colours, at: string): void {
  history.value = changed(history.value, { ...history.value.present, colours: next }, at, Date.now());
}

export const setField = (half: Half, path: string, value: Json | undefined): void =>
  change(withField(bench.value, half, path, value), `${half}:${path}`);

export function undo(): void {
  if (history.value.past.length === 0) return;
  history.value = undone(history.value);
  said.value = `Undone. ${history.value.past.length} before it.`;
}
export function redo(): void {
  if (history.value.future.length === 0) return;
  history.value = redone(history.value);
  said.value = `Done again. ${history.value.future.length} after it.`;
}

/** What the engine says of one kind of question: the last answer stays to be seen while the next is worked out. */
export interface Heard<K extends Kind> {
  readonly answer?: AnswerOf<K>;
  /** Why the newest could not be answered, in the maker's words. */
  readonly refused?: readonly Finding[];
  readonly fault?: string;
  readonly busy: boolean;
  /** How long the last answer took, ms. */
  readonly ms?: number;
  /** When the answer was asked for, by the page's own clock, ms. */
  readonly since?: number;
}

export interface WallPlace {
  readonly turn: number;
  /** mm, from the foot corner. */
  readonly along: number;
}

export const quiet = { busy: false } as const;
export const vessel = signal<Heard<'vessel'>>(quiet);
export const flat = signal<Heard<'flat'>>(quiet);
/** The flat drawing as it was laid last: the same while it is laid anew. */
export const flatLaid = computed(() => flat.value.answer);
/** That drawing carried to newer readings, until they are laid too. */
export const followed = signal<(FollowedView & { readonly since: number }) | undefined>(undefined);
/** How true to the job laid afresh a drawing has to be to be shown in its place, mm: half a dot of the screen. */
export const trueWithin = signal(0.1);
export const checks = signal<Heard<'checks'>>(quiet);
export const seam = signal<Heard<'seam'>>(quiet);
export const rolled = signal<Heard<'rolled'>>(quiet);
export const sides = signal<Heard<'sides'>>(quiet);
/** Whether the four sides are wanted in place of the 3D view. */
export const isFromSides = signal(false);
/** Whether this browser gave no 3D. */
export const isWithout3d = signal(false);
/** Whether this browser shows no 3D: it has none, or can't draw film for it. */
export const isFlatOnly = computed(
  () => isWithout3d.value || (rolled.value.answer !== undefined && !rolled.value.answer.solid),
);
/** Whether the finished vessel is seen from four sides; else it is turned in 3D. */
export const areSidesSeen = computed(() => isFromSides.value || isFlatOnly.value);
export const art = signal<Heard<'art'>>(quiet);
export const ways = signal<Heard<'ways'>>(quiet);
/** Whether a picture of one of the ways is being drawn. */
export const drawingWay = signal(false);
/** Whether the screen is still taking up the vessel in 3D. */
export const takingUp = signal(false);

/** The window that the wall is seen in where that is narrow: there it is drawn for it. */
export const narrowWall = signal<PictureWindow | undefined>(undefined);

export type ViewName = 'wall' | 'art' | 'flat' | 'vessel' | 'both' | 'seam';
export const view = signal<ViewName>('wall');
/** How many times the maker has chosen a view: what comes later must not take one from under their hand. */
export const viewsChosen = signal(0);
export function chooseView(name: ViewName): void {
  viewsChosen.value = viewsChosen.peek() + 1;
  isViewChosen = true;
  view.value = name;
}
/** Whether the view that is shown is one of those. */
let isViewChosen = false;
/** Show a view that goes with what is done, unless the maker has chosen one. */
export function offerView(name: ViewName): void {
  if (!isViewChosen) view.value = name;
}
/** Show the view that what has come onto the bench begins with. */
export function beginView(name: ViewName): void {
  isViewChosen = false;
  view.value = name;
}
/** How many files, or groups of them, are being fetched or read to be opened. */
export const opening = signal(0);
/** The finding that was selected last. */
export const selected = signal<Finding | undefined>(undefined);
/** The finding that the flat drawing has gone to: it goes to each once, however often its view is opened. */
export const wentTo = signal<Finding | undefined>(undefined);
/** Whether it is the selected one: a finding that comes anew, the same in every word, stays selected. */
export const isSelected = (finding: Finding): boolean =>
  selected.value !== undefined && inFull(selected.value) === inFull(finding);
const inFull = ({ rule, where, says }: Finding): string => JSON.stringify([rule, where, says]);
/** The place that is pointed at, on whichever view. */
export const pointed = signal<WallPlace | undefined>(undefined);
/** The place that was tapped last; it stays. */
export const pinned = signal<WallPlace | undefined>(undefined);
/** The place that every view shows. */
export const shownPlace = computed(() => pointed.value ?? pinned.value);
/** A line for everyone, read out to those who listen. */
export const said = signal('');

/** What follows typing, what lays the job and what takes longer have a thread each, so that none holds up the one before. */
export const following = new Engine('following');
export const laying = new Engine('laying');
export const slow = new Engine('slow');

export function heard<K extends Kind>(before: Heard<K>, outcome: Outcome<K>): Heard<K> {
  switch (outcome.is) {
    case 'answer':
      return { answer: outcome.answer, busy: false, ms: outcome.ms };
    case 'refused':
      return { ...kept(before), refused: outcome.findings, busy: false };
    case 'fault':
      return { ...kept(before), fault: outcome.says, busy: false };
    case 'overtaken':
      return before;
  }
}

const kept = <K extends Kind>({ answer }: Heard<K>): { readonly answer?: AnswerOf<K> } =>
  answer === undefined ? {} : { answer };

/** Whether nothing has been typed or opened yet: then the engine is not even fetched. */
export const isUntouched = computed(() => isUntyped(bench.value) && !isGuided.value);

/** Whether anything that was opened, or asked of the engine, is still to come. */
export const isBusy = computed(
  () =>
    opening.value > 0 ||
    drawingWay.value ||
    takingUp.value ||
    [vessel, flat, checks, seam, rolled, sides, art, ways].some((heard) => heard.value.busy),
);

/** Whether the guide leads: then the board waits for what it asks for. */
export const isGuided = signal(false);

export const hasArtwork = computed(() => valueAt(bench.value.job, 'artwork.file') !== undefined);

/** What the slower checks say. While they are at work again, only what they last said of the film, which changes least. */
function checkedLater(): readonly Finding[] {
  const { answer, busy } = checks.value;
  const all = answer?.checks ?? [];
  return busy ? all.filter(({ where }) => where.file?.endsWith('.cut.svg')) : all;
}

const ranks: Readonly<Record<Finding['level'], number>> = { stop: 0, look: 1, note: 2 };

/** Everything that stands against the job or wants the maker's eye, the most serious first; each thing once. */
export const findings = computed<readonly Finding[]>(() => {
  const { answer, refused } = flat.value;
  const all = refused
    ? [...refused, ...(vessel.value.refused ?? []), ...(vessel.value.answer?.checks ?? [])]
    : [...(answer?.report.checks ?? []), ...checkedLater()];
  const once = new Map(all.map((finding) => [inFull(finding), finding]));
  return [...once.values()].sort((a, b) => ranks[a.level] - ranks[b.level]);
});

/** Whether a finding only says that something is still to be typed: no fault yet, while the maker types. */
export function isStillToGive({ rule, where }: Finding): boolean {
  if (where.key === undefined) return false;
  const half = where.file === bench.value.blankFile ? 'blank' : 'job';
  if (valueAt(bench.value[half], where.key) === '') return true;
  return (rule === 'one-of-two' || rule === 'missing-key') && /^(stations|band)\b/.test(where.key);
}

/** The findings of one field, or of what is within it. */
export function findingsAt(half: Half, path: string): readonly Finding[] {
  const file = half === 'job' ? bench.value.jobFile : bench.value.blankFile;
  return findings.value.filter(({ where }) => {
    if (where.file !== file || where.key === undefined) return false;
    return where.key === path || where.key.startsWith(`${path}.`) || where.key.startsWith(`${path}[`);
  });
}
