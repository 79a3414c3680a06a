// The page that a folder of files is opened by: everything in it, by what it is for.
import { type Block, type Section, writePage } from '../deliver/write-page.ts';
import { indexFile, type NamedFile, reportFile } from './deliverables.ts';
import type { NamesReport } from './list/names-report.ts';
import type { FileReport } from './report.ts';

interface Kind {
  readonly heading: string;
  readonly says: string;
  readonly roles: readonly string[];
}

/** Files in the order a maker needs them. */
const kinds: readonly Kind[] = [
  { heading: 'At the bench', says: 'what to have beside you', roles: ['job-sheet'] },
  { heading: 'To cut', says: 'what the blade follows', roles: ['cut', 'sheet'] },
  { heading: 'To print', says: 'at true size on paper', roles: ['print'] },
  { heading: 'To see and to draw', says: 'with every line and mark', roles: ['guide', 'sheet-guide'] },
  { heading: 'Pictures', says: '', roles: ['picture'] },
  { heading: 'For the record', says: '', roles: ['report', 'job', 'blank'] },
];

const recordWords: Readonly<Record<string, string>> = {
  report: 'every figure, in mm and degrees',
  job: 'the job as it was worked out',
  blank: 'the vessel as it was worked out',
};

function sectionOf({ heading, says, roles }: Kind, files: readonly FileReport[]): Section[] {
  const own = files.filter(({ role }) => roles.includes(role));
  if (own.length === 0) return [];
  const items = own.map(({ file, role }) => ({ file, says: recordWords[role] ?? says }));
  return [{ heading, blocks: [{ kind: 'links', items }] }];
}

/** One picture to know the job by: the finished vessel, or else the first guide. */
function pictureOf(files: readonly FileReport[]): Block[] {
  const shown = files.find(({ file }) => file === 'rolled.svg') ?? files.find(({ role }) => role === 'guide');
  return shown ? [{ kind: 'picture', file: shown.file, says: shown.file }] : [];
}

/** The page of a job's folder. `files`: all the others in it. */
export function indexOfJob(name: string, files: readonly FileReport[]): NamedFile {
  const all = [...files, { file: reportFile, role: 'report' }];
  const known = new Set(kinds.flatMap(({ roles }) => roles));
  const others = all.filter(({ role }) => !known.has(role)).map(({ role }) => role);
  const sections = [...kinds, { heading: 'Others', says: '', roles: [...new Set(others)] }];
  const content = writePage({
    title: name,
    lead: `${all.length} files. Click one to open it.`,
    sections: [
      { heading: 'What it will be', blocks: pictureOf(all) },
      ...sections.flatMap((kind) => sectionOf(kind, all)),
    ],
  });
  return { file: indexFile, role: 'index', content };
}

/** Sheets that vessels share, and how the pieces lie on them. */
const sheetsShared = (files: readonly FileReport[]): Section => ({
  heading: 'To cut: sheets with the pieces of several vessels',
  blocks: [
    ...files.flatMap(({ file, role }): Block[] =>
      role === 'picture' ? [{ kind: 'picture', file, says: 'How the pieces lie on their sheets' }] : [],
    ),
    {
      kind: 'links',
      items: files.map(({ file, role }) => ({
        file,
        says: role === 'sheet' ? 'what the blade follows' : '',
      })),
    },
  ],
});

/** The page of all vessels of a list. */
export function indexOfRows(title: string, { rows, refused, files }: NamesReport): NamedFile {
  const made = rows.map(({ folder, label, line, proved, checks }) => {
    const held = proved === undefined ? '' : proved ? '; proved' : '; its proof FAILED';
    const looks = checks.length === 0 ? '' : `; ${checks.length} to look at`;
    return { file: `${folder}/${indexFile}`, says: `${label} (line ${line}${held}${looks})` };
  });
  const left = refused.map(({ line, says }) => `line ${line}: ${says}`);
  const ofAll = files.filter(({ line, role }) => line === undefined && role !== 'index');
  const isSheet = ({ role }: FileReport) => ['sheet', 'sheet-guide', 'picture'].includes(role);
  const sheets = ofAll.filter(isSheet);
  const own = ofAll.filter((file) => !isSheet(file));
  const content = writePage({
    title,
    lead: `${rows.length} vessels made; ${refused.length === 0 ? 'no row' : refused.length} of the list left out.`,
    sections: [
      { heading: 'Vessels', blocks: [{ kind: 'links', items: made }] },
      ...(left.length > 0 ? [{ heading: 'Left out', blocks: [{ kind: 'list', items: left } as const] }] : []),
      ...(sheets.length > 0 ? [sheetsShared(sheets)] : []),
      {
        heading: 'For the record',
        blocks: [
          { kind: 'links', items: own.map(({ file }) => ({ file, says: 'all vessels, in figures' })) },
        ],
      },
    ],
  });
  return { file: indexFile, role: 'index', content };
}
