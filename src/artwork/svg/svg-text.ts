// Text in a drawing: set in fonts that were given, or refused by the name of the one that was not.
import { elementName, readXml, type XmlElement } from '../../drawing/xml.ts';
import { type Finding, look, stop } from '../../finding.ts';
import { shown } from '../../lengths/shown.ts';
import { fontFamilies } from '../text/font-names.ts';
import { svgLimits } from './svg-check.ts';
import type { Normalise } from './svg-normalise.ts';

/** Most letters that the texts of one drawing may have. */
const mostLetters = 5000;

/** A text of a drawing, and what names its font. */
interface DrawnText {
  readonly element: XmlElement;
  /** Whether a font was named on it or around it, style sheets left aside. */
  readonly isNamed: boolean;
}

interface Texts {
  readonly texts: readonly DrawnText[];
  /** Fonts wanted, wherever in the drawing: the first of each list. */
  readonly families: readonly string[];
  /** Whether a style sheet names fonts: then one may reach a text that names none itself. */
  readonly inSheet: boolean;
  readonly letters: string;
}

/**
 * What is to be told of a drawing's texts. Each font that it names first must be among those given, for a reader would quietly take
 * another, and must have all the letters: then the text is cut as it is set in it, and the maker told to compare.
 */
export function textFindings(
  svg: string,
  file: string,
  fonts: readonly Uint8Array[],
  normalise: Normalise,
): Finding[] {
  const { texts, families, inSheet, letters } = textsIn(svg);
  const told = texts.flatMap(({ element, isNamed }): Finding[] => {
    const { line, column } = element;
    const says = `is text that names no font, so nobody can tell how it looks; ${outlineIt}`;
    return isNamed || inSheet
      ? []
      : [stop('text', { file, line, column, element: elementName(element) }, says)];
  });
  const [first] = texts;
  if (!first || letters.trim() === '') return told;
  const where = {
    file,
    line: first.element.line,
    column: first.element.column,
    element: elementName(first.element),
  };
  if (letters.length > mostLetters)
    return [stop('text', where, `is one of texts of ${letters.length} letters; ${outlineIt}`)];
  for (const family of families) {
    const font = fonts.find((one) => fontFamilies(one).includes(family));
    if (!font) {
      const says = `is text in ${shown(family)}, a font that was not given; give its file in "fonts" of the job's artwork (repeat and inspect take it as --font), or ${outlineIt}`;
      told.push(stop('text', where, says));
      continue;
    }
    const missing = missingLetters(letters, family, font, normalise);
    if (missing.length > 0)
      told.push(
        stop(
          'text',
          where,
          `is text in ${shown(family)}, which has no letter for ${missing.map(shown).join(', ')}; ${outlineIt}`,
        ),
      );
  }
  if (told.length > 0) return told;
  const names = families.map((family) => shown(family)).join(', ');
  return [
    look(
      'text-set',
      where,
      `is text, set in ${names} as given, whatever weight was asked for; compare it with your drawing`,
    ),
  ];
}

const outlineIt = 'turn text into outlines in your drawing program';

function textsIn(svg: string): Texts {
  const texts: DrawnText[] = [];
  const families: string[] = [];
  const open: { readonly name: string; readonly isNamed: boolean }[] = [];
  let [letters, css] = ['', ''];
  readXml(
    svg,
    {
      open: (element) => {
        const { name, attributes } = element;
        const own = [
          ...(attributes['font-family'] === undefined ? [] : [attributes['font-family']]),
          ...familiesIn(attributes.style ?? ''),
          ...familiesIn(attributes.font === undefined ? '' : `font:${attributes.font}`),
        ];
        families.push(...own);
        const isNamed = own.length > 0 || open.at(-1)?.isNamed === true;
        open.push({ name, isNamed });
        if (name === 'text') texts.push({ element, isNamed });
      },
      close: () => void open.pop(),
      text: (part) => {
        if (open.at(-1)?.name === 'style') css += part;
        else if (open.some(({ name }) => name === 'text')) letters += part;
      },
    },
    svgLimits,
  );
  const sheet = familiesIn(css);
  const wanted = [...families, ...sheet].map(firstOf).filter((family) => !/^(?:inherit|)$/i.test(family));
  return { texts, families: [...new Set(wanted)], inSheet: sheet.length > 0, letters };
}

/** The lists of fonts that style declarations name. */
function familiesIn(css: string): string[] {
  return [...css.matchAll(/(?<![\w-])(font|font-family)\s*:\s*([^;{}]+)/gi)].flatMap(
    ([, key = '', value = '']) => {
      if (key.toLowerCase() === 'font-family') return [value];
      // Source: CSS Fonts, 'font': the families stand after the size.
      const list = /(?:^|\s)[\d.]+(?:[a-z]+|%)?(?:\s*\/\s*\S+)?\s+(.+)$/is.exec(value)?.[1];
      return list === undefined ? [] : [list];
    },
  );
}

const firstOf = (list: string): string =>
  (
    /^\s*(?:"([^"]*)"|'([^']*)'|([^,]*))/
      .exec(list.replaceAll('&quot;', '"'))
      ?.slice(1)
      .find((one) => one !== undefined) ?? ''
  )
    .trim()
    .replace(/!important$/, '')
    .trim();

/** A place of Unicode's private use that no font for reading fills: what is drawn for it stands for a missing letter. */
const noLetter = '\u{10FFFD}';

function missingLetters(letters: string, family: string, font: Uint8Array, normalise: Normalise): string[] {
  const used = [...new Set(letters)].filter((letter) => !/[\s\p{Cf}\p{Mn}]/u.test(letter));
  const [missing = '', ...drawn] = outlines([noLetter, ...used], family, font, normalise);
  return used.filter((_, i) => drawn[i] === '' || drawn[i] === missing).slice(0, 8);
}

/** The outline of each letter in a font, by the name of its family; nothing where it has none. */
function outlines(
  letters: readonly string[],
  family: string,
  font: Uint8Array,
  normalise: Normalise,
): readonly string[] {
  const texts = letters.map((letter, i) => `<text id="l${i}" y="100">${escaped(letter)}</text>`).join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="100" height="100"><g font-size="50" font-family="'${escaped(family.replaceAll("'", ''))}'">${texts}</g></svg>`;
  const plain = normalise(svg, [font]);
  return letters.map(
    (_, i) => new RegExp(`<g id="l${i}"[^>]*>(?:(?!</g>).)*? d="([^"]*)"`, 's').exec(plain)?.[1] ?? '',
  );
}

const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** Whether an element, as findings name it, is plain text. */
export const isTextElement = (element: string | undefined): boolean => /^text\b/.test(element ?? '');
