// `seamwright repeat`, as a maker runs it.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { command, patience, projectFolder, run, Workshop } from './run.ts';

const shop = new Workshop();
afterAll(() => shop.clear());

const samples = `${projectFolder}/samples`;
const repeat = (...args: string[]) => run(['repeat', ...args], { cwd: shop.folder });

describe('repeat', () => {
  test('tells in words that a tile joins, its repeat, and the ways it can close', patience, async () => {
    const { status, out } = await repeat(
      `${samples}/canister/ropes.svg`,
      `${samples}/canister/canister.blank.json`,
      '--units',
      'mm',
    );
    expect(status).toBe(0);
    const [tile, joins, period, ground, first, ...rest] = out.trim().split('\n');
    expect(tile).toMatch(/^ropes\.svg: 44\.5 mm by 30\.2 mm/);
    expect(joins).toMatch(/^it joins itself/);
    expect(period).toBe('its repeat is its own size: 44.45 mm around by 30.16 mm up');
    expect(ground).toMatch(/has 269\.6 mm to go around/);
    // 269.6 mm over 44.45 mm is 6.06.
    expect(first).toMatch(/^1\. around-6: 6 around; 101\.1 % of the drawn size/);
    expect(rest.at(-1)).toMatch(/^make takes around-6/);
  });

  test('a repeat that a part of the art alone shows is offered as doubtful', patience, async () => {
    // Dashes recur by 6.5 mm, the rounds between them by nothing; a round end of a dash is cut off at the left.
    const dashes = [10, 29].map((y) => `<path d="M0 ${y}H52"/>`).join('');
    const rounds =
      '<circle cx="13" cy="19.5" r="3.2" fill="#c31"/><circle cx="39" cy="19.5" r="3.2" fill="#e93"/>';
    shop.write(
      'dashes.svg',
      `<svg xmlns="http://www.w3.org/2000/svg" width="52mm" height="39mm" viewBox="0 0 52 39"><g fill="none" stroke="#258" stroke-width="2.8" stroke-linecap="round" stroke-dasharray="4 2.5">${dashes}</g>${rounds}</svg>`,
    );
    const { status, out } = await repeat('dashes.svg', `${samples}/canister/canister.blank.json`);
    expect(status).toBe(1);
    expect(out).toMatch(/what may be its repeat: .*sure to [78]\d %.*look at it before you name it/);
    expect(out).toMatch(/make asks: name one in the job/);
  });

  test(
    'tells a smooth band cut where it mirrors itself from a zigzag, whose corners are its own',
    patience,
    async () => {
      const art = (d: string) =>
        `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><path d="${d}"/></svg>`;
      // Both slope by 45 degrees at either border, one up and one down.
      shop.write('arch.svg', art('M0 18C10 8 30 8 40 18V22C30 12 10 12 0 22Z'));
      shop.write('zigzag.svg', art('M0 22L10 12L20 22L30 12L40 22V26L30 16L20 26L10 16L0 26Z'));
      const bends = async (file: string) => {
        const { out } = await repeat(file, `${samples}/canister/canister.blank.json`, '--json');
        const { joins, checks } = JSON.parse(out);
        const found = checks.filter(({ rule }: { rule: string }) => rule === 'bends-at-border');
        return {
          joins,
          bends: found.map(({ level, says }: { level: string; says: string }) => `${level}: ${says}`),
        };
      };
      expect(await bends('arch.svg')).toEqual({
        joins: true,
        bends: [
          expect.stringMatching(/^look: .*bend there by up to 90\.0 degrees and nowhere else so sharply/),
        ],
      });
      expect(await bends('zigzag.svg')).toEqual({
        joins: true,
        bends: [expect.stringMatching(/^note: .*90\.0 degrees; that may be as it was drawn$/)],
      });
    },
  );

  test('lists a finer step within a joining tile only where it lays another pattern', patience, async () => {
    // Half a brick: rows 15 mm apart of motifs 20 mm apart, two to the width of the tile and four up it.
    const motif = (x: number, y: number) => `<path d="M${x} ${y}q6 2 8 8q-6 -1 -8 -8z"/>`;
    const rows = [0, 30].flatMap((y) => [
      motif(1, y + 2),
      motif(21, y + 2),
      motif(11, y + 17),
      motif(31, y + 17),
    ]);
    shop.write(
      'brick.svg',
      `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="60mm" viewBox="0 0 40 60">${rows.join('')}</svg>`,
    );
    const { out } = await repeat('brick.svg', `${samples}/canister/canister.blank.json`, '--json');
    const { ways }: { ways: { key: string }[] } = JSON.parse(out);
    const keys = ways.map(({ key }) => key);
    // 269.6 mm are 6.7 tiles or 13.5 motifs: 7 tiles are 14 motifs, and 13 motifs are no whole tiles.
    expect(keys).toEqual(expect.arrayContaining(['period-13', 'around-7', 'period-15']));
    expect(keys).not.toContain('period-14');
    expect(keys).not.toContain('period-12');
  });

  test(
    'where rows end whole, a way stretched around alone is listed only if its heights are others',
    patience,
    async () => {
      shop.write(
        'whole.job.json',
        JSON.stringify({
          name: 'whole rows',
          units: 'mm',
          blank: `${samples}/canister/canister.blank.json`,
          edges: 'whole-rows',
        }),
      );
      const { out } = await repeat(`${samples}/canister/ropes.svg`, 'whole.job.json', '--json');
      const { ways }: { ways: { scaleAcross: number; scaleUp: number }[] } = JSON.parse(out);
      const sizes = ways.map(({ scaleAcross, scaleUp }) => `${scaleAcross} ${scaleUp}`);
      expect(sizes.length).toBeGreaterThan(2);
      expect(new Set(sizes).size).toBe(sizes.length);
    },
  );

  test('tells as JSON what the contract names, for a crop that does not join', patience, async () => {
    const { status, out, lines } = await repeat(
      `${samples}/mug/shore.svg`,
      `${samples}/mug/mug.job.json`,
      '--json',
    );
    expect(status).toBe(1);
    const report = JSON.parse(out);
    expect(report).toMatchObject({ joins: false, mismatch: expect.any(Number), taken: 'period-8' });
    // The lattice that the sample was drawn by; its motifs are placed to 0.001 mm.
    expect(report.period.a).toEqual([expect.closeTo(34, 2), expect.closeTo(14.5, 2)]);
    expect(report.period.b).toEqual([expect.closeTo(0, 2), expect.closeTo(29, 2)]);
    expect(report.period.confidence).toBeGreaterThan(0.95);
    for (const way of report.ways)
      expect(way).toMatchObject({
        key: expect.any(String),
        around: expect.any(Number),
        scaleAcross: expect.any(Number),
        scaleUp: expect.any(Number),
        distortion: expect.any(Number),
        says: expect.any(String),
      });
    expect(new Set(report.ways.map(({ kind }: { kind: string }) => kind))).toEqual(
      new Set(['period', 'mirrored', 'strip', 'as-drawn']),
    );
    expect(
      lines.some((line) => /^look: .*\/mug\/shore\.svg: [-\d., ]+mm: does not meet its own copy/.test(line)),
    ).toBe(true);
  });

  test('sets texts of a drawing in fonts that the job file names', patience, async () => {
    const font = `${projectFolder}/node_modules/@expo-google-fonts/pacifico/400Regular/Pacifico_400Regular.ttf`;
    shop.write(
      'label.svg',
      '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30"><text x="8" y="18" font-size="9" font-family="Pacifico-Regular">kelp</text></svg>',
    );
    const job = {
      name: 'label',
      blank: `${samples}/canister/canister.blank.json`,
      artwork: { file: 'label.svg', fonts: [font] },
    };
    shop.write('label.job.json', JSON.stringify(job));
    const { status, lines, out } = await repeat('label.svg', 'label.job.json');
    expect([status, lines.join('\n')]).toEqual([1, expect.stringMatching(/set in "Pacifico" as given/)]);
    expect(out).toMatch(/it joins itself/);
  });

  test('measures a band, units and a size of artwork that are given', patience, async () => {
    const plain = [
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30">',
      '<circle cx="20" cy="15" r="9"/></svg>',
    ];
    shop.write('dot.svg', plain.join(''));
    const blank = `${samples}/canister/canister.blank.json`;
    const { status, out } = await repeat(
      'dot.svg',
      blank,
      '--art-across',
      '2in',
      '--units',
      'in',
      '--band',
      '1..3',
    );
    expect(status).toBe(0);
    expect(out).toMatch(/^dot\.svg: 2 in by 1\.5 in, one colour\n/);
    // Cropped or not, it shows no edge that could tell.
    expect(out).toMatch(
      /nothing crosses its borders, so its size alone tells how far apart its copies stand/,
    );
    expect(out).toMatch(/band 2 in long/);
    const unsized = await repeat('dot.svg', blank);
    expect([unsized.status, unsized.lines.some((line) => /no real-world size/.test(line))]).toEqual([
      1,
      true,
    ]);
  });

  test.each([
    ['a tile that is not there', ['no.svg', `${samples}/mug/mug.job.json`], /no\.svg: there is no such file/],
    ['a blank that is not there', [`${samples}/mug/shore.svg`, 'no.json'], /no\.json: there is no such file/],
    ['no blank at all', [`${samples}/mug/shore.svg`], /missing required argument/],
    [
      'a band upside down',
      [`${samples}/mug/shore.svg`, `${samples}/mug/mug.job.json`, '--band', '9..3'],
      /upside down/,
    ],
  ])('refuses %s', patience, async (_, args, says) => {
    const { status, lines } = await repeat(...args);
    expect(status).toBe(2);
    expect(lines.join('\n')).toMatch(says);
  });

  test('stops at Ctrl-C while it draws, and has written nothing', patience, async () => {
    const args = [
      command,
      'repeat',
      `${samples}/mug/shore.svg`,
      `${samples}/mug/mug.job.json`,
      '--out',
      'cut-short',
    ];
    const child = spawn(process.execPath, args, { cwd: shop.folder, stdio: ['ignore', 'ignore', 'pipe'] });
    let isDrawing = false;
    child.stderr.on('data', (said: Buffer) => {
      if (!`${said}`.includes('drawing way 1 of')) return;
      isDrawing = true;
      child.kill('SIGINT');
    });
    // A shell tells a process that ended so by the status 130: 128 and the signal's number, 2.
    const ended = await new Promise((resolve) => child.on('close', (_, signal) => resolve(signal)));
    expect([isDrawing, ended]).toEqual([true, 'SIGINT']);
    expect(existsSync(`${shop.folder}/cut-short`)).toBe(false);
  });

  test('--out keeps what --json tells as a file, and a picture of every way', patience, async () => {
    const tile = '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="50mm" viewBox="0 0 60 50">';
    shop.write('half.svg', `${tile}<circle cx="55" cy="20" r="12"/></svg>`);
    const args = ['half.svg', `${samples}/canister/canister.blank.json`, '--out', 'kept'];
    const { out, lines } = await repeat(...args);
    const printed = await repeat(...args, '--json');
    expect(out).toMatch(/written to kept: repeat\.json, joins\.svg, joins\.png, ways\.svg, ways\.png\n$/);
    const report = JSON.parse(shop.read('kept/repeat.json'));
    expect(report).toEqual(JSON.parse(printed.out));
    // Each open place is marked where it is, with its number.
    const joins = shop.read('kept/joins.svg');
    const rings = joins.match(/<g data-role="mark">[\s\S]*?<\/g>/)?.[0].match(/<circle/g) ?? [];
    expect(report.open.length).toBeGreaterThan(0);
    expect(rings).toHaveLength(report.open.length);
    const sheet = shop.read('kept/ways.svg');
    // In the order of the list, each with both of its views.
    const drawn = [...sheet.matchAll(/<g data-way="([^"]+)"/g)].map(([, key]) => key);
    expect(drawn).toEqual(report.ways.map(({ key }: { key: string }) => key));
    expect(sheet.match(/data-view="(?:front|seam)"/g)).toHaveLength(2 * drawn.length);
    expect(lines.filter((line) => /^repeat: drawing way \d+ of \d+$/.test(line))).toHaveLength(drawn.length);
  });
});
