import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';

const inWeb = (file: string): string => fileURLToPath(new URL(`./web/${file}`, import.meta.url));

/** What both pages have in their heads stands once, in web/head.html. */
const sharedHead: Plugin = {
  name: 'shared-head',
  transformIndexHtml: {
    order: 'pre',
    handler: (page) => page.replace('<!-- head.html -->', () => readFileSync(inWeb('head.html'), 'utf8')),
  },
};

/** What comes with the drawings and after everything else; named so that it can be told apart in measuring. */
const isChart = (file: string): boolean =>
  /\/web\/src\/charts\/|\/node_modules\/(d3-|internmap\/)/.test(file);

/** The pages: sources in web/, built into web/dist, which the server serves as plain files. */
export default defineConfig({
  root: 'web',
  base: './',
  plugins: [sharedHead],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: {
      input: [inWeb('index.html'), inWeb('pair.html')],
      output: {
        chunkFileNames: (chunk) => `assets/${chunk.moduleIds.every(isChart) ? 'chart-' : ''}[name]-[hash].js`,
      },
    },
    // The page's policy allows no inline script and no data: addresses, so nothing is inlined.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
  },
  worker: { format: 'es' },
});
