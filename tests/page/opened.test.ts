// What is opened onto the bench beside what lies there.
import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { emptyBench, withFile, withoutItem } from '../../src/page/model/bench.ts';
import { archiveName, folderZip, withOpened } from '../../src/page/model/contract-files.ts';

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

const other = new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0h9"/></svg>');

test('files of one name from two folders stay two: a motif is not changed by what is laid all around, nor by another motif', () => {
  const items = [{ file: 'tern.svg', across: 40 }];
  const withMotif = { ...emptyBench('mm'), job: { name: 'cup', items }, files: { 'tern.svg': bytes } };
  const laid = withOpened(withMotif, [{ name: 'tern.svg', bytes: other }], 'artwork').bench;
  expect(laid.job).toMatchObject({ items, artwork: { file: 'tern-2.svg' } });
  expect(laid.files).toMatchObject({ 'tern.svg': bytes, 'tern-2.svg': other });
  const third = withFile(laid, 'items[1].file', 'tern.svg', Uint8Array.from(other));
  expect(third.job.items).toMatchObject([{ file: 'tern.svg' }, { file: 'tern-2.svg' }]);
  // Where it alone has the name it is drawn anew, and the name stays.
  const anew = withFile(withoutItem(third, 'job', 'items', 1), 'artwork.file', 'tern-2.svg', bytes);
  expect(anew.job.artwork).toEqual({ file: 'tern-2.svg' });
  expect(anew.files['tern-2.svg']).toBe(bytes);
});

test('a motif’s own drawing may be laid all around too', () => {
  const items = [{ file: 'tern.svg', across: 40 }];
  const withMotif = { ...emptyBench('mm'), job: { name: 'cup', items }, files: { 'tern.svg': bytes } };
  const laid = withOpened(withMotif, [{ name: 'tern.svg', bytes }], 'artwork').bench;
  expect(laid.job.artwork).toEqual({ file: 'tern.svg' });
});

test('of several drawings dropped together one is laid, and the others are told', () => {
  const drawings = ['kelp.svg', 'tern.svg'].map((name) => ({ name, bytes }));
  const { bench: next, says } = withOpened(bench, drawings);
  expect(next.job.artwork).toMatchObject({ file: 'kelp.svg' });
  expect(says).toEqual([expect.stringMatching(/^tern\.svg was not used: one drawing is laid all around/)]);
});

test('a saved job brings the fonts of its drawings and its printer back, or says which are wanting', () => {
  const drawn = { file: 'sign.svg', fonts: ['fjord.ttf'] };
  const job = { name: 'cup', artwork: drawn, printer: 'own.printer.json' };
  const printer = new TextEncoder().encode('{ "measured": { "across": 149.4, "up": 150.15 } }');
  const files = { 'sign.svg': bytes, 'fjord.ttf': bytes, 'own.printer.json': printer };
  const zip = folderZip({ ...emptyBench('mm'), job, files });
  const back = withOpened(emptyBench('mm'), [{ name: 'cup.zip', bytes: zip }]);
  expect(Object.keys(back.bench.files).sort()).toEqual(Object.keys(files).sort());
  expect(back.says).not.toContainEqual(expect.stringContaining('fjord.ttf'));
  const text = new TextEncoder().encode(JSON.stringify({ ...job, blank: 'a.blank.json' }));
  const alone = withOpened(emptyBench('mm'), [{ name: 'a.job.json', bytes: text }]);
  expect(alone.says).toContainEqual(expect.stringMatching(/^fjord\.ttf is named by the job/));
});

test('a job that names files of one name in folders apart is refused: here they would be one', () => {
  const job = { name: 'cup', blank: 'a.blank.json', items: [{ file: 'a/tern.svg' }, { file: 'b/tern.svg' }] };
  const text = new TextEncoder().encode(JSON.stringify(job));
  expect(() => withOpened(emptyBench('mm'), [{ name: 'a.job.json', bytes: text }])).toThrow(
    'a.job.json: names two files called tern.svg in folders apart',
  );
});

test('an archive is called after the job, in small plain letters, whatever waits for a list’s columns', () => {
  const called = (name: string) => archiveName({ ...emptyBench('mm'), job: { name } });
  expect(called('Kelp pot for Zoë')).toBe('kelp-pot-for-zoe');
  expect(called("{name}'s mug")).toBe('mug');
  expect(called('CON')).toBe('name-con');
  expect(called('שחף')).toBe('my');
  expect(called('../../etc: a*b?')).toBe('etc-a-b');
});
