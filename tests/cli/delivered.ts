// Delivered files taken apart for the tests, by an XML reader of their own.
import { SaxesParser } from 'saxes';

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** The `data-role` of the group around it. */
  readonly role: string | undefined;
}

export function elementsOf(text: string): readonly Element[] {
  const elements: Element[] = [];
  const roles: (string | undefined)[] = [];
  const parser = new SaxesParser();
  parser.on('error', (fault) => {
    throw fault;
  });
  parser.on('opentag', ({ name, attributes }) => {
    elements.push({ name, attributes: attributes as Record<string, string>, role: roles.at(-1) });
    roles.push((attributes as Record<string, string>)['data-role'] ?? roles.at(-1));
  });
  parser.on('closetag', () => {
    roles.pop();
  });
  parser.write(text).close();
  return elements;
}

export const pathsOf = (elements: readonly Element[], role: string): readonly string[] =>
  elements
    .filter((element) => element.name === 'path' && element.role === role)
    .map(({ attributes }) => attributes.d ?? '');

export const byId = (elements: readonly Element[], id: string): string =>
  elements.find(({ attributes }) => attributes.id === id)?.attributes.d ?? '';

/** The numbers of path data, in pairs. */
export const pointsOf = (data: string): readonly (readonly [number, number])[] => {
  const numbers = (data.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
  return Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i] ?? 0, numbers[2 * i + 1] ?? 0]);
};

/** How far a point lies to the right of the line from one point to another, as seen going that way, y down. */
export function rightOf(
  [px, py]: readonly [number, number],
  [from, to]: readonly (readonly [number, number])[],
): number {
  if (from === undefined || to === undefined) throw new Error('a line has two points');
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return (dx * (py - from[1]) - dy * (px - from[0])) / Math.hypot(dx, dy);
}

/** Width and height of path data of absolute lines and cubics, each cubic looked at in 64 places. */
export function sizeOf(data: string): readonly [number, number] {
  const seen: (readonly [number, number])[] = [];
  for (const [, command, rest = ''] of data.matchAll(/([MLC])([^MLCZ]*)/g)) {
    const points = pointsOf(rest);
    const from = seen.at(-1);
    if (command !== 'C' || from === undefined) seen.push(...points);
    else
      for (let i = 1; i <= 64; i++)
        seen.push(
          [0, 1].map((axis) =>
            cubicAt(
              [from, ...points].map((p) => p[axis] ?? 0),
              i / 64,
            ),
          ) as [number, number],
        );
  }
  const extent = (axis: 0 | 1) =>
    Math.max(...seen.map((p) => p[axis])) - Math.min(...seen.map((p) => p[axis]));
  return [extent(0), extent(1)];
}

/** Bernstein form. */
const cubicAt = ([a = 0, b = 0, c = 0, d = 0]: readonly number[], t: number): number =>
  a * (1 - t) ** 3 + 3 * b * t * (1 - t) ** 2 + 3 * c * t * t * (1 - t) + d * t ** 3;
