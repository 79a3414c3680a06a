// Vessels and whole samples to start from.
import { openFiles } from '../opening.ts';
import { filesOfSample, filesOfVessel, inWords, sampleJobs, shelfVessels } from '../samples.ts';

export const Shelf = () => (
  <details class="more">
    <summary>Start from a vessel on the shelf, or a whole sample</summary>
    <div class="pick-row">
      <label class="pick">
        <span>A vessel</span>
        <select
          value=""
          onChange={(event) => {
            const name = event.currentTarget.value;
            event.currentTarget.value = '';
            if (name) openFiles(filesOfVessel(name), inWords(name));
          }}
        >
          <option value="">Pick one…</option>
          {shelfVessels.map((name) => (
            <option key={name} value={name}>
              {inWords(name)}
            </option>
          ))}
        </select>
      </label>
    </div>
    <ul class="sample-list">
      {sampleJobs.map(({ key, label, says }) => (
        <li key={key}>
          <button type="button" class="plain" onClick={() => openFiles(filesOfSample(key), label)}>
            {label}
          </button>
          <span class="aside">{says}</span>
        </li>
      ))}
    </ul>
    <p class="aside">The samples are invented. Undo brings back what was on the bench.</p>
  </details>
);
