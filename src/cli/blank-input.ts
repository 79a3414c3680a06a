// A blank from a file, or from the flags of the command line.
import { Refused, stop } from '../finding.ts';
import { type Blank, readBlank } from '../job/typed/read-blank.ts';
import { parseJson } from '../job/typed/read-json.ts';
import { unitsOf } from '../job/typed/schema-values.ts';
import { type TypedIn, toldAt } from '../job/typed/typed-at.ts';
import { leastSize } from '../lengths/length.ts';
import { readText } from './files.ts';
import { FlagLengths } from './flag-lengths.ts';
import type { BlankFlags } from './options.ts';
import { tellIn } from './units-told.ts';

export interface GivenBlank {
  readonly blank: Blank;
  /** The file the maker named; none where it was given by flags. */
  readonly typedIn: TypedIn;
}

/** @throws Refused where the file or the flags are no blank. */
export async function givenBlank(file: string | undefined, flags: BlankFlags): Promise<GivenBlank> {
  if (file === undefined) return { blank: blankOfFlags(flags), typedIn: undefined };
  refuseBoth(file, flags);
  const typed = parseJson(await readText(file, file), file);
  tellIn(unitsOf(typed, 'mm'));
  return { blank: readBlank(typed, file), typedIn: file };
}

/** Readings by flags beside a file: which of the two is meant can't be known. */
function refuseBoth(file: string, flags: BlankFlags): void {
  const given = Object.entries(blankFlags).filter(
    ([key]) => flags[key as keyof typeof blankFlags] !== undefined,
  );
  if (given.length === 0) return;
  throw new Refused(
    given.map(([, flag]) => stop('flags', { key: flag }, `is given beside ${file}; keep one of the two`)),
  );
}

const blankFlags = {
  height: '--height',
  along: '--along',
  footAcross: '--foot-across',
  footGirth: '--foot-girth',
  lipAcross: '--lip-across',
  lipGirth: '--lip-girth',
  footRound: '--foot-round',
  lipRound: '--lip-round',
  reading: '--reading',
  use: '--use',
} as const;

function blankOfFlags(flags: BlankFlags): Blank {
  const lengths = new FlagLengths(flags.units);
  const one = (a: [string, string | undefined], b: [string, string | undefined], keys: [string, string]) => {
    if (a[1] !== undefined && b[1] !== undefined)
      return lengths.refuse(b[0], `is given beside ${a[0]}; keep one of the two`);
    if (a[1] === undefined && b[1] === undefined)
      return lengths.refuse(a[0], `is missing; give ${a[0]} or ${b[0]}, or the name of a blank file`);
    const [[flag, text], key] = a[1] === undefined ? [b, keys[1]] : [a, keys[0]];
    return { [key]: lengths.read(flag, text, 'positive', { least: leastSize }) };
  };
  const top = one(['--height', flags.height], ['--along', flags.along], ['height', 'along']);
  const foot = one(
    ['--foot-across', flags.footAcross],
    ['--foot-girth', flags.footGirth],
    ['across', 'girth'],
  );
  const lip = one(['--lip-across', flags.lipAcross], ['--lip-girth', flags.lipGirth], ['across', 'girth']);
  const footRound = lengths.read('--foot-round', flags.footRound) ?? 0;
  const lipRound = lengths.read('--lip-round', flags.lipRound) ?? 0;
  const reading = lengths.read('--reading', flags.reading);
  lengths.finish();
  const content = {
    name: 'blank',
    units: 'mm',
    stations: [
      { height: 0, ...foot },
      { ...top, ...lip },
    ],
    footRound,
    lipRound,
    ...(reading === undefined ? {} : { reading }),
    ...(flags.use === undefined ? {} : { use: flags.use }),
  };
  return byFlags(() => readBlank(content, ''));
}

/** What is refused of a blank given by flags, told by its flags. */
function byFlags(read: () => Blank): Blank {
  try {
    return read();
  } catch (error) {
    if (error instanceof Refused) throw new Refused(toldAt(error.findings, undefined));
    throw error;
  }
}
