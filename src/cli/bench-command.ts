// `seamwright bench`: the page, served to this machine alone until it is stopped.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Refused, stop } from '../finding.ts';
import { servePage } from './page-server.ts';

export interface BenchFlags {
  readonly port: string;
  readonly open: boolean;
  readonly debug?: boolean;
}

const mostPort = 65_535;

function portOf(typed: string): number {
  const port = Number(typed);
  if (/^\d+$/.test(typed) && port <= mostPort) return port;
  const says = `"${typed}" is no port; give a whole number from 0 (any that is free) to ${mostPort}`;
  throw new Refused([stop('port', { key: '--port' }, says)]);
}

const portFaults: Readonly<Record<string, string>> = {
  EADDRINUSE: 'is taken by another program; give another, or 0 for any that is free',
  EACCES: 'may not be used; give one over 1023, or 0 for any that is free',
};

/** The system's own opener of addresses. A machine without one is no fault: the address is printed. */
function openInBrowser(address: string): void {
  const [name, ...args] =
    process.platform === 'darwin'
      ? ['open']
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '']
        : ['xdg-open'];
  if (name === undefined) return;
  const opener = spawn(name, [...args, address], { stdio: 'ignore', detached: true });
  opener.on('error', () => undefined);
  opener.unref();
}

/** Serves until the process is told to end; then status 0. */
export async function benchCommand({ port: typed, open }: BenchFlags): Promise<number> {
  const port = portOf(typed);
  const folder = fileURLToPath(new URL('../page', import.meta.url));
  if (!existsSync(folder))
    throw new Refused([stop('not-built', {}, 'the page is not built yet; run "npm run build" once')]);
  const { address, server } = await servePage(folder, port).catch((fault: NodeJS.ErrnoException) => {
    const says = portFaults[fault.code ?? ''];
    if (says === undefined) throw fault;
    throw new Refused([stop('port', { key: '--port' }, `${port} ${says}`)]);
  });
  process.stdout.write(`${address}\n`);
  process.stderr.write('for this machine alone; end it with Ctrl-C\n');
  if (open) openInBrowser(address);
  return new Promise((resolve) => {
    const end = () => {
      server.closeAllConnections();
      server.close(() => resolve(0));
    };
    process.once('SIGINT', end);
    process.once('SIGTERM', end);
  });
}
