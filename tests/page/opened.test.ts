// What is opened onto the bench beside what lies there.
import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { emptyBench } from '../../src/page/model/bench.ts';
import { withOpened } from '../../src/page/model/contract-files.ts';

const bytes = new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"/>');
const artwork = {
  file: 'scales.svg',
  repeat: { across: 45, up: 30 },
  around: 5,
  ground: ['#f4efe2'],
  lay: 'conformal',
  mend: true,
};
const bench = { ...emptyBench('mm'), job: { name: 'cup', artwork }, files: { 'scales.svg': bytes } };

test('another drawing keeps how it is laid, and nothing that was said of the one before', () => {
  const { job, files } = withOpened(bench, [{ name: 'kelp.svg', bytes }]).bench;
  expect(job.artwork).toEqual({ file: 'kelp.svg', lay: 'conformal', mend: true });
  expect(files['kelp.svg']).toBe(bytes);
});

test('the same drawing, drawn anew, keeps all', () => {
  const drawn = new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"><path/></svg>');
  const { job, files } = withOpened(bench, [{ name: 'scales.svg', bytes: drawn }]).bench;
  expect(job.artwork).toEqual(artwork);
  expect(files['scales.svg']).toBe(drawn);
});

/** A zip archive of one file that says of itself that it is so large unpacked. Source: APPNOTE 6.3.10, 4.3.12, a size at 24 of a central header. */
function zipOf(name: string, size: number): Uint8Array {
  const zip = zipSync({ [name]: bytes });
  const header = zip.findIndex((_, i) => [0x50, 0x4b, 1, 2].every((byte, k) => zip[i + k] === byte));
  new DataView(zip.buffer, zip.byteOffset).setUint32(header + 24, size, true);
  return zip;
}

test('a file in an archive that is too large to be read is named, and not taken for one that is not there', () => {
  const opened = (size: number) => () =>
    withOpened(emptyBench('mm'), [{ name: 'cup.zip', bytes: zipOf('kelp.svg', size) }]).bench.files;
  expect(opened(bytes.length)()).toHaveProperty(['kelp.svg']);
  expect(opened(60_000_000)).toThrow('kelp.svg: is 60 MB; up to 50 MB is read');
});

test('what is nothing for the bench is told, and not let go of without a word', () => {
  const open = (...names: string[]) =>
    withOpened(
      bench,
      names.map((name) => ({ name, bytes: new Uint8Array([80]) })),
    );
  expect(() => open('notes.docx')).toThrow('notes.docx: can’t be used here; give a drawing');
  expect(() => open('hand.ttf', 'names.csv')).toThrow('hand.ttf, names.csv: can’t be used here');
  expect(open('notes.docx', 'kelp.svg').says).toEqual([]);
});
