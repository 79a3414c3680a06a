// Serves the built page to this machine alone: files of one folder, read only, over loopback.
import { readFile, realpath } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { contentPolicy } from './content-policy.ts';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.png': 'image/png',
  '.wasm': 'application/wasm',
  '.ttf': 'font/ttf',
};

const safety: Readonly<Record<string, string>> = {
  'content-security-policy': contentPolicy('header'),
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), geolocation=(), microphone=()',
};

/** The only host it listens on, and the only names it answers to: another name is a page elsewhere that was led here. */
const loopback = '127.0.0.1';
const hostNames: readonly string[] = [loopback, 'localhost'];

const addressOf = (port: number, name: string = loopback): string => `http://${name}:${port}`;

/** Why a request is not answered: a status and a sentence; undefined where it is. */
function refusal({ method, headers }: IncomingMessage, port: number): [number, string] | undefined {
  const hosts = hostNames.map((name) => `${name}:${port}`);
  if (!hosts.includes(headers.host ?? '')) return [403, `only ${addressOf(port)} is answered`];
  const origins = hostNames.map((name) => addressOf(port, name));
  if (headers.origin !== undefined && !origins.includes(headers.origin))
    return [403, 'another page may not read from here'];
  // A page of another port is of the same site, and not ours all the same. Whoever follows a link comes from anywhere.
  const site = headers['sec-fetch-site'] ?? 'none';
  if (site !== 'same-origin' && site !== 'none' && headers['sec-fetch-mode'] !== 'navigate')
    return [403, 'another page may not read from here'];
  if (method !== 'GET' && method !== 'HEAD') return [405, 'only GET and HEAD are answered'];
  return undefined;
}

/** The path of a file within the folder; undefined where the address names none, or one outside it. */
function fileWithin(folder: string, address: string): string | undefined {
  const [path = ''] = address.split(/[?#]/);
  let name: string;
  try {
    name = decodeURIComponent(path);
  } catch {
    return undefined;
  }
  if (!name.startsWith('/') || name.includes('\0') || name.includes('\\')) return undefined;
  if (name.split('/').some((part) => part.startsWith('.'))) return undefined;
  const file = normalize(join(folder, name.endsWith('/') ? `${name}index.html` : name));
  return file.startsWith(folder.endsWith(sep) ? folder : folder + sep) ? file : undefined;
}

/** What a file holds; undefined where it is none, or a link leads out of the folder. */
async function bytesWithin(folder: string, file: string): Promise<Buffer | undefined> {
  try {
    const [real, root] = await Promise.all([realpath(file), realpath(folder)]);
    return real.startsWith(root + sep) ? await readFile(real) : undefined;
  } catch {
    return undefined;
  }
}

function say(response: ServerResponse, status: number, text: string): void {
  const allow = status === 405 ? { allow: 'GET, HEAD' } : {};
  response.writeHead(status, { ...safety, ...allow, 'content-type': 'text/plain; charset=utf-8' });
  response.end(`${text}\n`);
}

async function answer(request: IncomingMessage, response: ServerResponse, folder: string, port: number) {
  const refused = refusal(request, port);
  if (refused) return say(response, ...refused);
  const file = fileWithin(folder, request.url ?? '');
  if (file === undefined) return say(response, 404, 'there is no such file');
  const bytes = await bytesWithin(folder, file);
  if (bytes === undefined) return say(response, 404, 'there is no such file');
  response.writeHead(200, {
    ...safety,
    'content-type': types[extname(file)] ?? 'application/octet-stream',
    'content-length': bytes.length,
    'cache-control': 'no-cache',
  });
  response.end(request.method === 'HEAD' ? undefined : bytes);
}

export interface PageServer {
  readonly address: string;
  readonly server: Server;
}

/** Serve a folder; port 0 takes any that is free. @throws the system's error where the port can't be had. */
export function servePage(folder: string, port: number): Promise<PageServer> {
  return new Promise((resolve, reject) => {
    const server = createServer((request, response) => {
      const bound = server.address();
      const taken = typeof bound === 'object' && bound !== null ? bound.port : port;
      answer(request, response, folder, taken).catch(() => response.destroy());
    });
    server.once('error', reject);
    server.listen(port, loopback, () => {
      const bound = server.address();
      const taken = typeof bound === 'object' && bound !== null ? bound.port : port;
      resolve({ address: `${addressOf(taken)}/`, server });
    });
  });
}
