// Undoes pairs while the command is built: `const [a, b] = [c, d]` becomes `const a = c, b = d`. Until node has compiled a
// function, each of the former makes an array and an iterator, and most of a small job's time goes by before it has.
import { type Plugin, parseAst } from 'vite';

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}

interface Declarator extends Node {
  readonly id: Node & { readonly elements?: readonly ((Node & { readonly name?: string }) | null)[] };
  readonly init: (Node & { readonly elements?: readonly (Node | null)[] }) | null;
}

/** The same code, with every declaration of plain names by an array of as many values taken apart. */
export function withoutPairs(code: string): string {
  let [plain, from] = ['', 0];
  for (const { start, end, text } of pairsIn(code)) {
    if (start < from) continue;
    plain += code.slice(from, start) + text;
    from = end;
  }
  return plain + code.slice(from);
}

interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

function pairsIn(code: string): Edit[] {
  const edits: Edit[] = [];
  const look = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    const edit = isDeclarator(value) ? takenApart(value, code) : undefined;
    if (edit) edits.push(edit);
    else Object.values(value).forEach(look);
  };
  look(parseAst(code));
  return edits;
}

const isDeclarator = (value: object): value is Declarator =>
  'type' in value && value.type === 'VariableDeclarator';

function takenApart({ id, init, start, end }: Declarator, code: string): Edit | undefined {
  if (id.type !== 'ArrayPattern' || init?.type !== 'ArrayExpression') return undefined;
  const [names, values] = [id.elements ?? [], init.elements ?? []];
  const isPlain =
    names.length === values.length &&
    names.every((name) => name?.type === 'Identifier') &&
    values.every((value) => value !== null && !['SpreadElement', 'SequenceExpression'].includes(value.type));
  if (!isPlain) return undefined;
  const parts = names.map((name, i) => {
    const value = values[i];
    return `${name?.name} = ${value ? code.slice(value.start, value.end) : ''}`;
  });
  return { start, end, text: parts.join(', ') };
}

export const pairsUndone = (): Plugin => ({
  name: 'pairs-undone',
  renderChunk: (code) => ({ code: withoutPairs(code), map: null }),
});
