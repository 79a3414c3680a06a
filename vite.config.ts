// Builds the page into dist/page: files that any folder server can serve, from any path.
import { createHash } from 'node:crypto';
import { defineConfig, type Plugin } from 'vite';
import { licencesBeside } from './building/licences.ts';
import { contentPolicy } from './src/cli/content-policy.ts';

/** Tells the service worker every file of the page, and a version that changes with any of them. */
function pageFiles(): Plugin {
  return {
    name: 'page-files',
    generateBundle(_, bundle) {
      const names = Object.keys(bundle).filter((name) => name !== 'sw.js' && !name.endsWith('.map'));
      const hash = createHash('sha256').update(contentPolicy('page'));
      for (const name of names.sort()) {
        const file = bundle[name];
        hash.update(name);
        if (file) hash.update(file.type === 'chunk' ? file.code : file.source);
      }
      const worker = bundle['sw.js'];
      if (worker?.type !== 'chunk') return;
      const files = JSON.stringify(['./', ...names]);
      const version = JSON.stringify(hash.digest('hex').slice(0, 12));
      worker.code = worker.code.replaceAll('pageFiles', files).replaceAll('pageVersion', version);
    },
  };
}

/** The same policy that the command's server sends, for the page on any other. */
const policyInPage = (): Plugin => ({
  name: 'policy-in-page',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: contentPolicy('page') },
      injectTo: 'head-prepend',
    },
  ],
});

export default defineConfig({
  root: 'src/page',
  base: './',
  // Notes on what a browser leaves out of libraries are no news; a fault is.
  logLevel: 'error',
  plugins: [pageFiles(), policyInPage(), licencesBeside('dist/page/LICENCES.txt')],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/page',
    emptyOutDir: true,
    target: 'es2023',
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1000,
    rolldownOptions: {
      input: { index: 'src/page/index.html', sw: 'src/page/offline/service-worker.ts' },
      output: { entryFileNames: (chunk) => (chunk.name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js') },
    },
  },
});
