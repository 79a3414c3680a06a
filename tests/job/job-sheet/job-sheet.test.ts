// The job sheet as a maker reads it, of whole jobs.
import { expect, test } from 'vitest';
import { folderOf } from '../a-folder.ts';
import { dotTile } from '../a-job.ts';

const blank = {
  stations: [
    { height: 0, across: 70 },
    { height: 90, across: 70 },
  ],
};
const artwork = { repeat: { across: 22, up: 22 } };

/** Its words, in one line. */
async function sheetOf(job: object): Promise<string> {
  const { texts } = await folderOf({ blank, job, artwork, tile: dotTile(22, 22) });
  return (texts['job-sheet.html'] ?? '')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&#39;', "'")
    .replace(/\s+/g, ' ');
}

test('what guards the lungs is a respirator: in this trade a mask is film', async () => {
  const said = await sheetOf({ film: { use: 'mask' }, coats: [{ name: 'clear', thickness: 0.1 }] });
  // Sprayed in the work and in the cautions, and a coat is laid.
  expect(said.match(/the respirator that the product's own sheet names/g)).toHaveLength(3);
  expect(said).not.toMatch(/mask that the/);
});
