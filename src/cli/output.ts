// What a command prints and the status it ends with.
import { type Finding, Refused, stop, toLine } from '../finding.ts';
import { withShortWords } from '../lengths/shown.ts';
import { asGiven } from './given-names.ts';
import type { CommonOptions } from './options.ts';
import { told } from './units-told.ts';

/** Input refused, or a usage error. */
export const refusedStatus = 2;
/** Status of work that was done: 1 where something needs the maker's eye. */
export const exitStatus = (checks: readonly Finding[]): 0 | 1 =>
  checks.some(({ level }) => level === 'look') ? 1 : 0;

/** A fault of ours. */
const faultStatus = 70;

/** Most lines of one rule: past them a maker reads no more, and the report has all. */
const mostLines = 6;

/** The same of what is refused: it is to be put right, but nobody does a hundred thousand one by one. */
const mostRefused = 20;

/** `numbered`: with the numbers of the marks on a picture, from 1 in the order of the findings. */
export function printFindings(findings: readonly Finding[], { numbered = false } = {}): void {
  const lines = findings.map((finding, i) => ({
    kind: `${finding.level}: ${finding.rule}`,
    line: `${finding.level}${numbered ? ` ${i + 1}` : ''}: ${told(toLine(asGiven(finding)))}`,
  }));
  printSome(lines, mostLines, 'in the report (or under --json)');
}

function printRefused(findings: readonly Finding[]): void {
  const lines = findings.map((finding) => ({
    kind: finding.rule,
    line: withShortWords(told(toLine(finding))),
  }));
  printSome(lines, mostRefused, 'told under --json');
}

/** Prints the first lines of each kind, then of which kinds there are more, and where. */
function printSome(
  lines: readonly { readonly kind: string; readonly line: string }[],
  most: number,
  where: string,
): void {
  const counts = new Map<string, number>();
  for (const { kind, line } of lines) {
    const count = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, count);
    if (count <= most) process.stderr.write(`${line}\n`);
  }
  for (const [kind, count] of counts)
    if (count > most) process.stderr.write(`${kind}: ${count - most} more are ${where}\n`);
}

/**
 * What is done where a stream can't be written to. Whoever reads it may stop reading, as `head` does: nothing is wrong then. Else
 * something is missing from it that the files may have: that is said, once, and wants the maker's eye.
 */
export function heardBy(stream: NodeJS.WriteStream): (fault: NodeJS.ErrnoException) => void {
  let isTold = false;
  return ({ code, message }) => {
    if (code === 'EPIPE' || isTold) return;
    isTold = true;
    process.once('exit', () => {
      process.exitCode ||= 1;
    });
    if (stream !== process.stderr)
      process.stderr.write(`look: what was to be printed is not all written (${code ?? message})\n`);
  };
}

export const printJson = (document: unknown): void => {
  process.stdout.write(`${JSON.stringify(document, undefined, 2)}\n`);
};

/** The command line hands on whatever was typed, whether the command has lengths to read or not. */
function checkUnits(typed: string): void {
  if (typed === 'mm' || typed === 'in') return;
  throw new Refused([stop('units', { key: '--units' }, `"${typed}" is not a unit here; give mm or in`)]);
}

/** Whatever is named from a folder that is gone is not found, and threads do not begin in one. */
function checkFolder(): void {
  try {
    process.cwd();
  } catch {
    throw new Refused([
      stop('no-folder', {}, 'the folder that this is run in is gone; go to another one, and run it there'),
    ]);
  }
}

/** What to do where the system has no more to give; undefined for any other fault. */
function saysLack(fault: unknown): string | undefined {
  const { code } = fault instanceof Error ? (fault as NodeJS.ErrnoException) : {};
  return code === 'EMFILE' || code === 'ENFILE'
    ? `the system lets no more files be opened (${code}); close other programs, or allow more (ulimit -n 1024), and run it again`
    : undefined;
}

/** Run a command's work and turn how it ends into an exit status. */
export async function withStatus(
  options: Pick<CommonOptions, 'json' | 'debug' | 'units'>,
  work: () => Promise<number>,
): Promise<void> {
  try {
    checkUnits(options.units);
    checkFolder();
    process.exitCode = await work();
  } catch (fault) {
    if (fault instanceof Refused) {
      const findings = fault.findings.map(asGiven);
      printRefused(findings);
      if (options.json) printJson({ checks: findings });
      process.exitCode = refusedStatus;
      return;
    }
    const lacking = saysLack(fault);
    if (lacking !== undefined) {
      process.stderr.write(`${lacking}\n`);
      if (options.json) printJson({ checks: [stop('system', {}, lacking)] });
      process.exitCode = refusedStatus;
      return;
    }
    const text = fault instanceof Error ? (options.debug ? fault.stack : fault.message) : String(fault);
    process.stderr.write(
      `a fault of seamwright's own: ${text}\nrun again with --debug and report what it prints\n`,
    );
    process.exitCode = faultStatus;
  }
}
