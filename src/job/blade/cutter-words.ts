// What the profile of a cutter does to the files of a job, and what is left to the machine, in words.
import { inBothUnits, inMm } from '../../lengths/length.ts';
import type { Cutter } from '../typed/material.ts';
import { type Correction, correctionInWords, correctionOf } from '../typed/measured.ts';
import { knifeOf } from './knife.ts';

/** What one part of a profile does. */
export interface CutterSays {
  /** The key of the profile, or what is done for every cutter. */
  readonly key: string;
  readonly says: string;
}

export interface CutterReport {
  /** Whether the files hold the way of the knife's axis, and not the lines themselves. */
  readonly compensated: boolean;
  /** What every length of the cut files is multiplied by, so that it comes out true; left out where it is not. */
  readonly corrected?: Correction;
  readonly does: readonly CutterSays[];
}

function bedWords({ bed, margin }: Cutter): CutterSays[] {
  const size =
    bed &&
    (bed.up === undefined ? `a roll ${inMm(bed.across)} wide` : `${inMm(bed.across)} by ${inMm(bed.up)}`);
  return [
    ...(size === undefined
      ? []
      : [
          {
            key: 'bed',
            says: `it takes ${size}: pieces are laid on sheets, and parted in panels, to fit that`,
          },
        ]),
    ...(margin > 0
      ? [
          {
            key: 'margin',
            says: `${inMm(margin)} along every edge is out of its reach: nothing is laid there`,
          },
        ]
      : []),
  ];
}

function knifeWords(cutter: Cutter): CutterSays[] {
  const { knifeOffset, runOn, corner, pastCorner } = cutter;
  const offset = inBothUnits(knifeOffset);
  if (knifeOf(cutter))
    return [
      {
        key: 'compensate',
        says: `the cut files hold the way of the knife's axis, ${offset} ahead of its tip; set the cutter's own knife offset and run-on to 0, and draw the blade to the right through a scrap before each start, so that it points that way`,
      },
      ...(runOn > 0
        ? [{ key: 'runOn', says: `closed lines are cut on over their beginning by ${inMm(runOn)}` }]
        : []),
      {
        key: 'corner',
        says:
          corner === 'swivel'
            ? 'at corners the axis swings round the tip, which stands still; the blade stays down'
            : `at corners the blade lifts and comes down again along the next side${pastCorner > 0 ? `; each side is cut ${inMm(pastCorner)} past the corner` : ''}`,
      },
    ];
  if (knifeOffset === 0) return [];
  const sets = [
    `its knife offset to ${offset}`,
    ...(runOn > 0 ? [`its run-on of closed lines to ${inBothUnits(runOn)}`] : []),
    ...(corner === 'lift'
      ? [`it to lift at corners${pastCorner > 0 ? `, ${inBothUnits(pastCorner)} past them` : ''}`]
      : []),
  ];
  return [
    {
      key: 'knifeOffset',
      says: `the cut files hold the lines themselves, and the cutter works out the way of its knife: set ${sets.join(', and ')}`,
    },
  ];
}

function measuredWords({ measured }: Cutter): CutterSays[] {
  const correction = correctionOf(measured);
  return correction
    ? [
        {
          key: 'measured',
          says: `the cut files are corrected by what its test piece measured, ${correctionInWords(correction)}: they are true on this cutter alone, and off by as much on any other; their guides are true`,
        },
      ]
    : [];
}

const marksWords = ({ marks }: Cutter): CutterSays[] =>
  marks === 'none'
    ? []
    : [
        {
          key: 'marks',
          says: `it finds its place by printed ${marks === 'crosses' ? 'crosses' : 'corner marks'}: print the guide at true size on the film, and let it look for the four marks before it cuts the file of the same name`,
        },
      ];

/** What the cutter of a job does to its files. */
export function cutterReport(cutter: Cutter): CutterReport {
  const { smallest, step, passes, measured } = cutter;
  const corrected = correctionOf(measured);
  return {
    compensated: knifeOf(cutter) !== undefined,
    ...(corrected ? { corrected } : {}),
    does: [
      ...bedWords(cutter),
      {
        key: 'order',
        says: 'lines stand in the order they are cut: what lies inside another first, then the nearest, outlines last',
      },
      {
        key: 'start',
        says: 'closed lines begin on a straight run where they have one, else where they run on most gently',
      },
      ...knifeWords(cutter),
      {
        key: 'smallest',
        says: `${smallest > 0 ? `film and gaps under ${inMm(smallest)}, and ` : ''}nodes closer than ${inMm(step)}${smallest > 0 ? ',' : ''} are more than it can cut clean; the checks tell of them`,
      },
      ...(passes > 1
        ? [{ key: 'passes', says: `each line is cut ${passes} times: tell the machine so` }]
        : []),
      ...measuredWords(cutter),
      ...marksWords(cutter),
    ],
  };
}
