// Runs command lines of the built command one after another in one process, since starting node and loading what a
// command needs is most of what it costs. Each message is { main, args, cwd, hook }, `hook` a module that changes node's `fs` for
// that run alone; each answer { status, out, lines, took }: the processor time it took, and the most memory that the process has
// had so far.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

let count = 0;
let last = Promise.resolve();

const caught = (stream) => {
  const parts = [];
  const write = stream.write;
  stream.write = (part, coding, told) => {
    parts.push(Buffer.from(part));
    (typeof coding === 'function' ? coding : told)?.();
    return true;
  };
  return () => {
    stream.write = write;
    return Buffer.concat(parts).toString();
  };
};

/** Above every number that a process can have (Linux: 2^22 at most, proc(5)). */
const noProcess = 2 ** 22 + 1;

/**
 * Has a hook change `fs`; gives what undoes that. Such a run notes a process that is none: this one lives on, and whoever finds what
 * the run left would wait for it.
 */
async function hooked(hook) {
  if (hook === undefined) return () => undefined;
  const own = Object.getOwnPropertyDescriptor(process, 'pid');
  Object.defineProperty(process, 'pid', { ...own, value: noProcess });
  const calls = [fs, fs.promises].map((home) => [home, { ...home }]);
  // Another address is another hook, which counts from nothing.
  await import(`${hook}#${count}`);
  return () => {
    Object.defineProperty(process, 'pid', own);
    for (const [home, own] of calls) for (const name of Object.keys(own)) if (home[name] !== own[name]) home[name] = own[name];
    syncBuiltinESMExports();
  };
}

async function answer({ main, args, cwd, hook }) {
  process.chdir(cwd);
  const unhook = await hooked(hook);
  const [out, err] = [caught(process.stdout), caught(process.stderr)];
  process.exitCode = undefined;
  process.argv = [process.argv[0], main, ...args];
  const begin = process.cpuUsage();
  // Another address is another copy of the command's first file; what it loads is shared.
  await import(`${main}?${count++}`).finally(unhook);
  const status = process.exitCode ?? 0;
  process.exitCode = 0;
  const lines = err().split('\n');
  if (lines.at(-1) === '') lines.pop();
  const { user, system } = process.cpuUsage(begin);
  const took = { cpuSeconds: (user + system) / 1e6, peakBytes: process.resourceUsage().maxRSS * 1024 };
  return { status, out: out(), lines, took };
}

process.stdout.setMaxListeners(0);
process.stderr.setMaxListeners(0);
process.on('message', (line) => {
  last = last.then(async () => process.send(await answer(line)));
});
process.on('disconnect', () => process.exit());
