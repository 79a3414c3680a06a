// The look at an SVG file before the reader gets it: what the reader would cut short or drop in silence is found here.
import { pathDataFault } from '../drawing/path-data.ts';
import { readXml, type XmlElement, XmlFault } from '../drawing/xml.ts';
import { type Finding, look, stop, type Where } from '../finding.ts';
import { type SvgFrame, svgFrame } from './svg-size.ts';

export interface CheckedSvg {
  readonly frame: SvgFrame | undefined;
  readonly findings: readonly Finding[];
}

const names = (element: XmlElement): string =>
  element.attributes.id ? `${element.name}#${element.attributes.id}` : element.name;

const transformList =
  /^\s*(?:(?:matrix|translate|scale|rotate|skewX|skewY)\s*\(\s*[-+.\deE\s,]*\)\s*,?\s*)*$/;

/** Faults of one element that a reader would pass over without a word. */
function elementFindings(element: XmlElement, where: Where): Finding[] {
  const { attributes, name } = element;
  const found: Finding[] = [];
  if (name === 'path' && attributes.d !== undefined) {
    const fault = pathDataFault(attributes.d);
    if (fault)
      found.push(
        stop('broken-path', where, `path data can't be read: ${fault}; draw this path again or repair it`),
      );
  }
  if ((name === 'polygon' || name === 'polyline') && !wholePairs(attributes.points ?? ''))
    found.push(
      stop('broken-path', where, 'points are not whole pairs of numbers; draw this shape again or repair it'),
    );
  if (attributes.transform !== undefined && !transformList.test(attributes.transform))
    found.push(
      stop('broken-transform', where, `transform "${short(attributes.transform)}" can't be read; repair it`),
    );
  if (/(^|[;\s])transform\s*:/.test(attributes.style ?? ''))
    found.push(
      stop(
        'style-transform',
        where,
        'is moved by a style sheet, which is not followed; write the transform as an attribute',
      ),
    );
  if (name === 'text')
    found.push(
      stop(
        'text',
        where,
        'is text, which has no outline to cut; turn text into outlines in your drawing program',
      ),
    );
  if (name === 'image')
    found.push(
      stop('raster', where, 'is a picture made of pixels; trace it to areas in your drawing program'),
    );
  if (name === 'foreignObject')
    found.push(stop('foreign', where, 'holds something that is not SVG; draw it as areas'));
  return found;
}

const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

function wholePairs(points: string): boolean {
  const parts = points
    .trim()
    .split(/[\s,]+|(?<=[\d.])(?=-)/)
    .filter((part) => part !== '');
  return parts.length % 2 === 0 && parts.every((part) => Number.isFinite(Number(part)));
}

const styleFindings = (css: string, file: string): Finding[] => [
  ...(/(^|[;{\s])transform\s*:/.test(css)
    ? [
        stop(
          'style-transform',
          { file },
          'a style sheet moves shapes, which is not followed; write transforms as attributes',
        ),
      ]
    : []),
  ...(css.includes('!important')
    ? [
        look(
          'style-important',
          { file },
          'a style sheet uses !important, which may be read differently; compare the rolled picture with your drawing',
        ),
      ]
    : []),
];

/** Read the raw file once: its size, and everything that would be lost in silence later. */
export function checkSvg(text: string, file: string): CheckedSvg {
  const findings: Finding[] = [];
  let frame: SvgFrame | undefined;
  let root: string | undefined;
  let css = '';
  let inStyle = false;
  try {
    readXml(text, {
      open: (element, depth) => {
        if (depth === 1) {
          root = element.name;
          frame = svgFrame(element.attributes);
        }
        inStyle = element.name === 'style';
        const { line, column } = element;
        findings.push(...elementFindings(element, { file, line, column, element: names(element) }));
      },
      close: () => {
        inStyle = false;
      },
      text: (part) => {
        if (inStyle) css += part;
      },
    });
  } catch (fault) {
    if (!(fault instanceof XmlFault)) throw fault;
    const where = { file, line: fault.line, column: fault.column };
    return {
      frame: undefined,
      findings: [stop('unreadable', where, `can't be read as SVG: ${fault.message}`)],
    };
  }
  if (root !== 'svg')
    findings.push(
      stop(
        'unreadable',
        { file },
        `is not an SVG drawing (its root is <${root ?? 'nothing'}>); save the artwork as SVG`,
      ),
    );
  else if (!frame)
    findings.push(
      stop(
        'no-size',
        { file },
        'has no size above zero; give it a width and height, such as width="60mm" height="40mm"',
      ),
    );
  else if (!frame.sized)
    findings.push(
      look(
        'no-size',
        { file },
        `gives no real-world size; its view box was taken as px at 96 to the inch (${frame.width.toFixed(2)} x ${frame.height.toFixed(2)} mm); give it a width such as width="60mm"`,
      ),
    );
  return { frame, findings: [...findings, ...styleFindings(css, file)] };
}
