// The picture of a job's sheets.
import { type ShownSheet, sheetsPicture } from '../../picture/sheets-picture.ts';
import type { NamedFile } from '../deliverables.ts';
import type { NestedSheets } from '../sheets/nest-sheets.ts';
import type { JobTools } from '../tools.ts';

export const sheetsPictureFile = 'sheets.svg';

/** More sheets than this are not drawn: their files tell them. */
const mostSheets = 24;

/** Film without a colour of its own, and paper. */
const plain = '#8d959a';

/** None where there are no sheets. */
export function sheetsPictures(
  { shown, reports }: Pick<NestedSheets, 'shown' | 'reports'>,
  name: string,
  { words }: Pick<JobTools, 'words'>,
): NamedFile[] {
  if (shown.length === 0) return [];
  const sheets = shown.slice(0, mostSheets).map((sheet, i): ShownSheet => {
    const { film = '', times = 1, file = '' } = reports[i] ?? {};
    const [, colour = plain] = /^(#[0-9a-f]{6})/i.exec(film) ?? [];
    const often = times > 1 ? `, cut ${times} times` : '';
    return { ...sheet, colour, says: `${file.replace('.cut.svg', '')}${film ? `: ${film}` : ''}${often}` };
  });
  const left = shown.length - sheets.length;
  const title = `${name}: sheets${left > 0 ? ` (${left} more are not drawn)` : ''}`;
  return [{ file: sheetsPictureFile, role: 'picture', content: sheetsPicture(sheets, title, words) }];
}
