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

/** The pages: sources in web/, built into web/dist, which the server serves as plain files. */
export default defineConfig({
  root: 'web',
  base: './',
  plugins: [sharedHead],
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: { input: [inWeb('index.html'), inWeb('pair.html')] },
    // The page's policy allows no inline script and no data: addresses, so nothing is inlined.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
  },
  worker: { format: 'es' },
});
