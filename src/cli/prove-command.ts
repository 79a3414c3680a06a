// `seamwright prove`: delivered files rolled back onto the blank and measured.
import { Refused, stop } from '../finding.ts';
import { type DeliveredFolder, leftOver, proofOfFolder } from '../job/list/prove-folder.ts';
import type { Proof } from '../job/proof/proof.ts';
import { failedRules, proofTable } from '../job/proof/proof-in-words.ts';
import { folderOf } from './delivered-folder.ts';
import type { CommonOptions } from './options.ts';
import { printJson } from './output.ts';
import { proofOfListIn } from './prove-list.ts';

export interface ProveFlags extends CommonOptions {
  readonly blank?: string;
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

const proofOfOne = (delivered: DeliveredFolder) => ({
  proof: proofOfFolder(delivered),
  left: leftOver(delivered),
});

export async function proveCommand(folder: string, { blank, json }: ProveFlags): Promise<number> {
  const ofAll = await proofOfListIn(folder);
  if (ofAll && blank !== undefined)
    throw new Refused([
      stop('one-of-two', { key: '--blank' }, 'is for one vessel; give the folder of one of the list'),
    ]);
  const { proof, left } = ofAll ?? proofOfOne(await folderOf(folder, blank));
  if (json)
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
