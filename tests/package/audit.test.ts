// `npm run audit` against a registry of our own, which answers as the public one does: nothing known, an advisory, no answer.
// Source of the question and the answer: docs of npm, `npm audit`, "Bulk Advisory Endpoint", from memory; npm itself reads them here.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, expect, test } from 'vitest';
import { root } from './licences.ts';

const folder = mkdtempSync(join(tmpdir(), 'seamwright-audit-'));
const url = 'http://127.0.0.1/advisories/1';
const advisory = {
  id: 1,
  url,
  title: 'writes where it should not',
  severity: 'high',
  vulnerable_versions: '<99',
  cwe: [],
  cvss: { score: 0, vectorString: null },
};

let answer: object | undefined;
let asked: Record<string, readonly string[]> = {};
const server = createServer((request, response) => {
  const parts: Buffer[] = [];
  request.on('data', (part: Buffer) => parts.push(part));
  request.on('end', () => {
    const body = Buffer.concat(parts);
    if (request.url !== '/-/npm/v1/security/advisories/bulk') return response.writeHead(404).end('{}');
    const text = request.headers['content-encoding'] === 'gzip' ? gunzipSync(body) : body;
    asked = JSON.parse(text.toString()) as typeof asked;
    if (!answer) return response.writeHead(405, { allow: 'GET,HEAD' }).end();
    return response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(answer));
  });
});
const registry = new Promise<string>((ready) =>
  server.listen(0, '127.0.0.1', () => ready(`http://127.0.0.1:${(server.address() as AddressInfo).port}`)),
);
afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

async function audited(answered: object | undefined, explained: readonly object[]) {
  answer = answered;
  const file = join(folder, 'explained.json');
  writeFileSync(file, JSON.stringify(explained));
  const words = ['--import', 'tsx', join(import.meta.dirname, 'audit.ts'), await registry, file];
  const env = { ...process.env, npm_config_cache: join(folder, 'cache') };
  const run = spawn(process.execPath, words, { cwd: root, env });
  let said = '';
  for (const stream of [run.stdout, run.stderr]) stream.on('data', (part) => (said += String(part)));
  const status = await new Promise((done) => run.on('close', done));
  return { status, said };
}

const patience = { timeout: 120_000 };

test('no advisory: is asked of every package that is locked, and passes', patience, async () => {
  expect(await audited({}, [])).toEqual({ status: 0, said: expect.stringContaining('0 advisories') });
  // Delivered and not.
  expect(Object.keys(asked)).toEqual(expect.arrayContaining(['pdfkit', 'harfbuzzjs', 'vitest']));
});

test('an advisory that nobody explained fails by name; explained, it passes', patience, async () => {
  const known = { pdfkit: [advisory] };
  expect(await audited(known, [])).toEqual({
    status: 1,
    said: expect.stringContaining(`pdfkit <99: writes where it should not (${url})`),
  });
  const why = 'what it does is never asked for here';
  expect(await audited(known, [{ url, why }])).toMatchObject({ status: 0 });
  expect(await audited(known, [{ url, why: '' }])).toMatchObject({ status: 1 });
});

test('an explanation of what is known no longer fails', patience, async () => {
  expect(await audited({}, [{ url, why: 'gone' }])).toMatchObject({ status: 1 });
});

test('a registry that gives no answer is no pass', patience, async () => {
  const { status, said } = await audited(undefined, []);
  expect([status, said]).toEqual([2, expect.stringMatching(/gives no answer: no advisory was looked at/)]);
});
