// What is opened onto the bench beside what lies there.
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
