// Reading XML without trusting it. Adapter of saxes (ISC), which expands no entities and fetches nothing.
import { SaxesParser } from 'saxes';

export interface XmlLimits {
  /** Most characters. */
  readonly length: number;
  /** Deepest nesting of elements. */
  readonly depth: number;
  /** Most elements. */
  readonly elements: number;
  /** Most attributes of one element. */
  readonly attributes: number;
}

const defaultLimits: XmlLimits = {
  length: 50_000_000,
  depth: 256,
  elements: 1_000_000,
  attributes: 1000,
};

export interface XmlElement {
  /** The name without its namespace prefix. */
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Where its tag begins, both from 1. */
  readonly line: number;
  readonly column: number;
}

/** Letters of an element's name, and of its id, that are enough to find it by. */
const mostNamed = 60;

const named = (text: string): string => (text.length > mostNamed ? `${text.slice(0, mostNamed)}…` : text);

/** An element as findings name it, such as `path#leaf`. */
export const elementName = ({ name, attributes }: Pick<XmlElement, 'name' | 'attributes'>): string =>
  attributes.id ? `${named(name)}#${named(attributes.id)}` : named(name);

export interface XmlHandlers {
  readonly open?: (element: XmlElement, depth: number) => void;
  readonly close?: (name: string, depth: number) => void;
  readonly text?: (text: string) => void;
}

/** XML that can't be read, or goes past a limit. */
export class XmlFault extends Error {
  readonly line: number;
  readonly column: number;
  constructor(says: string, line: number, column: number) {
    super(says);
    this.name = 'XmlFault';
    this.line = line;
    this.column = column;
  }
}

/** Walk an XML text. @throws XmlFault at the first thing that can't be read or is too much. */
export function readXml(text: string, handlers: XmlHandlers, limits: XmlLimits = defaultLimits): void {
  if (text.length > limits.length)
    throw new XmlFault(`holds ${text.length} characters; at most ${limits.length} are read`, 1, 1);
  const parser = new SaxesParser({ position: true });
  let depth = 0;
  let elements = 0;
  let start = { line: 1, column: 1 };
  const refuse = (says: string): never => {
    throw new XmlFault(says, parser.line, parser.column);
  };
  // Of the parser's words one would be taken for a fault of ours.
  const inWords = (message: string) =>
    message.replace(/^\d+:\d+: /, '').replace('undefined entity', 'an entity that nothing declares');
  parser.on('error', (error) => refuse(inWords(error.message)));
  parser.on('doctype', (doctype) => {
    if (/<!ENTITY/i.test(doctype))
      refuse('declares entities, which are not expanded here; save it as plain SVG');
  });
  let attributes = 0;
  parser.on('opentagstart', () => {
    start = tagStart(text, parser);
    attributes = 0;
  });
  // The reader after this one holds each against all before it.
  parser.on('attribute', () => {
    attributes += 1;
    if (attributes > limits.attributes) refuse(`has an element of more than ${limits.attributes} attributes`);
  });
  parser.on('opentag', (tag) => {
    depth += 1;
    elements += 1;
    if (depth > limits.depth) refuse(`nests more than ${limits.depth} elements deep`);
    if (elements > limits.elements) refuse(`holds more than ${limits.elements} elements`);
    const read = tag.attributes as Record<string, string>;
    handlers.open?.({ name: localName(tag.name), attributes: read, ...start }, depth);
  });
  parser.on('closetag', (tag) => {
    handlers.close?.(localName(tag.name), depth);
    depth -= 1;
  });
  parser.on('text', (part) => handlers.text?.(part));
  parser.on('cdata', (part) => handlers.text?.(part));
  parser.write(text).close();
}

/** Where the tag begins whose name the parser has just read: it stands at the end of that name, or a line below it. */
function tagStart(
  text: string,
  { position, line, column }: Readonly<Record<'position' | 'line' | 'column', number>>,
): { readonly line: number; readonly column: number } {
  const at = text.lastIndexOf('<', position - 1);
  return column > position - at - 1
    ? { line, column: column - (position - at) + 1 }
    : { line: line - 1, column: at - text.lastIndexOf('\n', at) };
}

const localName = (name: string): string => name.slice(name.indexOf(':') + 1);
