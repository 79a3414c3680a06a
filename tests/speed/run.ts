// `npm run speed`: one table, and with `--json FILE` one file; `--nest-seconds 60` nests longer, `--only=page` measures one
// part, and `--only=tasks` or `--only=growth` one that is measured only where it is named. Needs the built command (`npm run build`).
import { writeFileSync } from 'node:fs';
import { commandComparisons, growthComparisons } from './commands.ts';
import { type Comparison, checksum } from './harness.ts';
import { layingComparisons } from './laying.ts';
import { makingComparisons } from './making.ts';
import { nestingComparisons } from './nesting.ts';
import { pageComparisons } from './page-redraw.ts';
import { taskComparisons } from './page-tasks.ts';
import { repeatComparisons } from './repeats.ts';
import { replicatingComparisons } from './replicating.ts';
import { widthComparisons } from './widths.ts';

const shown = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

function printTable(rows: readonly Comparison[]): void {
  const lines = rows.map(({ name, ours, other, unit, ratio, spread }) => [
    name,
    `${shown(ours)} ${unit}`,
    `${shown(other)} ${unit}`,
    shown(ratio),
    `${(spread * 100).toFixed(0)} %`,
  ]);
  const header = ['what', 'ours', 'other', 'ratio', 'spread'];
  const widths = header.map((word, i) => Math.max(word.length, ...lines.map((line) => line[i]?.length ?? 0)));
  for (const line of [header, ...lines])
    process.stdout.write(
      `${line
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd()}\n`,
    );
}

const at = process.argv.indexOf('--json');
const file = at < 0 ? undefined : process.argv[at + 1];
const nestAt = process.argv.indexOf('--nest-seconds');
const nestSeconds = nestAt < 0 ? 3 : Number(process.argv[nestAt + 1]);
const only = process.argv.find((argument) => argument.startsWith('--only='))?.slice('--only='.length);
/** The parts of the bench by their names: `--only=page` measures one alone. */
const parts: Readonly<Record<string, () => readonly Comparison[] | Promise<readonly Comparison[]>>> = {
  laying: layingComparisons,
  replicating: replicatingComparisons,
  widths: widthComparisons,
  commands: commandComparisons,
  repeats: repeatComparisons,
  making: makingComparisons,
  page: pageComparisons,
  nesting: () => nestingComparisons(nestSeconds),
  growth: growthComparisons,
  tasks: taskComparisons,
};
/** With these the whole would take more than five minutes. */
const onlyNamed: ReadonlySet<string> = new Set(['growth', 'tasks']);
const rows: Comparison[] = [];
for (const [name, part] of Object.entries(parts))
  if (only === undefined ? !onlyNamed.has(name) : only === name) {
    const start = performance.now();
    rows.push(...(await part()));
    process.stderr.write(`${name}: ${((performance.now() - start) / 1000).toFixed(0)} s
`);
  }
printTable(rows);
process.stdout.write(`checksum ${checksum()}\n`);
if (file !== undefined) writeFileSync(file, `${JSON.stringify(rows, undefined, 2)}\n`);
