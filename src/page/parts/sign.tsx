// How serious a finding is, by shape and word as well as by colour.
import type { Level } from '../../finding.ts';

const words: Readonly<Record<Level, string>> = { stop: 'Stop', look: 'Look', note: 'Note' };

const shapes: Readonly<Record<Level, string>> = {
  // An octagon, a triangle and a circle: told apart without colour, and at the size of a letter.
  stop: 'M6 1h8l5 5v8l-5 5H6l-5-5V6z',
  look: 'M10 1.5 19 18H1z',
  note: 'M10 2a8 8 0 1 0 .01 0z',
};

const marks: Readonly<Record<Level, string>> = {
  stop: 'M6 10h8',
  look: 'M10 7.5v5M10 15v.6',
  note: 'M10 9v5M10 6v.6',
};

export const LevelSign = ({ level }: { readonly level: Level }) => (
  <span class={`sign sign-${level}`}>
    <svg viewBox="0 0 20 20" aria-hidden="true" class="sign-shape">
      <path d={shapes[level]} />
      <path d={marks[level]} class="sign-mark" />
    </svg>
    <span class="sign-word">{words[level]}</span>
  </span>
);
