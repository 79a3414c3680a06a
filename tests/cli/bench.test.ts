// `seamwright bench` as a stranger on the same machine finds it: what it serves, and all that it does not.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { servePage } from '../../src/cli/page-server.ts';
import { pageBuilt } from '../page/page-built.ts';
import { command, patience, run } from './run.ts';

let bench: ChildProcess;
let address: URL;

beforeAll(async () => {
  await pageBuilt();
  bench = spawn(process.execPath, [command, 'bench', '--port', '0', '--no-open']);
  const first = await new Promise<string>((resolve) => {
    bench.stdout?.once('data', (part: Buffer) => resolve(part.toString()));
  });
  address = new URL(first.split('\n')[0] ?? '');
}, patience.timeout);

afterAll(() => void bench.kill());

interface Answer {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** A request as given, its path not tidied up on the way. */
function ask(path: string, headers: Readonly<Record<string, string>> = {}, method = 'GET'): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const options = { host: address.hostname, port: address.port, path, method, headers };
    const asked = request(options, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () =>
        resolve({
          status: answer.statusCode,
          headers: answer.headers,
          text: Buffer.concat(parts).toString(),
        }),
      );
    });
    asked.on('error', reject);
    asked.end();
  });
}

test('the first line it prints is its address, on loopback', () => {
  expect(address.href).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
});

test('the page is served with a policy that allows nothing from elsewhere', async () => {
  const { status, headers, text } = await ask('/');
  expect(status).toBe(200);
  expect(text).toContain('<div id="root">');
  const policy = String(headers['content-security-policy']);
  expect(policy).toContain("default-src 'none'");
  expect(policy).toContain("frame-ancestors 'none'");
  expect(policy).not.toContain('unsafe-inline');
  expect(policy.replace("'wasm-unsafe-eval'", '')).not.toContain('unsafe');
  expect(policy).not.toMatch(/https?:|\*/);
  expect(headers['x-content-type-options']).toBe('nosniff');
});

test('another name for this machine is refused: a page elsewhere may have been led here by it', async () => {
  const { port } = address;
  // Cases of the Web Security Testing Guide (OWASP, 4.2, "Testing for Host Header Injection"), from memory.
  for (const host of [
    'seamwright.example',
    `seamwright.example:${port}`,
    `127.0.0.1.seamwright.example:${port}`,
    `seamwright.example#127.0.0.1:${port}`,
    `127.0.0.1:${port}@seamwright.example`,
    `127.0.0.1:${port}, seamwright.example`,
    `localhost.:${port}`,
    `[::1]:${port}`,
    `2130706433:${port}`,
    '127.0.0.1',
    '0.0.0.0:1',
  ])
    expect((await ask('/', { host })).status, host).toBe(403);
  expect((await ask('/', { host: `localhost:${port}` })).status).toBe(200);
  // What a proxy would believe is not looked at.
  const forwarded = { 'x-forwarded-host': 'seamwright.example', 'x-original-url': '/../cli/main.js' };
  const { status, text } = await ask('/', forwarded);
  expect(status).toBe(200);
  expect(text).not.toContain('seamwright.example');
});

test('another page may not read from it', async () => {
  for (const origin of ['https://seamwright.example', 'null', `https://127.0.0.1:${address.port}`])
    expect((await ask('/sw.js', { origin })).status, origin).toBe(403);
  // Fetch Metadata (W3C): a page of another port on this machine is of the same site, and no less another's.
  for (const site of ['cross-site', 'same-site'])
    for (const mode of ['no-cors', 'cors', 'websocket'])
      expect(
        (await ask('/sw.js', { 'sec-fetch-site': site, 'sec-fetch-mode': mode })).status,
        `${site} ${mode}`,
      ).toBe(403);
  const link = { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' };
  expect((await ask('/', link)).status).toBe(200);
  const { headers } = await ask('/sw.js');
  expect(headers['access-control-allow-origin']).toBeUndefined();
  expect(headers['cross-origin-resource-policy']).toBe('same-origin');
  expect(headers['x-frame-options']).toBe('DENY');
  expect((await ask('/sw.js', { origin: address.origin })).status).toBe(200);
});

test('no path leads out of its folder', async () => {
  const escapes = [
    '/../cli/main.js',
    '/..%2fcli%2fmain.js',
    '/%2e%2e/cli/main.js',
    '/assets/../../cli/main.js',
    '/assets/..%5c..%5ccli%5cmain.js',
    '//etc/passwd',
    '/%00index.html',
    '/%E0%A4%A',
    // OWASP, "Path Traversal": encoded once, twice and overlong, doubled, with other separators; from memory.
    '/%2e%2e%2fcli%2fmain.js',
    '/%252e%252e%252fcli%252fmain.js',
    '/..%c0%afcli/main.js',
    '/%c0%ae%c0%ae/cli/main.js',
    '/....//cli/main.js',
    '/..;/cli/main.js',
    '/..%00/cli/main.js',
    '/assets/%2e%2e/%2e%2e/cli/main.js',
    '/C:%5cwindows%5cwin.ini',
    '/file:///etc/passwd',
    '/~root/.profile',
    '/index.html/../../cli/main.js',
    '/index.html%0d%0aset-cookie:a=b',
    '/assets/',
    '/assets',
    'http://127.0.0.1/../cli/main.js',
    '/.git/config',
  ];
  for (const path of escapes) {
    const { status, text } = await ask(path);
    expect(status, path).toBe(404);
    expect(text, path).toBe('there is no such file\n');
  }
});

test('a link that leads out of its folder is not followed', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'seamwright-page-'));
  const page = join(folder, 'page');
  mkdirSync(page);
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  writeFileSync(join(page, 'index.html'), 'page');
  symlinkSync(join(folder, 'secret.txt'), join(page, 'out.txt'));
  symlinkSync(folder, join(page, 'up'));
  const { server, address: own } = await servePage(page, 0);
  const answers = await Promise.all(['', 'out.txt', 'up/secret.txt'].map((path) => fetch(`${own}${path}`)));
  expect(answers.map(({ status }) => status)).toEqual([200, 404, 404]);
  server.close();
  rmSync(folder, { recursive: true });
});

test('nothing can be sent to it', async () => {
  for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH', 'TRACE', 'PROPFIND'])
    expect((await ask('/', {}, method)).status, method).toBe(405);
  const head = await ask('/', {}, 'HEAD');
  expect([head.status, head.text]).toEqual([200, '']);
});

test('a port that is none, and one that is taken, are refused in words', patience, async () => {
  const none = await run(['bench', '--no-open', '--port', '70000']);
  expect(none.status).toBe(2);
  expect(none.lines).toEqual([
    '--port: "70000" is no port; give a whole number from 0 (any that is free) to 65535',
  ]);
  const taken = await run(['bench', '--no-open', '--port', address.port]);
  expect(taken.status).toBe(2);
  expect(taken.lines[0]).toContain('is taken by another program; give another, or 0');
});
