// The job sheet: what a maker has beside them at the bench, from measuring to the last coat.

import type { Blank } from '../../blank/blank.ts';
import { asLaid } from '../../blank/coats.ts';
import type { Band } from '../../blank/flat-band.ts';
import { coverage } from '../../blank/sure.ts';
import { wallGirthAt, wallUncertaintyAt } from '../../blank/wall.ts';
import type { Block, Page, Section } from '../../deliver/write-page.ts';
import { gapAngle, gapLength } from '../../lengths/closeness.ts';
import { formatLength, measuredLength, onInchTape, type Units } from '../../lengths/length.ts';
import { filmsIn } from '../blade/weeding.ts';
import { layingSection } from '../motifs/motif-sheet.ts';
import type { Ground } from '../plan/plan.ts';
import type { FileReport, Report } from '../report.ts';
import type { SheetPiece } from '../sheets/film-piece.ts';
import type { Job } from '../typed/resolved-job.ts';
import { cautionsSection } from './job-sheet-cautions.ts';
import { jobFacts } from './job-sheet-facts.ts';
import { costSection, filmSection } from './job-sheet-film.ts';
import { saidByRule } from './said-by-rule.ts';
import { hours, timelineOf, workSequence } from './work-sequence.ts';

export interface JobSheetInput {
  /** Whole, with all that was worked out. */
  readonly job: Job;
  readonly blank: Blank;
  readonly ground: Pick<Ground, 'wall' | 'coats' | 'measures'>;
  /** The finished band of all pieces together, mm along. */
  readonly band: Band;
  readonly pieces: readonly SheetPiece[];
  /** How many pieces or gores the wrap is cut in, their cut files, and how many joints there are between stacked ones. */
  readonly wraps: { readonly count: number; readonly files: readonly string[]; readonly joints: number };
  /** How many cover strips lie on borders of the pattern. */
  readonly borderStrips: number;
  /** How panels are joined; nothing where there are none. */
  readonly joining: readonly Block[];
  /** Whether the wrap is laid on the vessel, and how many motifs are cut and laid by themselves. */
  readonly isWrapLaid: boolean;
  readonly apart: number;
  /** Whether its pieces lie on sheets with those of other vessels. */
  readonly isShared?: boolean;
  readonly report: Omit<Report, 'files'>;
  /** The other files of the folder. */
  readonly files: readonly FileReport[];
}

/** What stands on the job sheet. */
export function jobSheet(input: JobSheetInput): Page {
  const { job } = input;
  const batch = job.batch ?? 1;
  return {
    title: `Job sheet: ${job.name}`,
    lead: `${input.blank.name}; ${batch === 1 ? 'one vessel' : `${batch} vessels alike`}. Lengths are in ${job.units === 'in' ? 'inches' : 'mm'} along the wall, from the foot corner up, unless said otherwise.`,
    facts: jobFacts(input),
    sections: [
      picturesSection(input.files),
      measuresSection(input),
      piecesSection(input),
      ...layingSection([...(input.report.items ?? []), ...(input.report.lettering ?? [])], input.blank),
      ...filmSection(input),
      ...cutterSection(input.report),
      ...weedingSection(input.report, input.files),
      ...coatsSection(input.report, job),
      ...costSection(input.report, job),
      workSection(input),
      checksSection(input.report, job.units),
      cautionsSection(input),
    ],
  };
}

/** Pictures shown beside the guides, and what they show. */
const pictureWords: readonly (readonly [RegExp, string])[] = [
  [/^profile\.svg$/, 'The profile of its wall, with flat bands and readings'],
  [/^layers\.svg$/, 'The films in the order they are laid'],
  [/^reveal-before\.svg$/, 'Sprayed, before the mask is pulled'],
  [/^reveal-after\.svg$/, 'The mask pulled, and the decal laid'],
  [/^checks.*\.svg$/, 'Where the checks found something'],
  [/^knife\.svg$/, 'Where the axis of the knife goes, and what its tip cuts'],
];

function picturesSection(files: readonly FileReport[]): Section {
  const rolled = files.filter(({ file }) => file === 'rolled.svg');
  // Collars are paper strips: a picture of one tells nothing that its row does not.
  const guides = files.filter(({ file, role }) => role === 'guide' && !file.startsWith('collar'));
  const others = pictureWords.flatMap(([name, says]) =>
    files.flatMap(({ file }) => (name.test(file) ? [{ file, says }] : [])),
  );
  const items = [
    ...guides.map(({ file }) => ({ file, says: `The guide: ${file}, not at true size here` })),
    ...others,
  ];
  return {
    heading: 'What it will be',
    blocks: [
      ...rolled.map(
        ({ file }): Block => ({
          kind: 'picture',
          file,
          says: 'The vessel as it will be, seen from four sides',
        }),
      ),
      ...(items.length > 0 ? [{ kind: 'pictures', items } as const] : []),
    ],
  };
}

function measuresSection({ job, ground: { wall, measures }, band, blank }: JobSheetInput): Section {
  const shown = (mm: number) => measuredLength(mm, job.units);
  const onTape = (mm: number) => `${shown(mm)}${job.units === 'in' ? `, ${onInchTape(mm)} on the tape` : ''}`;
  const places = [
    { says: 'foot edge of the band', along: band.from },
    { says: 'middle of the band', along: (band.from + band.to) / 2 },
    { says: 'lip edge of the band', along: band.to },
  ];
  const rows = places.map(({ says, along }) => [
    says,
    shown(along),
    onTape(wallGirthAt(wall, along)),
    `± ${onTape(coverage * Math.hypot(wallUncertaintyAt(wall, along), measures.reading.u))}`,
    '',
  ]);
  const handle = blank.handle ? [`the handle takes ${shown(blank.handle.spans)} of the girth`] : [];
  return {
    heading: 'Measure before you start',
    blocks: [
      { kind: 'table', head: ['where', 'along', 'girth of the bare blank', 'may differ by', 'yours'], rows },
      {
        kind: 'ticks',
        items: [
          'every blank of the batch, not only the first: they differ',
          ...handle,
          'outside this allowance: correct the blank file and make the job again, do not stretch the film',
        ],
      },
    ],
  };
}

function piecesSection({ pieces, joining, job }: JobSheetInput): Section {
  const rows = pieces.map(({ says, file, where, size, film }) => [
    says,
    file,
    where,
    size,
    String((job.batch ?? 1) * film.reduce((sum, { count }) => sum + count, 0)),
  ]);
  return {
    heading: 'Pieces',
    blocks: [
      { kind: 'table', head: ['piece', 'file', 'where', 'size', 'how many'], rows },
      ...joining,
      {
        kind: 'words',
        text: 'Measure the squares on the guide before anything is cut: 25 mm and 1 in. A cutter or printer that is off by half a percent is off by more than a millimetre at the seam.',
      },
    ],
  };
}

/** What the files are to the cutter, and what has to be set on it. */
const cutterSection = ({ cutter }: Omit<Report, 'files'>): Section[] =>
  cutter
    ? [{ heading: 'The cutter', blocks: [{ kind: 'list', items: cutter.does.map(({ says }) => says) }] }]
    : [];

/** What stays and what is weeded, how long it takes, and where it is hard. */
function weedingSection({ weeding }: Omit<Report, 'files'>, files: readonly FileReport[]): Section[] {
  if (!weeding) return [];
  const items = files.flatMap(({ file }) =>
    /^weeding.*\.svg$/.test(file) ? [{ file, says: 'Where it is hard to weed' }] : [],
  );
  const maps: Block[] = items.length > 0 ? [{ kind: 'pictures', items }] : [];
  return [
    {
      heading: 'Cutting and weeding, for one vessel',
      blocks: [{ kind: 'list', items: weeding.says }, ...maps],
    },
  ];
}

function coatsSection({ coats = [] }: Omit<Report, 'files'>, job: Job): Section[] {
  if (coats.length === 0) return [];
  const batch = job.batch ?? 1;
  const given = asLaid(job.coats);
  const rows = coats.map(({ name, over, thickness, volume, girthAfter }, i) => {
    const least = given[i]?.leastBatch ?? 0;
    const mixed = Math.max(volume * batch, least);
    const why = mixed > volume * batch ? ' (the least that can be mixed)' : '';
    return [
      `${name}${over ? ', over the film' : ''}`,
      job.units === 'mm' ? `${thickness.toFixed(2)} mm` : formatLength(thickness, 'in'),
      `${volume.toFixed(1)} ml`,
      `${mixed.toFixed(1)} ml${why}`,
      measuredLength(girthAfter, job.units),
    ];
  });
  const head = [
    'coat',
    'thickness',
    'for one vessel',
    'to mix for all',
    'girth after it, middle of the band',
  ];
  return [{ heading: 'Coats', blocks: [{ kind: 'table', head, rows }] }];
}

function workSection({
  job,
  ground,
  band,
  blank,
  wraps,
  borderStrips,
  isWrapLaid,
  apart,
  report,
}: JobSheetInput): Section {
  const steps = workSequence({
    job,
    coats: ground.coats.coats,
    band,
    isWrapLaid,
    apart,
    isWeeded: report.weeding !== undefined,
    films: filmsIn(report.weeding?.films.filter(({ file = '' }) => wraps.files.includes(file)) ?? []),
    covers: borderStrips,
    hasHandle: blank.handle !== undefined,
    pieces: wraps.count,
    joints: wraps.joints,
    isGores: job.pieces === 'gores',
  });
  const spans = timelineOf(steps);
  const rows = steps.map(({ does, check, wait, dries }, i) => [
    String(i + 1),
    does,
    wait !== undefined ? hours(wait) : dries ? 'as its own sheet says' : '',
    check,
  ]);
  return {
    heading: 'The work, in order',
    blocks: [
      { kind: 'table', head: ['', 'do', 'then wait', 'look, before you go on'], rows, ticks: true },
      ...(spans ? [{ kind: 'timeline', spans } as const] : []),
      {
        kind: 'words',
        text: "Waiting times are those of the job file. Cold or damp rooms take longer: the product's own data sheet goes before this one.",
      },
    ],
  };
}

function checksSection({ checks, pattern }: Omit<Report, 'files'>, units: Units): Section {
  const says = saidByRule(checks.filter(({ level }) => level !== 'stop'));
  const gap = pattern?.seamGap;
  const measured = gap
    ? [
        gap.crossings === 0
          ? 'no line of the pattern crosses the seam'
          : `the ends of the written file meet ${gapLength(gap.position, units)} and ${gapAngle(gap.tangentDeg)}`,
      ]
    : [];
  const items = [...measured, ...says];
  return {
    heading: 'What the checks say',
    blocks: [{ kind: 'list', items: items.length > 0 ? items : ['nothing to look at'] }],
  };
}
