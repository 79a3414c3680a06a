import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**'],
    pool: 'threads',
    // One more than there are cores: tests of commands and of the page wait for what they started a third of their time.
    maxWorkers: availableParallelism() + 1,
    reporters: ['default', './tests/closing-line.ts'],
    // No test is timed: a slow machine must not fail one.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 60_000 } },
    // The core keeps no state, so files need no walls between them: three times as fast.
    isolate: false,
    globalSetup: ['tests/build.ts'],
    setupFiles: ['tests/setup.ts'],
  },
});
