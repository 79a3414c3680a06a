// Node run as a process of its own: the command as a maker runs it, the floor, and what memory it took at most.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

export const root = join(import.meta.dirname, '../..');
export const bin = join(root, 'bin/seamwright.js');

/** Runs node; gives its exit status, 0 or 1. @throws Error for any other. */
export const run = (args: readonly string[]): number => runMeasured(args, []).status;

const tellMemory = `data:text/javascript,${encodeURIComponent(
  "process.on('exit',()=>process.stderr.write('\\npeak '+process.resourceUsage().maxRSS+'\\n'))",
)}`;

/** The most memory that a run took, bytes. */
export function peakMemory(args: readonly string[]): number {
  const { stderr } = runMeasured(args, ['--import', tellMemory]);
  return Number(/\npeak (\d+)\n/.exec(stderr)?.[1]) * 1024;
}

const runMeasured = (args: readonly string[], before: readonly string[]) =>
  runUnder([process.execPath, ...before, ...args]);

/** Runs a command line, which ends in node. @throws Error where it ends with anything but 0 or 1. */
export function runUnder([command = process.execPath, ...args]: readonly string[]) {
  const { status, stderr, error } = spawnSync(command, args, { encoding: 'utf8' });
  if (status !== 0 && status !== 1)
    throw new Error(`${command} ${args.join(' ')} ended with ${status}: ${error?.message ?? stderr}`);
  return { status, stderr };
}
