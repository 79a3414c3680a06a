// What long work is at, told a person at a terminal: a script that reads what comes out has no use for it.

/** Between two words on what is done, ms: what ends sooner needs none. */
const wordsEvery = 2000;

interface Terminal {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/** Tells what is done next, `command` first, where the last word or the start was a while ago. */
export function stepWords(
  command: string,
  terminal: Terminal = process.stderr,
  now: () => number = () => performance.now(),
): (says: string) => void {
  let last = now();
  return (says) => {
    const at = now();
    if (terminal.isTTY !== true || at - last < wordsEvery) return;
    last = at;
    terminal.write(`${command}: ${says}\n`);
  };
}
