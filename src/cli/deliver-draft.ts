// Writing a draft's files: staged, read back, measured, then moved into place.
import { type Draft, reportDraft, type Written } from '../job/make.ts';
import { exitStatus, type FileReport, type Report } from '../job/report.ts';
import { Delivery, type FileContent } from './files.ts';
import type { CommonOptions } from './options.ts';
import { printFindings, printJson } from './output.ts';

export interface NamedFile extends FileReport {
  readonly content: FileContent;
}

export interface DeliveryOptions extends CommonOptions {
  readonly folder: string;
  /** Stem of the cut file and the guide. */
  readonly stem: string;
  /** Further files, made from the written cut file. */
  readonly more: (written: Written) => Promise<readonly NamedFile[]>;
}

export async function deliverDraft(draft: Draft, options: DeliveryOptions): Promise<number> {
  const { folder, stem } = options;
  const delivery = new Delivery(folder);
  const [cutName, guideName] = [`${stem}.cut.svg`, `${stem}.guide.svg`];
  try {
    await delivery.stage(cutName, draft.cut);
    await delivery.stage(guideName, draft.guide);
    const written = { cut: await delivery.readBack(cutName), guide: await delivery.readBack(guideName) };
    const more = await options.more(written);
    for (const { file, content } of more) await delivery.stage(file, content);
    const files: FileReport[] = [
      { file: cutName, role: 'cut' },
      { file: guideName, role: 'guide' },
      ...more.map(({ file, role }) => ({ file, role })),
      { file: 'report.json', role: 'report' },
    ];
    const report: Report = { ...reportDraft(draft, written), files };
    await delivery.stage('report.json', `${JSON.stringify(report, undefined, 2)}\n`);
    await delivery.finish();
    printReport(report, options);
    return exitStatus(report.checks);
  } finally {
    await delivery.discard();
  }
}

function printReport(report: Report, { json, folder }: DeliveryOptions): void {
  if (json) printJson(report);
  else process.stdout.write(`${summary(report, folder).join('\n')}\n`);
  printFindings(report.checks);
}

function summary({ template, pattern, files }: Report, folder: string): string[] {
  const lines: string[] = [];
  if (template)
    lines.push(
      `template: ${template.width.toFixed(1)} x ${template.height.toFixed(1)} mm ${template.shape}${template.shape === 'sector' ? `, ${template.sweepDeg.toFixed(2)} degrees` : ''}`,
    );
  if (pattern)
    lines.push(
      `pattern: ${pattern.around} around, ${(pattern.scaleAcross * 100).toFixed(1)} % of drawn size across, ${(pattern.scaleUp * 100).toFixed(1)} % up`,
    );
  if (pattern?.seamGap)
    lines.push(
      `seam, measured on the written file: ${pattern.seamGap.position.toFixed(4)} mm and ${pattern.seamGap.tangentDeg.toFixed(3)} degrees over ${pattern.seamGap.crossings} crossings`,
    );
  lines.push(`written to ${folder}: ${(files ?? []).map(({ file }) => file).join(', ')}`);
  return lines;
}
