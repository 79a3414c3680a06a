// Fonts for the tests: the one that comes with us, and others of scripts it lacks, all open (OFL-1.1).
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { openFont } from '../../src/artwork/text/lettering.ts';
import { textSetter } from '../../src/job/tools.ts';

const find = createRequire(import.meta.url).resolve;
const bytesOf = (path: string): Uint8Array =>
  new Uint8Array(readFileSync(find(`@expo-google-fonts/${path}`)));

/** Plain letters, made to be read small. */
export const plainFont = bytesOf('atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf');
/** A script whose letters overlap. */
export const scriptFont = bytesOf('pacifico/400Regular/Pacifico_400Regular.ttf');
export const hebrewFont = bytesOf('alef/400Regular/Alef_400Regular.ttf');
export const arabicFont = bytesOf('amiri-quran/400Regular/AmiriQuran_400Regular.ttf');

export const setText = textSetter(openFont(plainFont));
