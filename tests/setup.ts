// Runs before every test file: whoever writes to the console fails the test it happens in.
import { afterAll, afterEach } from 'vitest';

const methods = ['debug', 'dir', 'error', 'info', 'log', 'table', 'trace', 'warn'] as const;

const calls: string[] = [];

for (const method of methods)
  console[method] = (...words: unknown[]) => {
    calls.push(`console.${method}(${words.map(String).join(', ')})`);
  };

const refuseCalls = (): void => {
  const made = calls.splice(0);
  if (made.length > 0) throw new Error(`written to the console: ${made.join('; ')}`);
};

afterEach(refuseCalls);
// What a file writes while it is loaded, or between its tests, belongs to no single test.
afterAll(refuseCalls);
