// `inspect` as a maker runs it.
import { afterAll, describe, expect, test } from 'vitest';
import { patience, run, Workshop } from './run.ts';

const shop = new Workshop();
const svg = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="60mm" viewBox="0 0 100 60">${body}</svg>`;
shop.write('neck.svg', svg('<path id="neck" d="M5 5H25V14.75H35V5H55V25H35V15.25H25V25H5Z"/>'));
const dot = (i: number) => `<path d="M${10 * i} 10h1.2v1.2h-1.2Z"/>`;
shop.write('dots.svg', svg([1, 2, 3, 4, 5, 6, 7, 8, 9].map(dot).join('')));
shop.write('clean.svg', svg('<path d="M5 5H25V25H5Z"/>'));
shop.write('thin.film.json', { name: 'thin', source: 'invented', units: 'mm', minWidth: 0.4 });
shop.write('bad.film.json', { name: 'bad', minWidht: 1 });
afterAll(() => shop.clear());

describe('inspect', () => {
  test('tells what it found on one line each, with its place, and ends with 1', patience, async () => {
    const { status, out, lines } = await run(['inspect', 'neck.svg'], { cwd: shop.folder });
    expect(status).toBe(1);
    expect(out).toContain('1 piece of film, 0.18 m of cutting');
    // Of its discs, 1 mm apart, one of the two beside its middle at 30 mm.
    expect(lines).toEqual([
      expect.stringMatching(/^look: neck\.svg: (?:29|30)\.5, 15 mm: film is 0\.5 mm wide/),
    ]);
  });

  test('tells six of one rule, and how many more there are', patience, async () => {
    const { lines, out } = await run(['inspect', 'dots.svg', '--json'], { cwd: shop.folder });
    expect(lines).toHaveLength(7);
    expect(lines[6]).toBe('look: small-piece: 3 more are in the report (or under --json)');
    expect(JSON.parse(out).checks).toHaveLength(9);
  });

  test(
    'ends with 0 on clean art, and on art that the film named can stand, with 2 on a size that cannot be meant',
    patience,
    async () => {
      expect((await run(['inspect', 'clean.svg'], { cwd: shop.folder })).status).toBe(0);
      const film = ['inspect', 'neck.svg', '--film', 'thin.film.json'];
      expect((await run(film, { cwd: shop.folder })).status).toBe(0);
      expect((await run([...film, '--min-width', '0.6'], { cwd: shop.folder })).status).toBe(1);
      expect((await run(['inspect', 'neck.svg', '--art-across', '300'], { cwd: shop.folder })).status).toBe(
        0,
      );
      const tiny = await run(['inspect', 'neck.svg', '--art-across', '0.00001mm'], { cwd: shop.folder });
      expect(tiny.status).toBe(2);
      expect(tiny.lines).toEqual([
        '--art-across: "0.00001mm" is under 0.1 mm, which cannot be meant; check the unit',
      ]);
    },
  );

  test(
    '--json gives the document of the contract, and --out the picture and the list',
    patience,
    async () => {
      const { status, out } = await run(['inspect', 'neck.svg', '--json', '--out', 'seen'], {
        cwd: shop.folder,
      });
      expect(status).toBe(1);
      const { checks, pieces, cutLength, files } = JSON.parse(out);
      expect(checks[0]).toMatchObject({ rule: 'thin-film', level: 'look', where: { y: 15 } });
      expect(Math.abs(checks[0].where.x - 30)).toBeLessThan(0.501);
      expect(Math.abs(checks[0].size - 0.5)).toBeLessThan(0.001);
      expect(pieces).toBe(1);
      expect(Math.abs(cutLength - 179)).toBeLessThan(0.001);
      expect(files.map(({ file }: { file: string }) => file)).toEqual([
        'inspect.svg',
        'inspect.png',
        'inspect.json',
      ]);
      expect(JSON.parse(shop.read('seen/inspect.json'))).toEqual(JSON.parse(out));
      expect(shop.read('seen/inspect.svg')).toContain('<g data-role="mark">');
    },
  );

  test(
    '--mend writes the mended art and its picture, and art that is clean when inspected again',
    patience,
    async () => {
      const args = ['inspect', 'neck.svg', '--mend', '--out', 'mended'];
      const { status, out, lines } = await run(args, { cwd: shop.folder });
      expect(status).toBe(0);
      expect(out).toContain('mended in 1 place; an edge moved by 0.27 mm at most');
      expect(lines).toEqual([
        expect.stringMatching(/^note 1: neck\.svg: .*mended: film thinner than 1 mm at 1 place/),
      ]);
      expect(shop.read('mended/mended-picture.svg')).toContain('<g data-role="mark">');
      expect((await run(['inspect', 'mended/mended.svg'], { cwd: shop.folder })).status).toBe(0);
      const kept = await run(['inspect', 'neck.svg', '--mend'], { cwd: shop.folder });
      expect(kept.status).toBe(2);
      expect(kept.lines).toEqual([expect.stringMatching(/^--mend: writes the mended art; say where/)]);
    },
  );

  test(
    'what is wrong with a flag or a film file is told, all at once, and nothing is written',
    patience,
    async () => {
      const before = shop.state();
      const args = ['inspect', 'neck.svg', '--min-width', 'x', '--min-piece', '-4', '--use', 'sticker'];
      const { status, lines } = await run([...args, '--out', 'nothing'], { cwd: shop.folder });
      expect(status).toBe(2);
      expect(lines.map((line) => line.split(':')[0])).toEqual(['--min-width', '--min-piece', '--use']);
      // As in a job: film that holds only where it is wider is none.
      const wide = ['inspect', 'neck.svg', '--min-width', '11mm', '--min-gap', '2in'];
      expect((await run(wide, { cwd: shop.folder })).lines).toEqual([
        '--min-width: "11mm" is over 10 mm, which cannot be meant; check the unit',
        '--min-gap: "2in" is over 10 mm, which cannot be meant; check the unit',
      ]);
      const film = await run(['inspect', 'neck.svg', '--film', 'bad.film.json'], { cwd: shop.folder });
      expect(film.status).toBe(2);
      expect(film.lines).toEqual([
        expect.stringMatching(/^bad\.film\.json: minWidht: unknown key "minWidht"; .*"minWidth"/),
      ]);
      expect((await run(['inspect', 'none.svg'], { cwd: shop.folder })).status).toBe(2);
      expect(shop.state()).toEqual(before);
    },
  );
});
