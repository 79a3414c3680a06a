// `seamwright prove`: delivered files rolled back onto the blank and measured.
import { readdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { Refused, stop } from '../finding.ts';
import type { Proof } from '../job/proof.ts';
import { failedRules, proofTable } from '../job/proof-in-words.ts';
import { type DeliveredFolder, leftOver, proofOfFolder } from '../job/prove-folder.ts';
import { parseJson } from '../job/read-json.ts';
import { recover } from './delivery.ts';
import { readText } from './files.ts';
import type { CommonOptions } from './options.ts';
import { printJson } from './output.ts';

export interface ProveFlags extends CommonOptions {
  readonly blank?: string;
}

/** What the folder holds. @throws Refused where it is no folder, or holds no job. */
async function folderOf(folder: string, { blank }: ProveFlags): Promise<DeliveredFolder> {
  await recover(folder);
  const names = await readdir(folder).catch(() => undefined);
  if (!names)
    throw new Refused([
      stop('unreadable', { file: folder }, 'there is no such folder; give the one that "make" wrote to'),
    ]);
  if (!names.includes('job.json'))
    throw new Refused([
      stop('no-job', { file: folder }, 'holds no job.json; give a folder that "make" wrote to'),
    ]);
  const parsed = async (path: string, named: string) => parseJson(await readText(path, named), named);
  const svgs = names.filter((name) => /\.(cut|guide)\.svg$/.test(name)).sort();
  const texts: Record<string, string> = {};
  for (const name of svgs) texts[name] = await readText(join(folder, name), name);
  return {
    job: await parsed(join(folder, 'job.json'), 'job.json'),
    blank: await parsed(blank ?? join(folder, 'blank.json'), blank ?? 'blank.json'),
    blankFile: basename(blank ?? 'blank.json'),
    ...(names.includes('report.json')
      ? { report: await parsed(join(folder, 'report.json'), 'report.json') }
      : {}),
    texts,
  };
}

/** Rows under one another, each column as wide as its widest cell; the last is left as it is. */
function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  return rows.map((row) =>
    row
      .map((cell, i) => (i === row.length - 1 ? cell : cell.padEnd(widths[i] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}

const verdict = (proof: Proof): string =>
  proof.pass ? `holds: all ${proof.checks.length} rows` : `FAILS at ${failedRules(proof).join(', ')}`;

export async function proveCommand(folder: string, flags: ProveFlags): Promise<number> {
  const delivered = await folderOf(folder, flags);
  const proof = proofOfFolder(delivered);
  const left = leftOver(delivered);
  if (flags.json)
    printJson({ pass: proof.pass, checks: proof.checks, ...(left.length > 0 ? { leftOver: left } : {}) });
  else process.stdout.write(`${[...aligned(proofTable(proof)), verdict(proof)].join('\n')}\n`);
  if (left.length > 0)
    process.stderr.write(
      `${folder}: ${left.join(', ')}: not of this make, and not proved; an earlier one left them, so delete them before anything is cut\n`,
    );
  if (proof.pass) return 0;
  process.stderr.write(`${folder}: ${verdict(proof)}\n`);
  return 1;
}
