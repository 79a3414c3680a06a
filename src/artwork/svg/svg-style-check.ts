// What a style sheet or a style attribute says that the reader passes over: found here, so that no drawing changes in silence.
// Tried against the reader one by one; each is in tests/artwork/refusals.test.ts.
import { type Finding, look, stop, type Where } from '../../finding.ts';

interface Unfollowed {
  readonly rule: string;
  readonly level: 'stop' | 'look';
  /** Where it stands in the text; what it matches is named to the maker. No letter may be looked at anew for each other one. */
  readonly pattern: RegExp;
  /** The part of a style sheet that it is looked for in; left out, all of it. */
  readonly within?: (css: string) => string;
  readonly says: (found: string) => string;
}

/** A property as declared: at the start, or after a brace, a semicolon or a space. */
const declared = (names: string, value = ''): RegExp =>
  new RegExp(`(?<=^|[;{\\s])(?:${names})\\s*:${value}`, 'i');

/** What strokes may be that the reader would draw otherwise. */
export const fixedStroke =
  'has a stroke that stays as wide however the drawing is scaled, so its width on the vessel is not known; turn the stroke into an outline';
export const contextPaint =
  'is painted as the line that it marks, which is not followed; give it a colour of its own';

/** What stands before each block of a style sheet. */
export const selectorsOf = (css: string): readonly string[] =>
  css
    .split('{')
    .slice(0, -1)
    .map((part) => part.slice(Math.max(part.lastIndexOf('}'), part.lastIndexOf(';')) + 1));

const selectors = (css: string): string => selectorsOf(css).join('{');

/** Each block of declarations after a brace. */
const blocks = (css: string): string =>
  css
    .split('}')
    .slice(0, -1)
    .map((part) => `{${part.slice(part.lastIndexOf('{') + 1)}`)
    .join('');

const unread = (found: string): string =>
  `uses ${found}, which is not followed here; compare the rolled picture with your drawing, or write plain attributes`;

/** In any declaration, of a style sheet or of a style attribute. */
const declarations: readonly Unfollowed[] = [
  {
    rule: 'style-transform',
    level: 'stop',
    pattern: declared('transform(?:-origin|-box)?|rotate|translate|scale|offset(?:-path)?'),
    says: (found) =>
      `moves shapes by the style ${found}, which is not followed; write the transform as an attribute`,
  },
  {
    rule: 'style-shape',
    level: 'stop',
    pattern: declared('d|x|y|cx|cy|r|rx|ry'),
    says: (found) => `gives a shape by the style ${found}, which is not followed; write it as an attribute`,
  },
  {
    rule: 'clip-shape',
    level: 'stop',
    pattern: declared('clip-path', '\\s*(?!none|url|inherit|initial|unset)[a-z]'),
    says: () => 'clips by a shape written in a style, which is not followed; use a clip path element',
  },
  {
    rule: 'stroke-unread',
    level: 'stop',
    pattern: declared('vector-effect', '\\s*non-scaling-stroke'),
    says: () => fixedStroke,
  },
  {
    rule: 'stroke-unread',
    level: 'stop',
    // From 10¹⁰ on, by its digits or its exponent: far past all lengths.
    pattern: declared('stroke-(?:width|dasharray|dashoffset)', '[^:;{}]*?(?:\\d{11}|\\de\\+?\\d{2})'),
    says: (found) => `has a ${found} past all lengths; give the stroke the one you mean`,
  },
  {
    rule: 'stroke-unread',
    level: 'stop',
    pattern: declared('(?:fill|stroke)', '\\s*context-(?:fill|stroke)'),
    says: () => contextPaint,
  },
  {
    rule: 'style-unread',
    level: 'look',
    pattern: /(?<=[\s:,])(?:var|calc|min|max|clamp|color|color-mix|lab|lch|oklab|oklch|hwb)\(/i,
    says: (found) => unread(`${found})`),
  },
  {
    rule: 'style-unread',
    level: 'look',
    pattern: declared('width|height'),
    says: (found) => unread(`the style ${found}`),
  },
];

/** In the selectors and rules of a style sheet. */
const rules: readonly Unfollowed[] = [
  {
    rule: 'mask',
    level: 'stop',
    pattern: declared('mask-type', '\\s*alpha'),
    says: (found) =>
      `says ${found} in a style sheet, which is not followed; write it as an attribute of the mask`,
  },
  {
    rule: 'style-important',
    level: 'look',
    pattern: /!\s*important/i,
    says: () =>
      'uses !important, which may be read differently; compare the rolled picture with your drawing',
  },
  {
    rule: 'style-unread',
    level: 'look',
    pattern: /@(?!font-face|charset|namespace|(?:-\w+-)?keyframes)[\w-]+/,
    says: unread,
  },
  {
    rule: 'style-unread',
    level: 'look',
    pattern: /::?(?!first-child|hover|focus|active|visited|link)[a-z-]+(?:\([^(){]*\))?/i,
    within: selectors,
    says: unread,
  },
  {
    rule: 'style-unread',
    level: 'look',
    pattern: /[+~]|\[[\w-]+\s*[~|^$*]=|\w\|\w/,
    within: selectors,
    says: (found) => unread(`"${found}" in a selector`),
  },
  {
    rule: 'style-unread',
    level: 'look',
    pattern: /(?<=[;{\s])(?=[a-z-]*[A-Z])[a-zA-Z-]+\s*:/,
    within: blocks,
    says: (found) => unread(`${found} in capitals`),
  },
];

function findingsOf(css: string, where: Where, unfollowed: readonly Unfollowed[]): Finding[] {
  const text = css.replace(/\/\*[\s\S]*?(?:\*\/|$)/g, ' ');
  return unfollowed.flatMap(({ rule, level, pattern, within, says }) => {
    const found = pattern.exec(within ? within(text) : text)?.[0];
    if (found === undefined) return [];
    const finding = level === 'stop' ? stop : look;
    return [finding(rule, where, says(found.replace(/\s*:.*$/s, '').trim() || found))];
  });
}

/** What of a style attribute is not followed. */
export const styleAttributeFindings = (style: string, where: Where): Finding[] =>
  findingsOf(style, where, declarations);

/** What of the style sheets of a file, taken together, is not followed. */
export const styleSheetFindings = (css: string, file: string): Finding[] =>
  findingsOf(css, { file, element: 'style' }, [...declarations, ...rules]);
