// Options that several commands share. Loaded for every command and for help, so it loads nothing itself.
import type { Command } from 'commander';
import type { Units } from '../lengths/length.ts';

export interface CommonOptions {
  readonly json?: boolean;
  readonly out?: string;
  readonly units: Units;
  readonly debug?: boolean;
}

export const withCommonOptions = (command: Command): Command =>
  command
    .option('--json', 'print one JSON document instead of words')
    .option('--out <folder>', 'folder for the files')
    .addOption(
      command
        .createOption('--units <unit>', 'unit of numbers typed without one, and of what is told: mm or in')
        .default('mm', 'mm, and what is told is in the file’s own'),
    )
    .option('--debug', 'show where a fault of the program came from');

export const collected = (value: string, before: readonly string[]): string[] => [...before, value];

export interface BlankFlags extends CommonOptions {
  readonly height?: string;
  readonly along?: string;
  readonly footAcross?: string;
  readonly footGirth?: string;
  readonly lipAcross?: string;
  readonly lipGirth?: string;
  readonly footRound?: string;
  readonly lipRound?: string;
  readonly reading?: string;
  readonly use?: string;
}

export const withBlankFlags = (command: Command): Command =>
  command
    .option('--height <length>', 'height of the blank, straight up')
    .option('--along <length>', 'or: length of its wall, measured on it')
    .option('--foot-across <length>', 'diameter at the foot corner')
    .option('--foot-girth <length>', 'or: girth at the foot corner')
    .option('--lip-across <length>', 'diameter at the lip corner')
    .option('--lip-girth <length>', 'or: girth at the lip corner')
    .option('--foot-round <length>', 'radius of the rounded foot')
    .option('--lip-round <length>', 'radius of the rounded lip')
    .option(
      '--reading <length>',
      'how well one girth or diameter is read (standard uncertainty), 0.5 mm if left out',
    )
    .option('--use <use>', 'drinking, if left out, or other: whether lips touch its lip');

/** The flag of an archive beside the files. */
export const withZip = (command: Command): Command =>
  command.option('--zip', 'also all files as one archive, all.zip');

export const withFilmGiving = (command: Command): Command =>
  command
    .option('--stretch <share>', 'by how much of its length the film stretches in laying, 0.02 or 2%')
    .option('--gather <share>', 'by how much it gathers without a pucker, 0 if left out');

export const withPaperSize = (command: Command): Command =>
  command
    .option(
      '--paper-size <name>',
      'paper of the print: a4, a3, letter, tabloid, or a size such as 210x330mm',
      'a4',
    )
    .option('--printer <file>', 'a printer file, *.printer.json: what its test piece measured');

export const withPrint = (command: Command): Command =>
  withPaperSize(command.option('--print', 'also the guide at true size on paper, as a PDF'));
