import { defineConfig } from 'vite';

/** The pages: sources in web/, built into web/dist, which the server serves as plain files. */
export default defineConfig({
  root: 'web',
  base: './',
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions: { input: ['web/index.html', 'web/pair.html'] },
    // The page's policy allows no inline script and no data: addresses, so nothing is inlined.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
  },
  worker: { format: 'es' },
});
