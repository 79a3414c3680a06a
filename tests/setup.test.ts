import { test } from 'vitest';

const methods = ['debug', 'dir', 'error', 'info', 'log', 'table', 'trace', 'warn'] as const;

for (const method of methods)
  test.fails(`a test in which console.${method} is called fails`, () => {
    console[method]('a word that belongs nowhere');
  });

test('a quiet test passes', () => {});
