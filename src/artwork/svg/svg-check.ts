// The look at an SVG file before the reader gets it: what the reader would cut short or drop in silence is found here.
import { elementName, readXml, type XmlElement, XmlFault, type XmlLimits } from '../../drawing/xml.ts';
import { type Finding, look, stop } from '../../finding.ts';
import { shown } from '../../lengths/shown.ts';
import { CopyCount } from './svg-copies.ts';
import { elementFindings, measuredDashes } from './svg-element-check.ts';
import { frameFault, type SvgFrame, svgFrame } from './svg-size.ts';
import { fixedStroke, styleSheetFindings } from './svg-style-check.ts';
import { StyleCost } from './svg-style-cost.ts';

export interface CheckedSvg {
  readonly frame: SvgFrame | undefined;
  readonly findings: readonly Finding[];
}

/** Most points that the paths of one file may have: far more than any blade follows. */
const mostPoints = 1_000_000;

/** Most points of all that is copied, each copy counted. */
const mostCopied = 2_000_000;

/** Most clip paths, masks, patterns and markers that one of them may need, those that these need counted as often. */
const mostNested = 1000;

/** What is read of one file: five times the elements of a large pattern. */
export const svgLimits: XmlLimits = { length: 50_000_000, depth: 256, elements: 100_000, attributes: 1000 };

const svgNamespace = 'http://www.w3.org/2000/svg';

/** What a file holds, as read from its first character to its last. */
interface LookedThrough {
  readonly root: XmlElement | undefined;
  /** All that its style elements say. */
  readonly css: string;
  readonly style: StyleCost;
  readonly copies: CopyCount;
  readonly findings: readonly Finding[];
}

/** @throws XmlFault where it can't be read on. */
function lookedThrough(text: string, file: string): LookedThrough {
  const findings: Finding[] = [];
  const copies = new CopyCount();
  const style = new StyleCost();
  let root: XmlElement | undefined;
  let [css, inStyle, points] = ['', false, 0];
  const open = (element: XmlElement, depth: number) => {
    if (depth === 1) root = element;
    const { line, column } = element;
    const own = pointsIn(element.attributes);
    style.open(element, depth);
    points += own;
    copies.open(element, own);
    if (points > mostPoints)
      throw new XmlFault(`has paths of more than ${mostPoints} points; simplify them`, line, column);
    inStyle = element.name === 'style';
    findings.push(...elementFindings(element, { file, line, column, element: elementName(element) }));
  };
  const close = () => {
    copies.close();
    inStyle = false;
  };
  const ofText = (part: string) => {
    if (inStyle) css += part;
  };
  readXml(text, { open, close, text: ofText }, svgLimits);
  return { root, css, style, copies, findings };
}

/** What would take the reader too long: each with what to do instead. */
function costFindings({ css, style, copies }: LookedThrough, file: string): Finding[] {
  const ofCopies = () =>
    copies.added(mostCopied, css) >= mostCopied
      ? `has copies of more than ${mostCopied} points when each is drawn; use fewer, or simpler shapes`
      : undefined;
  const ofNested = () =>
    copies.nested(mostNested) >= mostNested
      ? `has clip paths, masks or patterns that need more than ${mostNested} others, or are over 256 deep in one another; simplify them`
      : undefined;
  const faults: readonly (readonly [element: string | undefined, says: string | undefined])[] = [
    ['style', style.fault(css)],
    ['use', ofCopies()],
    [undefined, ofNested()],
  ];
  return faults.flatMap(([element, says]) =>
    says === undefined ? [] : [stop('unreadable', { file, ...(element ? { element } : {}) }, says)],
  );
}

/** Read the raw file once: its size, and everything that would be lost in silence later. */
export function checkSvg(text: string, file: string): CheckedSvg {
  const [start = ''] = /\S.{0,20}/s.exec(text.replace(/^\uFEFF/, '').slice(0, 10_000)) ?? [];
  if (!start.startsWith('<')) return { frame: undefined, findings: [noMarkup(start, file)] };
  try {
    const looked = lookedThrough(text, file);
    const { frame, findings: ofRoot } = checkRoot(looked.root, file);
    const ofDrawing = [
      ...looked.findings,
      ...costFindings(looked, file),
      ...styleSheetFindings(looked.css, file),
    ].filter((finding) => matters(finding, text));
    return { frame, findings: [...ofRoot, ...ofDrawing] };
  } catch (fault) {
    if (!(fault instanceof XmlFault)) throw fault;
    const where = { file, line: fault.line, column: fault.column };
    const says = `can't be read as SVG: ${fault.message}`;
    return { frame: undefined, findings: [stop('unreadable', where, says)] };
  }
}

/** How many points the path or line of an element is given by: a command of its own, or two numbers, for each. Counted fast, not to the last. */
function pointsIn({ d, points }: XmlElement['attributes']): number {
  const data = d ?? points ?? '';
  let [commands, numbers, isInNumber, hasDot] = [0, 0, false, false];
  for (let i = 0; i < data.length; i++) {
    const code = data.charCodeAt(i);
    const letter = code | 0x20;
    const isDot = code === codeOf.dot;
    if (isDot || (code >= codeOf.nought && code <= codeOf.nine)) {
      const begins = !isInNumber || (isDot && hasDot);
      if (begins) numbers++;
      hasDot = isDot || (hasDot && !begins);
      isInNumber = true;
    } else if (letter !== codeOf.e) {
      isInNumber = false;
      if (letter >= codeOf.a && letter <= codeOf.z) commands++;
    }
  }
  return Math.max(commands, numbers / 2);
}

const codeOf = { dot: 46, nought: 48, nine: 57, a: 97, e: 101, z: 122 };

/** Drawing programs write much about strokes where there are none. */
function matters({ says }: Finding, text: string): boolean {
  if (says === fixedStroke) return /\bstroke\s*[:=]\s*(?:["']\s*)?(?!none|["'\s])/.test(text);
  return says !== measuredDashes || /\bstroke-dasharray\b/.test(text);
}

/** A PDF, a picture or a text whose name was given another ending; or nothing at all. */
function noMarkup(start: string, file: string): Finding {
  const found = start === '' ? 'is empty' : `begins with ${shown(start)}`;
  return stop(
    'unreadable',
    { file, line: 1, column: 1 },
    `is not an SVG drawing: it ${found}; save the artwork as SVG`,
  );
}

function checkRoot(root: XmlElement | undefined, file: string): CheckedSvg {
  if (root?.name !== 'svg') {
    const says = `is not an SVG drawing (its root is <${root?.name ?? 'nothing'}>); save the artwork as SVG`;
    return { frame: undefined, findings: [stop('unreadable', { file }, says)] };
  }
  const { line, column, attributes } = root;
  const where = { file, line, column };
  if (!Object.values(attributes).includes(svgNamespace)) {
    const says = `its <svg> does not say what it is; add xmlns="${svgNamespace}" to it`;
    return { frame: undefined, findings: [stop('unreadable', where, says)] };
  }
  const fault = frameFault(attributes);
  if (fault) {
    const { key, says } = fault;
    const typed = `${key} ${shown(attributes[key])} ${says}`;
    return { frame: undefined, findings: [stop('no-size', where, typed)] };
  }
  const frame = svgFrame(attributes);
  if (!frame) {
    const says = 'has no size above zero; give it a width and height, such as width="60mm" height="40mm"';
    return { frame, findings: [stop('no-size', { file }, says)] };
  }
  if (frame.sized) return { frame, findings: [] };
  const size = `${frame.width.toFixed(2)} x ${frame.height.toFixed(2)} mm`;
  const says = `gives no real-world size; its view box was taken as px at 96 to the inch (${size}); give its width by --art-across 60mm, or "across" in the job's artwork`;
  return { frame, findings: [look('no-size', { file }, says)] };
}
