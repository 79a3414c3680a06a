// The command line: names, options and their help. Each command's work is loaded when it is asked for.
import { Command, CommanderError } from 'commander';
import type { MakeFlags } from './make-command.ts';
import { type BlankFlags, collected, withBlankFlags, withCommonOptions } from './options.ts';
import { refusedStatus, withStatus } from './output.ts';
import type { UnrollFlags } from './unroll-command.ts';

const program = new Command('seamwright')
  .description(
    'Files that fit a round vessel: flat templates with the true arc, and patterns that close around the wall.',
  )
  .exitOverride()
  .showHelpAfterError('(add --help for what can be given)')
  .addHelpText(
    'after',
    '\nStatus: 0 done; 1 done, but look at what is said; 2 refused, nothing written; 70 a fault of ours.',
  );

const command = (name: string): Command => withCommonOptions(program.command(name));

command('make')
  .description('the whole job: cut file, guide, pictures and report')
  .argument('<job>', 'a job file, *.job.json')
  .option('--no-pictures', 'leave the rolled pictures out')
  .action((job: string, flags: MakeFlags) =>
    withStatus(flags, async () => (await import('./make-command.ts')).makeCommand(job, flags)),
  );

withBlankFlags(command('unroll'))
  .description('the plain template of a blank: its flat band, or the band you give')
  .argument('[blank]', 'a blank file, *.blank.json; or give the readings by flags')
  .option('--band <from..to>', 'band along the wall, such as 12..130')
  .option('--coat <thickness>', 'a coat under the film; may be given again', collected, [])
  .option('--film <thickness>', 'thickness of the film')
  .option('--overlap <length>', 'extra past the seam')
  .option('--trim-lip <length>', 'extra above the band')
  .option('--trim-foot <length>', 'extra below the band')
  .action((blank: string | undefined, flags: UnrollFlags) =>
    withStatus(flags, async () => (await import('./unroll-command.ts')).unrollCommand(blank, flags)),
  );

withBlankFlags(command('blank'))
  .description('describes a blank: taper, flat band, girths and how sure they are')
  .argument('[blank]', 'a blank file, *.blank.json; or give the readings by flags')
  .action((blank: string | undefined, flags: BlankFlags) =>
    withStatus(flags, async () => (await import('./blank-command.ts')).blankCommand(blank, flags)),
  );

try {
  await program.parseAsync();
} catch (fault) {
  if (!(fault instanceof CommanderError)) throw fault;
  process.exitCode = fault.exitCode === 0 ? 0 : refusedStatus;
}
