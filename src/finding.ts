// The one shape of trouble: what is wrong, where, and what the maker can do about it.

/** How serious a finding is: `stop` writes nothing, `look` needs the maker's eye, `note` is for the record. */
export type Level = 'stop' | 'look' | 'note';

/** Where a finding is: in a typed file, in a drawing (mm, y down), or on the wall. */
export interface Where {
  readonly file?: string;
  /** A key as the maker typed it, such as `stations[1].across`. */
  readonly key?: string;
  /** An element of a drawing, such as `path#leaf`. */
  readonly element?: string;
  readonly line?: number;
  readonly column?: number;
  readonly x?: number;
  readonly y?: number;
  readonly turn?: number;
  readonly along?: number;
}

export interface Finding {
  /** The rule's stable name: with `where`, the tested contract. */
  readonly rule: string;
  readonly level: Level;
  readonly where: Where;
  /** One sentence or two: what is wrong with the value as typed, what is allowed, what to do. */
  readonly says: string;
  /** What was measured, in the rule's own unit: a width, gap or length in mm, an area in mm², an angle in degrees. */
  readonly size?: number;
  /** How far what was found goes on, mm. */
  readonly length?: number;
  /** The layer it is in. */
  readonly layer?: string;
  /** At how many places of the wall it is, where the same is told once. */
  readonly times?: number;
}

/** Input that is refused: the command writes nothing and exits with 2. */
export class Refused extends Error {
  readonly findings: readonly Finding[];
  constructor(findings: readonly Finding[]) {
    super(findings.map(toLine).join('\n'));
    this.name = 'Refused';
    this.findings = findings;
  }
}

/** @throws Refused where there is anything to refuse. */
export function refuseIfAny(stops: readonly Finding[]): void {
  if (stops.length > 0) throw new Refused(stops);
}

/** Findings that name no file yet, told of this one. */
export const inFile = (findings: readonly Finding[], file: string): readonly Finding[] =>
  findings.map((finding) => ({ ...finding, where: { file, ...finding.where } }));

/** A finding of level `stop`. */
export const stop = (rule: string, where: Where, says: string): Finding => ({
  rule,
  level: 'stop',
  where,
  says,
});

/** A finding of level `look`. */
export const look = (rule: string, where: Where, says: string): Finding => ({
  rule,
  level: 'look',
  where,
  says,
});

/** A finding of level `note`. */
export const note = (rule: string, where: Where, says: string): Finding => ({
  rule,
  level: 'note',
  where,
  says,
});

/** A place in a drawing, as a person reads it: `12.3, 45.6 mm`. */
const placeInDrawing = ({ x, y }: Where): string | undefined =>
  x === undefined || y === undefined ? undefined : `${Number(x.toFixed(1))}, ${Number(y.toFixed(1))} mm`;

/** One line for a person: `file:line:column: key: what is wrong; what to do`. What was typed steers no screen. */
export function toLine(finding: Finding): string {
  const { file, line, column, key, element } = finding.where;
  const place = [file, line, column].filter((part) => part !== undefined).join(':');
  return [place, element, key, placeInDrawing(finding.where), finding.says]
    .filter((part) => part !== undefined && part !== '')
    .join(': ')
    .replace(/\p{Cc}+/gu, ' ');
}
