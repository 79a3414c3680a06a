// What the board shows before anything is typed: the ways to begin.
import { openFiles } from '../opening.ts';
import { startGuide } from '../parts/guide.tsx';
import { filesOfSample, sampleJobs } from '../samples.ts';
import { SamplePicture } from './sample-pictures.tsx';

/** What was pressed is gone once the job is there: who came by keys goes on at the view that is shown. */
const goOn = (): void => {
  requestAnimationFrame(() => {
    if (document.activeElement !== document.body) return;
    document.querySelector<HTMLElement>('[role="tab"][aria-selected="true"]')?.focus();
  });
};

export const Welcome = () => (
  <div class="welcome">
    <svg class="welcome-picture" viewBox="0 0 300 120" aria-hidden="true">
      <path class="pic-body" d="M40 18L52 96Q53 102 60 102H100Q107 102 108 96L120 18" />
      <ellipse class="pic-body" cx="80" cy="18" rx="40" ry="8" />
      <path class="pic-zone" d="M43 38L50 86Q80 96 110 86L117 38Q80 50 43 38" />
      <path class="pic-read" d="M80 46V92" />
      <path class="pic-faint-line" d="M130 62H158M150 56L158 62L150 68" />
      <path class="pic-zone" d="M172 46Q226 24 284 46L268 98Q228 82 186 98Z" />
      <path class="pic-body" d="M172 46Q226 24 284 46L268 98Q228 82 186 98Z" />
      <path class="pic-read" d="M172 46L186 98" />
    </svg>
    <h2>A flat file that fits a round vessel</h2>
    <p>Type two readings of yours in step 1, and its wall is drawn here. Or see the whole of it first:</p>
    <div class="welcome-ways">
      <button type="button" class="strong" onClick={startGuide}>
        Two minutes with the lighthouse cup
      </button>
      {sampleJobs.map(({ key, label, says }) => (
        <button
          key={key}
          type="button"
          class="plain welcome-sample"
          onClick={() => openFiles(filesOfSample(key), label).then(goOn)}
        >
          <SamplePicture of={key} />
          <strong>{label}</strong>
          <span>{says}</span>
        </button>
      ))}
    </div>
  </div>
);
