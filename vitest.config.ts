import { defineConfig } from 'vitest/config';
import LongestFirst from './tests/longest-first.ts';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**'],
    pool: 'threads',
    maxWorkers: '100%',
    reporters: ['default', './tests/closing-line.ts'],
    // No test is timed: a slow machine must not fail one.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 60_000 } },
    // The core keeps no state, so files need no walls between them: three times as fast.
    isolate: false,
    sequence: { sequencer: LongestFirst },
    globalSetup: ['tests/build.ts'],
    setupFiles: ['tests/setup.ts'],
  },
});
