// Builds the command and the package's face into a few modules: node takes longer to find and open hundreds of small files
// than to read what is in them. What a command loads only when it is asked for stays apart.
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig, type Plugin } from 'vite';
import { licencesBeside } from './licences.ts';
import { pairsUndone } from './pairs.ts';

const root = join(import.meta.dirname, '..');
const dist = join(root, 'dist');

/** Clears away modules built before, and types of files that are gone: they would be packed. */
const clearedBefore = (): Plugin => ({
  name: 'cleared-before',
  buildStart() {
    if (!existsSync(dist)) return;
    for (const name of readdirSync(dist, { recursive: true, encoding: 'utf8' })) {
      const source = join(root, 'src', name.replace(/\.d\.ts$/, '.ts'));
      const isStale = name.endsWith('.js') || (name.endsWith('.d.ts') && !existsSync(source));
      if (isStale && !/^page[\\/]/.test(name)) rmSync(join(dist, name));
    }
  },
});

export default defineConfig({
  root,
  logLevel: 'error',
  publicDir: false,
  plugins: [clearedBefore(), pairsUndone(), licencesBeside('dist/LICENCES.txt')],
  // These find files of their own beside them, or are wanted by few commands and large.
  ssr: { noExternal: true, external: ['harfbuzzjs', 'pdfkit'] },
  // What an engine would look for to fetch itself; asking node for it loads all it has for the web, and ours is given its bytes.
  define: { Request: 'undefined', Response: 'undefined' },
  build: {
    ssr: true,
    outDir: 'dist',
    emptyOutDir: false,
    target: 'node20',
    rolldownOptions: {
      input: {
        'cli/main': 'src/cli/main.ts',
        'cli/row-thread': 'src/cli/row-thread.ts',
        index: 'src/index.ts',
      },
      // All in one folder: what a file finds beside itself, it finds beside any of them.
      output: { entryFileNames: '[name].js', chunkFileNames: 'cli/[name]-[hash].js', comments: false },
    },
  },
});
