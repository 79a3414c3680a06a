// The sample vessels in a few lines each: what is wrapped onto them, and how their walls run.
import type { ComponentChildren } from 'preact';

const pictures: Readonly<Record<string, ComponentChildren>> = {
  'tapered-cup': (
    <>
      <path class="pic-zone" d="M20 21L24 59H48L52 21Z" />
      <path
        class="sample-art"
        d="M21 28q3.7 7 7.4 0q3.7 7 7.6 0q3.8 7 7.6 0q3.8 7 7.4 0M21.6 37q3.6 7 7.2 0q3.6 7 7.2 0q3.6 7 7.2 0q3.6 7 7.2 0M22.6 46q3.35 7 6.7 0q3.35 7 6.7 0q3.35 7 6.7 0q3.35 7 6.7 0"
      />
      <path class="pic-body" d="M18 10L24 62Q24 65 28 65H44Q48 65 48 62L54 10" />
      <ellipse class="pic-body" cx="36" cy="10" rx="18" ry="4" />
    </>
  ),
  canister: (
    <>
      <path class="pic-zone" d="M16 20H56V58H16Z" />
      <path
        class="sample-art"
        d="M16 28L26 20M16 48L46 20M20 58L56 26M42 58L56 46M16 32L42 58M16 52L22 58M22 20L56 54M44 20L56 32"
      />
      <path class="pic-body" d="M16 12V62Q36 70 56 62V12" />
      <ellipse class="pic-body" cx="36" cy="12" rx="20" ry="5" />
    </>
  ),
  pot: (
    <>
      <path class="pic-zone" d="M22 24H50L56 56H16Z" />
      <path
        class="sample-art"
        d="M23 34q4 -6 7 0q3 -6 7 0M39 42q4 -6 7 0q3 -6 7 0M20 49q4 -6 7 0q3 -6 7 0M40 29q3 -5 5 0q2 -4 5 0"
      />
      <path class="pic-body" d="M23 14L15 61Q15 65 19 66H53Q57 65 57 61L49 14" />
      <ellipse class="pic-body" cx="36" cy="14" rx="13" ry="3.5" />
    </>
  ),
  mug: (
    <>
      <path class="pic-zone" d="M15 22H49V56H15Z" />
      <path
        class="sample-art"
        d="M15 32q4.25 -6 8.5 0q4.25 6 8.5 0q4.25 -6 8.5 0q4.25 6 8.5 0M15 42q4.25 -6 8.5 0q4.25 6 8.5 0q4.25 -6 8.5 0q4.25 6 8.5 0M15 51q4.25 -6 8.5 0q4.25 6 8.5 0q4.25 -6 8.5 0q4.25 6 8.5 0"
      />
      <path
        class="pic-body"
        d="M15 14V60Q15 65 20 65H44Q49 65 49 60V14M49 26H56Q61 26 61 31V44Q61 49 56 49H49"
      />
      <ellipse class="pic-body" cx="32" cy="14" rx="17" ry="4" />
    </>
  ),
};

/** Decoration beside the sample's name. */
export const SamplePicture = ({ of }: { readonly of: string }) => (
  <svg class="sample-picture" viewBox="0 0 72 72" aria-hidden="true">
    {pictures[of]}
  </svg>
);
