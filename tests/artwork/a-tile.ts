// Tiles as text for the tests, read with the real engine, and what is found in them.
import { readTile, type Tile } from '../../src/artwork/tile.ts';
import { type Finding, Refused } from '../../src/finding.ts';
import { pictureEngine } from '../pictures/compare.ts';

/** A drawing of 40 x 40 mm in mm. */
export const tileText = (
  body: string,
  attributes = 'width="40mm" height="40mm" viewBox="0 0 40 40"',
): string => `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;

export interface Read {
  readonly tile: Tile | undefined;
  readonly findings: readonly Finding[];
}

/** The tile, or what it was refused with. Anything else thrown is a fault, and is thrown on. */
export async function readOf(text: string): Promise<Read> {
  const { normalise } = await pictureEngine();
  try {
    return readTile(text, 'tile.svg', normalise);
  } catch (error) {
    if (error instanceof Refused) return { tile: undefined, findings: error.findings };
    throw error;
  }
}

/** Rule, level and place of each finding: the tested contract. */
export const contractOf = ({ findings }: Read) =>
  findings.map(({ rule, level, where: { line, column, element } }) => ({
    rule,
    level,
    line,
    column,
    element,
  }));
