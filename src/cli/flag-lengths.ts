// Lengths as typed on the command line.
import { type Finding, refuseIfAny, stop } from '../finding.ts';
import { readVolume } from '../job/typed/read-coats.ts';
import { type LengthOptions, parseLength, type Units } from '../lengths/length.ts';
import { type NumberOptions, parseNumber, parseShare } from '../lengths/number.ts';

/** Collects lengths from flags, so that all faults are told at once. */
export class FlagLengths {
  readonly #units: Units;
  readonly #findings: Finding[] = [];

  constructor(units: Units) {
    this.#units = units;
  }

  /** The length of a flag in mm; undefined where it was not given or not a length. */
  read(
    flag: string,
    text: string | undefined,
    sign: 'positive' | 'zero-too' = 'zero-too',
    bounds: Pick<LengthOptions, 'most' | 'least'> = {},
  ): number | undefined {
    if (text === undefined) return undefined;
    const parsed = parseLength(text, { units: this.#units, bare: 'text-too', sign, ...bounds });
    if (parsed.ok) return parsed.mm;
    this.#findings.push(stop('not-a-length', { key: flag }, parsed.says));
    return undefined;
  }

  /** The volume of a flag in ml; undefined where it is none. */
  readVolume(flag: string, text: string): number | undefined {
    const report = (found: Finding) => void this.#findings.push(found);
    return readVolume(text, { file: '', key: flag, units: this.#units, report });
  }

  /** The number of a flag, with or without the unit that belongs to it; undefined where it was not given or none. */
  readNumber(
    flag: string,
    text: string | undefined,
    unit: RegExp,
    bounds: NumberOptions,
  ): number | undefined {
    if (text === undefined) return undefined;
    const bare = text.trim().replace(unit, '').trim();
    const parsed = parseNumber(/^[+.\d]/.test(bare) ? Number(bare) : text, bounds);
    if (parsed.ok) return parsed.value;
    this.#findings.push(stop('not-a-number', { key: flag }, parsed.says));
    return undefined;
  }

  /** The share of a flag, `0.02` or `2%`, from 0 to `most`; undefined where it was not given or none. */
  readShare(flag: string, text: string | undefined, most: number): number | undefined {
    if (text === undefined) return undefined;
    const asNumber = text.trim() === '' ? Number.NaN : Number(text);
    const parsed = parseShare(asNumber >= 0 && asNumber <= most ? asNumber : text, most);
    return parsed.ok ? parsed.value : this.refuse(flag, parsed.says);
  }

  refuse(flag: string, says: string): undefined {
    this.#findings.push(stop('flags', { key: flag }, says));
    return undefined;
  }

  /** @throws Refused where any flag was wrong. */
  finish(): void {
    refuseIfAny(this.#findings);
  }
}
