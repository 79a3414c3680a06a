// A thread that makes rows of a list, one at a time, as it is asked to.
import { parentPort, workerData } from 'node:worker_threads';
import { Refused } from '../finding.ts';
import { useSameSines } from '../job/same-sines.ts';
import { KeptFiles } from './files.ts';
import { besideJob } from './job-input.ts';
import { NamesBatch } from './names-batch.ts';
import type { RowAnswer, RowAsked, RowThreadInput } from './row-threads.ts';
import { loadTools } from './tools.ts';

useSameSines();

const input = workerData as RowThreadInput;
const kept = new KeptFiles(besideJob(input.jobPath), input.jobFile);
const batch = loadTools(Promise.resolve(input.engine)).then(
  (tools) => new NamesBatch({ ...input, kept, tools }),
);

async function answerTo({ row, folder }: RowAsked): Promise<Omit<RowAnswer, 'id'>> {
  try {
    const made =
      folder === undefined ? await (await batch).check(row) : await (await batch).make(row, folder);
    return made ? { made } : {};
  } catch (fault) {
    if (fault instanceof Refused) return { refused: fault.findings };
    return { fault: fault instanceof Error ? (fault.stack ?? fault.message) : String(fault) };
  }
}

parentPort?.on('message', async (asked: RowAsked) => {
  parentPort?.postMessage({ id: asked.id, ...(await answerTo(asked)) } satisfies RowAnswer);
});
