// A layer that lies under others, where it is wanted: past them, or back from their edges.
import { lengthInFile } from '../model/typed.ts';
import { ColourField, LengthField } from '../parts/field.tsx';
import type { HelpKey } from '../parts/help-words.ts';
import { jobUnits } from './motif-place.tsx';
import { Wanted } from './wanted.tsx';

interface UnderLayerProps {
  readonly path: string;
  readonly says: string;
  /** What is typed: how far past, or how far back. */
  readonly by: { readonly key: 'choke' | 'grow'; readonly label: string; readonly help: HelpKey };
  readonly colour: { readonly label: string; readonly standard: string };
}

/** What it begins with, mm. Common practice, no source. */
const first = { choke: 0.3, grow: 2 } as const;

export const UnderLayer = ({ path, says, by, colour }: UnderLayerProps) => (
  <Wanted path={path} says={says} begun={{ [by.key]: lengthInFile(first[by.key], jobUnits()) }}>
    <div class="field-pair">
      <LengthField half="job" path={`${path}.${by.key}`} label={by.label} help={by.help} required />
      <ColourField half="job" path={`${path}.colour`} {...colour} />
    </div>
  </Wanted>
);
