// Runs the built command as a maker does: its own process, its own folder.
import { type ChildProcess, fork, spawn } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const projectFolder = fileURLToPath(new URL('../..', import.meta.url));
export const command = join(projectFolder, 'bin/seamwright.js');

/** Time a test that starts processes may take on a busy machine, ms; alone each takes under a second. */
export const patience = { timeout: 300_000 };

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  /** Lines of standard error, without the last empty one. */
  readonly lines: readonly string[];
  /** Of a run in the shared process: its processor time, and the most memory that the process has had so far. */
  readonly took?: { readonly cpuSeconds: number; readonly peakBytes: number };
}

export interface RunOptions {
  readonly cwd?: string;
  /** Options for node itself; they need a process of their own. */
  readonly node?: readonly string[];
  /** A module (`inFs`) that changes node's `fs` for this run alone. One that ends the process needs a process of its own. */
  readonly hook?: string;
  /** Whether nobody reads its standard output. */
  readonly deaf?: boolean;
  /** Whether it has a process of its own, as a maker's run has. */
  readonly alone?: boolean;
}

/** One command line: in a process that many share, which is far faster, unless it must have its own. */
export const run = (
  args: readonly string[],
  { cwd = projectFolder, node = [], hook, deaf = false, alone = node.length > 0 || deaf }: RunOptions = {},
): Promise<Ran> =>
  alone
    ? runAlone(args, cwd, hook === undefined ? node : [...node, '--import', hook], deaf)
    : runShared(args, cwd, hook);

/** Many command lines one after another. */
export const runMany = (args: readonly (readonly string[])[], cwd: string): Promise<readonly Ran[]> =>
  Promise.all(args.map((words) => run(words, { cwd })));

function runAlone(
  args: readonly string[],
  cwd: string,
  node: readonly string[],
  deaf: boolean,
): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...node, command, ...args], { cwd });
    if (deaf) child.stdout.destroy();
    const [out, err] = [[] as Buffer[], [] as Buffer[]];
    child.stdout.on('data', (part: Buffer) => out.push(part));
    child.stderr.on('data', (part: Buffer) => err.push(part));
    child.on('error', reject);
    child.on('close', (status) => {
      const lines = Buffer.concat(err).toString().split('\n');
      if (lines.at(-1) === '') lines.pop();
      resolve({ status, out: Buffer.concat(out).toString(), lines });
    });
  });
}

const main = pathToFileURL(join(projectFolder, 'dist/cli/main.js')).href;
/** Who waits for an answer of the shared process, in the order asked. */
const waiting: { readonly resolve: (ran: Ran) => void; readonly reject: (fault: Error) => void }[] = [];
let shared: ChildProcess | undefined;

function runShared(args: readonly string[], cwd: string, hook?: string): Promise<Ran> {
  shared ??= startShared();
  shared.send({ main, args, cwd, hook });
  return new Promise((resolve, reject) => waiting.push({ resolve, reject }));
}

function startShared(): ChildProcess {
  const child = fork(join(projectFolder, 'tests/cli/one-process.mjs'), {
    execArgv: [],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  child.on('message', (ran) => waiting.shift()?.resolve(ran as Ran));
  child.on('exit', (status) => {
    shared = undefined;
    for (const { reject } of waiting.splice(0)) reject(new Error(`the shared process ended with ${status}`));
  });
  // It ends with the tests, whose end it sees; they need not wait for it.
  child.unref();
  child.channel?.unref();
  return child;
}

/** A folder of its own for a test, with the blank of the cup and a small tile; taken away by `clear`. */
export class Workshop {
  readonly folder = mkdtempSync(join(tmpdir(), 'seamwright-'));

  constructor() {
    cpSync(join(projectFolder, 'samples/tapered-cup/cup.blank.json'), this.at('cup.blank.json'));
    this.write('dots.svg', tile);
  }

  at(name: string): string {
    return join(this.folder, name);
  }

  write(name: string, content: string | object): string {
    const text = typeof content === 'string' ? content : JSON.stringify(content);
    mkdirSync(join(this.at(name), '..'), { recursive: true });
    writeFileSync(this.at(name), text);
    return this.at(name);
  }

  read(name: string): string {
    return readFileSync(this.at(name), 'utf8');
  }

  /** Every file under the folder with its size and time: the same before and after means nothing was written. */
  state(): readonly string[] {
    return readdirSync(this.folder, { recursive: true, encoding: 'utf8' })
      .map((name) => `${name} ${statSync(this.at(name)).size} ${statSync(this.at(name)).mtimeMs}`)
      .sort();
  }

  clear(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** A dot and a leaf: enough for a seam to cross. */
const tile = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40">
  <circle cx="20" cy="20" r="9" fill="#17566b"/>
  <path d="M0 30C6 24 6 36 0 30Z M40 30C34 24 34 36 40 30Z" fill="#17566b"/>
</svg>
`;

/** A job on the workshop's cup and tile. */
export const aJob = (rest: object = {}): object => ({
  name: 'test cup',
  blank: 'cup.blank.json',
  artwork: { file: 'dots.svg' },
  ...rest,
});
