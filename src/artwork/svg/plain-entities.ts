// Names that an SVG file gives to plain texts, as drawing programs do to the addresses of their namespaces: written out.

/** `<!DOCTYPE svg … [ … ]>` with what it declares. Nothing in quotes or brackets is looked into twice. */
const declaring = /<!DOCTYPE\s+[^[<>]{0,300}\[([^\]]{0,20000})\]\s*>/;

/** One name of a plain text: nothing outside the file, nothing that needs another name, no markup and no quotes. */
const plain = /<!ENTITY\s+([A-Za-z_][\w.-]{0,60})\s+(?:"([^"'<&%]{0,200})"|'([^"'<&%]{0,200})')\s*>/g;

/** More are no addresses of namespaces. */
const most = { names: 60, uses: 2000 };

/** Names that XML itself gives. */
const ofXml = ['amp', 'lt', 'gt', 'quot', 'apos'];

/** The text of an SVG with such names written out; as it was where it declares anything else, which is refused where it is read. */
export function withPlainEntities(text: string): string {
  const [whole, inner = ''] = declaring.exec(text.slice(0, 40_000)) ?? [];
  if (whole === undefined || !inner.includes('<!ENTITY')) return text;
  const named = new Map<string, string>();
  const rest = inner.replace(plain, (_, name: string, double?: string, single?: string) => {
    if (!named.has(name)) named.set(name, double ?? single ?? '');
    return '';
  });
  if (rest.trim() !== '' || named.size > most.names || ofXml.some((name) => named.has(name))) return text;
  const use = /&([A-Za-z_][\w.-]*);/g;
  let uses = 0;
  // Counted before any is written: what is written out may be far longer.
  for (const [, name = ''] of text.matchAll(use)) if (named.has(name) && ++uses > most.uses) return text;
  const lines = '\n'.repeat(whole.split('\n').length - 1);
  return text.replace(whole, () => lines).replace(use, (typed, name: string) => named.get(name) ?? typed);
}
