// How each step of the card stands, in a word or two.
import { listAt, valueAt } from '../model/bench.ts';
import { bench, findings, hasArtwork, isStillToGive, isUntouched, vessel } from '../store.ts';
import { made } from './files-step.tsx';
import type { StepState } from './step.tsx';

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

export function vesselState(): StepState {
  const { answer, refused } = vessel.value;
  if (isUntouched.value) return { is: 'open', says: 'readings to give' };
  const wanting = refused?.filter(isStillToGive).length ?? 0;
  if (refused && wanting === refused.length)
    return { is: 'open', says: count(wanting, 'reading to give', 'readings to give') };
  if (refused) return { is: 'stop', says: 'cannot be yet' };
  return answer ? { is: 'ready', says: String(bench.value.blank.name ?? '') } : { is: 'open', says: '' };
}

export function checksState(): StepState {
  const told = findings.value.filter((finding) => !isStillToGive(finding));
  const stops = told.filter(({ level }) => level === 'stop').length;
  const looks = told.filter(({ level }) => level === 'look').length;
  if (stops > 0) return { is: 'stop', says: count(stops, 'stop', 'stops') };
  if (looks > 0) return { is: 'look', says: count(looks, 'thing to look at', 'things to look at') };
  if (isUntouched.value || findings.value.some(isStillToGive))
    return {
      is: 'open',
      says: isUntouched.value ? 'waits for the readings' : 'waits for what is still to give',
    };
  return {
    is: 'ready',
    says: told.length > 0 ? count(told.length, 'note', 'notes') : 'nothing stands against it',
  };
}

export function filesState(): StepState {
  if (!made.value) return { is: 'open', says: 'not made yet' };
  if (made.value.from !== bench.value) return { is: 'look', says: 'made before the last change' };
  return { is: 'ready', says: count(made.value.answer.files.length, 'file', 'files') };
}

export function artState(): StepState {
  const items = listAt(bench.value, 'job', 'items').length;
  const texts = listAt(bench.value, 'job', 'lettering').length;
  const says = [
    ...(hasArtwork.value ? [String(valueAt(bench.value.job, 'artwork.file'))] : []),
    ...(items > 0 ? [count(items, 'single motif', 'single motifs')] : []),
    ...(texts > 0 ? [count(texts, 'text', 'texts')] : []),
  ];
  return says.length > 0
    ? { is: 'ready', says: says.join(', ') }
    : { is: 'open', says: 'none: a plain template' };
}

export const seamState = (): StepState => ({ is: 'ready', says: '' });
