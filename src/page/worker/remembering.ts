// What was worked out of a bench, kept for its next question: while readings are typed, its artwork stays the same.
import { Recall } from '../../job/recall.ts';
import type { BenchAsked } from '../model/messages.ts';

let kept: { readonly files: string; readonly recall: Recall } | undefined;

/** The memory for a bench. It begins anew when any file is another: results are kept by the names of files, not by what they hold. */
export function recallOf({ files }: BenchAsked): Recall {
  const marks = JSON.stringify(files);
  if (kept?.files !== marks) kept = { files: marks, recall: new Recall() };
  return kept.recall;
}
