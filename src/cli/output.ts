// What a command prints and the status it ends with.
import { type Finding, Refused, toLine } from '../finding.ts';

/** Input refused, or a usage error. */
export const refusedStatus = 2;
/** A fault of ours. */
export const faultStatus = 70;

export function printFindings(findings: readonly Finding[]): void {
  for (const finding of findings) process.stderr.write(`${finding.level}: ${toLine(finding)}\n`);
}

export const printJson = (document: unknown): void => {
  process.stdout.write(`${JSON.stringify(document, undefined, 2)}\n`);
};

/** Run a command's work and turn how it ends into an exit status. */
export async function withStatus(
  options: { readonly json?: boolean; readonly debug?: boolean },
  work: () => Promise<number>,
): Promise<void> {
  try {
    process.exitCode = await work();
  } catch (fault) {
    if (fault instanceof Refused) {
      for (const finding of fault.findings) process.stderr.write(`${toLine(finding)}\n`);
      if (options.json) printJson({ checks: fault.findings });
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
