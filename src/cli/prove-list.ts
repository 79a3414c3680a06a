// `seamwright prove` of all vessels of a list, and of the sheets that they share.
import { join } from 'node:path';
import { Refused, stop } from '../finding.ts';
import { namesFile } from '../job/list/names-report.ts';
import { proofOfFolder } from '../job/list/prove-folder.ts';
import { leftSheets, listedVessels, proofOfList, sheetTexts } from '../job/list/prove-list.ts';
import { proveSet, type SharedRow } from '../job/list/shared-sheets.ts';
import type { Proof } from '../job/proof/proof.ts';
import { parseJson } from '../job/typed/read-json.ts';
import { folderOf, namesIn, svgTexts } from './delivered-folder.ts';
import { readText } from './files.ts';
import { sharingRow, withTexts } from './shared-sheets.ts';

/** The proof of all vessels of a folder that `names` wrote, and what is not of it; undefined where it is of one vessel. */
export async function proofOfListIn(
  folder: string,
): Promise<{ readonly proof: Proof; readonly left: readonly string[] } | undefined> {
  const names = await namesIn(folder);
  if (names.includes('job.json') || !names.includes(namesFile)) return undefined;
  const listed = listedVessels(parseJson(await readText(join(folder, namesFile), namesFile), namesFile));
  if (listed.folders.length === 0)
    throw new Refused([
      stop(
        'no-vessels',
        { file: namesFile },
        'tells of no vessel, so nothing would be proved; make the list again, or give the folder of one vessel',
      ),
    ]);
  const vessels: { folder: string; proof: Proof }[] = [];
  for (const own of listed.folders)
    vessels.push({ folder: own, proof: proofOfFolder(await folderOf(join(folder, own))) });
  const cuts = await svgTexts(folder, names);
  const sets: Proof[] = [];
  for (const { rows, sheets } of listed.sets) {
    const full: SharedRow[] = [];
    for (const own of rows)
      full.push(await withTexts(folder, await sharingRow(folder, { folder: own, sharing: [] })));
    sets.push(proveSet(full, sheetTexts(sheets, cuts)));
  }
  return { proof: proofOfList(vessels, sets), left: leftSheets(listed, names) };
}
