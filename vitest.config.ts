import { defineConfig } from 'vitest/config';
import { compileLess } from './src/cli/engine-pace.ts';
import LongestFirst from './tests/longest-first.ts';

// As the command does: code that a test runs is mostly run for a second. A sixth of all processor time.
compileLess();

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
