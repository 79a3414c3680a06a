// What a folder that `make` wrote holds, read for the proof.
import { readdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { Refused, stop } from '../finding.ts';
import type { DeliveredFolder } from '../job/list/prove-folder.ts';
import { parseJson } from '../job/typed/read-json.ts';
import { readText } from './files.ts';
import { recover } from './staging.ts';

/** The names in a folder, once an earlier run's work is finished. @throws Refused where there is no such folder. */
export async function namesIn(folder: string): Promise<readonly string[]> {
  await recover(folder);
  const names = await readdir(folder).catch(() => undefined);
  if (names) return names;
  throw new Refused([
    stop('unreadable', { file: folder }, 'there is no such folder; give the one that "make" wrote to'),
  ]);
}

/** Cut files and guides of a folder by their names. */
export async function svgTexts(
  folder: string,
  names: readonly string[],
): Promise<Readonly<Record<string, string>>> {
  const texts: Record<string, string> = {};
  for (const name of names.filter((one) => /\.(cut|guide)\.svg$/.test(one)).sort())
    texts[name] = await readText(join(folder, name), name);
  return texts;
}

/** What the folder holds. @throws Refused where it is no folder, or holds no job. */
export async function folderOf(folder: string, blank?: string): Promise<DeliveredFolder> {
  const names = await namesIn(folder);
  if (!names.includes('job.json'))
    throw new Refused([
      stop('no-job', { file: folder }, 'holds no job.json; give a folder that "make" or "names" wrote to'),
    ]);
  const parsed = async (path: string, named: string) => parseJson(await readText(path, named), named);
  return {
    job: await parsed(join(folder, 'job.json'), 'job.json'),
    blank: await parsed(blank ?? join(folder, 'blank.json'), blank ?? 'blank.json'),
    blankFile: basename(blank ?? 'blank.json'),
    ...(names.includes('report.json')
      ? { report: await parsed(join(folder, 'report.json'), 'report.json') }
      : {}),
    texts: await svgTexts(folder, names),
  };
}
