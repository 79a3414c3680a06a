// The command line: names, options and their help. Each command's work is loaded when it is asked for.
import { Command, CommanderError } from 'commander';
import { stop } from '../finding.ts';
import { useSameSines } from '../job/same-sines.ts';
import { withShortWords } from '../lengths/shown.ts';
import type { BenchFlags } from './bench-command.ts';
import type { DescribeFlags } from './blank-command.ts';
import type { CollarFlags } from './collar-command.ts';
import { compileLess, tidyHeap } from './engine-pace.ts';
import { beginNaming } from './given-names.ts';
import type { InspectFlags } from './inspect-command.ts';
import type { MakeFlags } from './make-command.ts';
import type { NamesFlags } from './names-command.ts';
import {
  type CommonOptions,
  collected,
  withBlankFlags,
  withCommonOptions,
  withFilmGiving,
  withPaperSize,
  withPrint,
  withZip,
} from './options.ts';
import { heardBy, printJson, refusedStatus, withStatus } from './output.ts';
import type { ProveFlags } from './prove-command.ts';
import type { RepeatFlags } from './repeat-command.ts';
import type { TestPieceFlags } from './test-piece-command.ts';
import { compiledSvgEngine } from './tools.ts';
import { beginTelling } from './units-told.ts';
import type { UnrollFlags } from './unroll-command.ts';

/** Commander's complaint, its hint included, as one line like every other message. */
function usageLine(text: string): string {
  const line = text
    .trim()
    .replace(/^error: /, '')
    .replace(/\.?\s*\n\s*/g, ' ');
  return `${withShortWords(withLongerFlags(line))}; add --help for what can be given`;
}

/** Flags that begin with an unknown one are likelier meant than those commander finds near: `--foot` for `--foot-across`. */
function withLongerFlags(line: string): string {
  const [, unknown = line, typed] = /^(unknown option '(--[^'=]+)(?:=[^']*)?')/.exec(line) ?? [];
  const asked = program.commands.find((one) => one.name() === process.argv[2]);
  if (typed === undefined || !asked) return line;
  const flags = asked.options.flatMap(({ long }) => (long?.startsWith(`${typed}-`) ? [long] : []));
  return flags.length === 0 ? line : `${unknown} (Did you mean ${flags.join(' or ')}?)`;
}

useSameSines();
compileLess();
// `repeat` holds little beside the drawing that it reads: cleared away sooner, that takes a fourteenth more time.
if (process.argv[2] !== 'repeat') tidyHeap();

const program = new Command('seamwright')
  .description(
    'Files that fit a round vessel: flat templates with the true arc, and patterns that close around the wall.',
  )
  .hook('preAction', (_, asked) => {
    const isTyped = asked.getOptionValueSource('units') === 'cli';
    beginTelling(isTyped ? asked.opts<CommonOptions>().units : undefined);
    beginNaming(asked.args);
  })
  .exitOverride()
  .configureOutput({ outputError: (text, write) => write(`${usageLine(text)}\n`) })
  .addHelpText(
    'after',
    '\nStatus: 0 done; 1 done, but look at what is said; 2 refused, nothing written; 70 a fault of ours.',
  );

const command = (name: string): Command => withCommonOptions(program.command(name));

withZip(withPrint(command('make')))
  .description('the whole job: cut file, guide, pictures and report')
  .argument('<job>', 'a job file, *.job.json')
  .option('--no-pictures', 'leave the pictures out, and the job sheet on paper')
  .option('--nest <seconds>', 'look so long for less film; Ctrl-C stops it and keeps the best so far')
  .action((job: string, flags: MakeFlags) =>
    withStatus(flags, async () => {
      const engine = compiledSvgEngine();
      return (await import('./make-command.ts')).makeCommand(job, flags, engine);
    }),
  );

withZip(withPrint(command('names')))
  .description('a job once a row of a list: {column} in its texts and numbers is filled from that column')
  .argument('<job>', 'a job file, *.job.json')
  .argument('<list>', 'a CSV in UTF-8 whose first line names the columns')
  .option('--pictures', 'also the rolled pictures of each vessel, which takes longer')
  .action((job: string, list: string, flags: NamesFlags) =>
    withStatus(flags, async () => {
      const engine = compiledSvgEngine();
      return (await import('./names-command.ts')).namesCommand(job, list, flags, engine);
    }),
  );

withPrint(withFilmGiving(withBlankFlags(command('unroll'))))
  .description('the plain template of a blank: its flat band, or the band you give')
  .argument('[blank]', 'a blank file, *.blank.json; or give the readings by flags')
  .option('--band <from..to>', 'band along the wall, such as 12..130')
  .option(
    '--coat <amount>',
    'a coat under the film, by thickness or poured (12ml); may be given again',
    collected,
    [],
  )
  .option('--film <thickness>', 'thickness of the film')
  .option('--overlap <length>', 'extra past the seam')
  .option('--trim-lip <length>', 'extra above the band')
  .option('--trim-foot <length>', 'extra below the band')
  .option(
    '--pieces <how>',
    'one; or, where the wall bends more than the film gives, stacked, gores or darts',
    'one',
  )
  .option('--gores <number>', 'so many gores or darts; left out, as many as the film needs')
  .option(
    '--joined <where>',
    'gores in a comb joined at the foot or at the lip, or loose, if left out; with darts the edge that stays whole',
  )
  .option('--strip <width>', 'width of the strip that joins a comb, 5 mm if left out')
  .action((blank: string | undefined, flags: UnrollFlags) =>
    withStatus(flags, async () => (await import('./unroll-command.ts')).unrollCommand(blank, flags)),
  );

withPaperSize(command('collar'))
  .description('paper arcs that give level lines once wrapped: cut file, guide and print at true size')
  .argument('<blank>', 'a blank file, *.blank.json')
  .option('--height <length>', 'a level line so high above the foot; may be given again', collected, [])
  .option('--along <length>', 'or: so far up the wall; left out, every edge of the flat band', collected, [])
  .option('--edge <edge>', 'the edge of the strip that is level: upper or lower')
  .option('--width <length>', 'width of the strip, 20 mm if left out')
  .option('--paper <thickness>', 'thickness of the paper, 0.1 mm if left out')
  .option('--coat <thickness>', 'a coat already on the wall; may be given again', collected, [])
  .option('--overlap <length>', 'tab past the seam, 10 mm if left out')
  .action((blank: string, flags: CollarFlags) =>
    withStatus(flags, async () => (await import('./collar-command.ts')).collarCommand(blank, flags)),
  );

command('repeat')
  .description('does a tile join itself, what repeat does it truly have, and how can it close on this blank')
  .argument('<tile>', 'the artwork: an SVG, PNG or JPEG')
  .argument('<file>', 'a blank file, or a job file whose band, coats and film are to hold')
  .option('--band <from..to>', 'band along the wall, such as 12..130')
  .option('--art-across <length>', 'how wide the artwork is, where its file does not say')
  .option('--colours <number>', 'in how many colours a PNG or JPEG is traced, 2 to 8')
  .option(
    '--ground <colour>',
    'a colour that the pattern stands on and that is not cut; may be given again',
    collected,
    [],
  )
  .option('--font <file>', 'a font that texts in it are set in; may be given again', collected, [])
  .action((tile: string, file: string, flags: RepeatFlags) =>
    withStatus(flags, async () => (await import('./repeat-command.ts')).repeatCommand(tile, file, flags)),
  );

command('inspect')
  .description('can artwork be cut, weeded and carried: what is too thin, too small, open or doubled')
  .argument('<art...>', 'the artwork, an SVG; more are laid over it, each films of its own')
  .option('--art-across <length>', 'how wide the artwork is to be; left out, as drawn')
  .option('--colours <number>', 'in how many colours a PNG or JPEG is traced, 2 to 8')
  .option(
    '--ground <colour>',
    'a colour that the art stands on and that is not cut; may be given again',
    collected,
    [],
  )
  .option('--font <file>', 'a font that texts in it are set in; may be given again', collected, [])
  .option('--film <file>', 'a film file, *.film.json, whose limits hold')
  .option('--cutter <file>', 'a cutter file, *.cutter.json')
  .option('--min-width <length>', 'thinnest film that holds')
  .option('--min-gap <length>', 'narrowest gap that a blade opens')
  .option('--min-piece <area>', 'smallest piece that holds, in square mm')
  .option('--min-angle <degrees>', 'sharpest point that stays down')
  .option('--use <use>', 'decal: the artwork is film; mask: all around it is')
  .option('--mend', 'mend it, and write the mended art with a picture over the old one to --out')
  .action((art: readonly string[], flags: InspectFlags) =>
    withStatus(flags, async () => (await import('./inspect-command.ts')).inspectCommand(art, flags)),
  );

withFilmGiving(withBlankFlags(command('blank')))
  .description('describes a blank: taper, flat band, girths and how sure they are')
  .argument('[blank]', 'a blank file, *.blank.json; or give the readings by flags')
  .option('--coat <amount>', 'a coat, by thickness or poured (12ml); may be given again', collected, [])
  .action((blank: string | undefined, flags: DescribeFlags) =>
    withStatus(flags, async () => (await import('./blank-command.ts')).blankCommand(blank, flags)),
  );

withPaperSize(command('test-piece'))
  .description(
    'a square and two scales to cut and print, a strip of film to lay: what they measure corrects the files',
  )
  .option('--cutter <file>', 'a cutter file, *.cutter.json')
  .action((flags: TestPieceFlags) =>
    withStatus(flags, async () => (await import('./test-piece-command.ts')).testPieceCommand(flags)),
  );

command('prove')
  .description('reads delivered files back, rolls them onto the blank and measures them')
  .argument('<folder>', 'a folder that make wrote to')
  .option('--blank <file>', 'another blank than the one beside the files')
  .action((folder: string, flags: ProveFlags) =>
    withStatus(flags, async () => (await import('./prove-command.ts')).proveCommand(folder, flags)),
  );

program
  .command('bench')
  .description('the whole job on a page in your browser, served to this machine alone')
  .option('--port <number>', 'port of its address; 0 for any that is free', '0')
  .option('--no-open', 'only print the address, and open no browser')
  .option('--debug', 'show where a fault of the program came from')
  .action((flags: BenchFlags) =>
    withStatus({ ...flags, units: 'mm' }, async () =>
      (await import('./bench-command.ts')).benchCommand(flags),
    ),
  );

for (const stream of [process.stdout, process.stderr]) stream.on('error', heardBy(stream));

try {
  await program.parseAsync();
} catch (fault) {
  if (!(fault instanceof CommanderError)) throw fault;
  process.exitCode = fault.exitCode === 0 ? 0 : refusedStatus;
  if (fault.exitCode !== 0 && process.argv.includes('--json'))
    printJson({ checks: [stop('usage', {}, usageLine(fault.message))] });
}
