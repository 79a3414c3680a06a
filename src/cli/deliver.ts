// Writing a run's files: staged, read back, measured, then moved into place.
import { archiveFile, zipped } from '../job/archive.ts';
import {
  type Deliverables,
  filesOfPiece,
  fullReport,
  jsonContent,
  type LayerCut,
  type NamedFile,
  reportFile,
  type WrittenPiece,
} from '../job/deliverables.ts';
import { failedRules } from '../job/proof/proof-in-words.ts';
import type { GoresReport, PatternReport, Report, TemplateReport } from '../job/report.ts';
import { gapAngle, gapLength } from '../lengths/closeness.ts';
import type { Units } from '../lengths/length.ts';
import { type Delivery, delivered } from './delivery.ts';
import type { CommonOptions } from './options.ts';
import { exitStatus, printFindings, printJson } from './output.ts';
import { told, unitsTold } from './units-told.ts';

export interface DeliveryOptions extends CommonOptions {
  readonly folder: string;
  /** Whether all files are also given as one archive. */
  readonly zip?: boolean;
}

/** Write the pieces, read them back, and write all that is made from them. */
export async function deliver(deliverables: Deliverables, options: DeliveryOptions): Promise<number> {
  const { report } = await delivered(options.folder, (delivery) =>
    stageAll(delivery, deliverables, options.zip === true),
  );
  printReport(report, options);
  return exitStatus(report.checks);
}

/** A run's report, and all its files with their content, the report's own too. */
export interface Staged {
  readonly report: Report;
  readonly files: readonly NamedFile[];
}

/** Stage the pieces, read them back, and stage all that is made from them; with `zip` an archive of all that too. */
export async function stageAll(
  delivery: Delivery,
  { pieces, rest }: Deliverables,
  zip = false,
): Promise<Staged> {
  const written: WrittenPiece[] = [];
  for (const piece of pieces) written.push(await writePiece(delivery, piece));
  const more = await rest(written);
  const archive = zip ? [{ file: archiveFile, role: 'archive' }] : [];
  const report = fullReport(written, more, archive);
  const own = { file: reportFile, role: 'report', content: jsonContent(report) };
  for (const { file, content } of [...more.files, own]) await delivery.stage(file, content);
  const files = [...written.flatMap(filesOfPiece), ...more.files, own];
  if (zip) await delivery.stage(archiveFile, archiveOf(files));
  return { report, files };
}

const archiveOf = (files: readonly NamedFile[]): Uint8Array =>
  zipped(
    Object.fromEntries(
      files.map(({ file, content }) => [
        file,
        typeof content === 'string' ? new TextEncoder().encode(content) : content,
      ]),
    ),
  );

/** Stage a piece's files, and read them back as they now stand. */
async function writePiece(delivery: Delivery, piece: WrittenPiece): Promise<WrittenPiece> {
  for (const { file, content } of filesOfPiece(piece)) await delivery.stage(file, content);
  const { stem, layers } = piece;
  const guide = await delivery.readBack(`${stem}.guide.svg`);
  if (!layers) return { stem, cut: await delivery.readBack(`${stem}.cut.svg`), guide };
  const readBack: LayerCut[] = [];
  for (const layer of layers)
    readBack.push({ ...layer, cut: await delivery.readBack(`${layer.stem}.cut.svg`) });
  return { stem, cut: piece.cut, guide, layers: readBack };
}

function printReport(report: Report, { json, folder }: DeliveryOptions): void {
  if (json) printJson(report);
  else process.stdout.write(`${summary(report, folder).map(told).join('\n')}\n`);
  printFindings(report.checks);
}

function summary({ template, pattern, proof, sheets, files }: Report, folder: string): string[] {
  const lines: string[] = [];
  if (template?.gores) lines.push(goresInWords(template.gores));
  else if (template && template.parts.length > 0) lines.push(partsInWords(template));
  else if (template)
    lines.push(
      `template: ${sizeInWords(template, unitsTold())} ${template.shape}${template.shape === 'sector' ? `, ${template.sweepDeg.toFixed(2)} degrees` : ''}`,
    );
  if (pattern)
    lines.push(
      `pattern: ${pattern.around} around, ${(pattern.scaleAcross * 100).toFixed(1)} % ${pattern.spacing ? 'of drawn spacing' : 'of drawn size'} across, ${(pattern.scaleUp * 100).toFixed(1)} % up`,
    );
  if (pattern?.seamGap) lines.push(seamInWords(pattern.seamGap));
  if (sheets) lines.push(sheetsInWords(sheets));
  if (proof) lines.push(proofInWords(proof));
  lines.push(`written to ${folder}: ${(files ?? []).map(({ file }) => file).join(', ')}`);
  return lines;
}

/** From the sizes themselves: in inches a size of whole tenths of a mm could be out by two thousandths. */
const sizeInWords = ({ width, height }: Pick<TemplateReport, 'width' | 'height'>, units: Units): string =>
  units === 'mm'
    ? `${width.toFixed(1)} x ${height.toFixed(1)} mm`
    : `${(width / 25.4).toFixed(3)} x ${(height / 25.4).toFixed(3)} in`;

function partsInWords({ shape, parts }: TemplateReport): string {
  const panels = shape === 'stepped' ? (parts[0]?.parts.length ?? 0) : parts.length;
  const stacked = `${parts.length} stacked pieces, numbered from the foot up`;
  const sideBySide = `${panels} panels, lettered in the order of their turns`;
  if (shape !== 'stepped') return `template: ${sideBySide}`;
  return panels > 0 ? `template: ${stacked}, each in ${sideBySide}` : `template: ${stacked}`;
}

function sheetsInWords(sheets: NonNullable<Report['sheets']>): string {
  const count = sheets.reduce((sum, { times }) => sum + times, 0);
  const cut = sheets.reduce((sum, { times, cutInto }) => sum + times * cutInto, 0);
  const covered = sheets.reduce((sum, sheet) => sum + sheet.times * sheet.covered, 0);
  return `sheets: ${count}, and the pieces cover ${((100 * covered) / cut).toFixed(0)} % of what is cut into`;
}

const seamInWords = ({ position, tangentDeg, crossings }: NonNullable<PatternReport['seamGap']>): string =>
  crossings === 0
    ? 'seam: no line of the pattern crosses it, so there is nothing there to measure'
    : `seam: the ends of the written file meet ${gapLength(position, unitsTold())} and ${gapAngle(tangentDeg)}, over ${crossings} crossings`;

const goresInWords = ({ count, width, strain, joined, darts }: GoresReport): string =>
  darts
    ? `template: one piece with ${count} darts from the ${darts.edge}, each ${darts.length.toFixed(1)} mm long and ${darts.width.toFixed(1)} mm wide at the edge; film is strained by ${(strain * 100).toFixed(2)} %`
    : `template: ${count} gores, each ${width.toFixed(1)} mm at its widest, ${joined === 'loose' ? 'loose' : `joined at the ${joined}`}; they ask ${(strain * 100).toFixed(2)} % of stretch`;

const proofInWords = (proof: NonNullable<Report['proof']>): string =>
  proof.pass
    ? `proof: the written files, rolled back onto the blank, hold in all ${proof.checks.length} checks`
    : `proof: the written files FAIL at ${failedRules(proof).join(', ')}; "seamwright prove" shows the figures`;
