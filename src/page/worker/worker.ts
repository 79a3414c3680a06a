// The engine in a thread of its own: answers one question after the other, and keeps the files it was handed.
import { Refused } from '../../finding.ts';
import { useSameSines } from '../../job/same-sines.ts';
import type { AnswerOf, AskOf, FromWorker, Kind, ThreadName, ToWorker } from '../model/messages.ts';
import { answers, type Progress } from './answers.ts';
import { loadTools, loadWords } from './engine.ts';
import { lead } from './leading.ts';

// What is only looked at while typing need not be the same to the last bit, and the engine's own sines are ten times faster.
const isFollowing = self.name === ('following' satisfies ThreadName);
if (!isFollowing) useSameSines();

const kept = new Map<number, Uint8Array>();

const tell = (message: FromWorker, handedOver: Transferable[] = []): void =>
  self.postMessage(message, handedOver);

/** Numbers by the ten thousand, and pictures, are handed over, not copied. */
function handedOver(given: AnswerOf<Kind>): Transferable[] {
  if ('solid' in given) return given.solid.covers.flatMap(({ strips }) => strips);
  if (!('followed' in given)) return [];
  // Which commands they belong to is the thread's own, for the keys to come.
  return given.followed.art.flat().map(({ ink: { points } }) => points.buffer);
}

async function answer<K extends Kind>(kind: K, id: number, ask: AskOf<K>): Promise<void> {
  const start = performance.now();
  const progress: Progress = (step, of, says) => tell({ id, is: 'step', step, of, says });
  try {
    const files = new Map<string, Uint8Array>();
    for (const [name, mark] of Object.entries(ask.bench.files)) {
      const bytes = kept.get(mark);
      if (bytes) files.set(name, bytes);
    }
    const given = await answers[kind](ask, files, progress);
    tell({ id, is: 'answer', answer: given, ms: performance.now() - start }, handedOver(given));
  } catch (fault) {
    if (fault instanceof Refused) tell({ id, is: 'refused', findings: fault.findings });
    else tell({ id, is: 'fault', says: fault instanceof Error ? fault.message : String(fault) });
  }
}

self.onmessage = ({ data }: MessageEvent<ToWorker>): void => {
  if (data.kind === 'keep') {
    kept.set(data.mark, data.bytes);
    return;
  }
  if (data.kind === 'let-go') {
    for (const mark of data.marks) kept.delete(mark);
    return;
  }
  if (data.kind === 'lead') {
    lead(data);
    return;
  }
  const { kind, id, ...ask } = data;
  void answer(kind, id, ask);
};

// Artwork's reader takes longest to start, so it starts at once; where that fails, the question that needs it says so.
(isFollowing ? loadWords() : loadTools()).catch(() => undefined);
