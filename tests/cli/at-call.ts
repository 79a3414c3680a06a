// Put into a run of the command: something that happens at one of its calls that change the disk.

/** A module that has `code` run before anything of ours, with node's `fs` to change: a run's `hook`. */
export const inFs = (code: string): string =>
  `data:text/javascript,${encodeURIComponent(`import fs from 'node:fs'; import { syncBuiltinESMExports } from 'node:module'; ${code}; syncBuiltinESMExports();`)}`;

/**
 * `act` before every call that changes the disk, and, where `inFiles`, in the middle of every file. It knows `count`, the
 * number of the call, `name`, what is called, and `isRow`, whether that is in a thread that makes rows.
 */
export const atCalls = (act: string, { inFiles = false } = {}): string =>
  inFs(`
    const { isMainThread } = await import('node:worker_threads');
    const { cpSync, rmSync, writeFileSync, existsSync } = fs;
    const isRow = !isMainThread;
    let count = 0, isIn = false;
    const quietly = (work) => { if (isIn) return; isIn = true; try { work(); } finally { isIn = false; } };
    const tick = (name) => quietly(() => { count += 1; ${act}; });
    const half = (path, content) => quietly(() => writeFileSync(path, content.slice(0, content.length / 2)));
    for (const [home, names] of [[fs.promises, ['mkdir', 'writeFile', 'rename', 'rm']], [fs, ['renameSync', 'mkdirSync', 'rmSync', 'writeSync']]])
      for (const name of names) {
        const call = home[name];
        const before = (args) => { tick(name); if (${inFiles} && name === 'writeFile') { half(...args); tick(name); } };
        home[name] = home === fs
          ? (...args) => { before(args); return call(...args); }
          : async (...args) => { before(args); return call(...args); };
      }`);

/** `act` at the n-th of those calls. */
export const atCall = (n: number, act: string, where: { readonly inFiles?: boolean } = {}): string =>
  atCalls(`if (count === ${n}) { ${act} }`, where);

export const kill = "process.kill(process.pid, 'SIGKILL')";

/** As the system says it: a call that fails. */
export const fails = (code: string): string =>
  `throw Object.assign(new Error(${JSON.stringify(code)}), { code: ${JSON.stringify(code)} })`;
