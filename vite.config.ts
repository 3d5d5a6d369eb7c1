import { defineConfig } from 'vite';

/** The page: built from web/ into dist/. Nothing is inlined, so that the server's policy can forbid inline script and style.
 * The style target is the first browsers with light-dark(): rewritten for older ones, a mood could not be chosen for a part of the page. */
export default defineConfig({
  root: 'web',
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    target: 'es2022',
    cssTarget: ['chrome123', 'firefox121', 'safari17.5'],
    reportCompressedSize: true,
  },
});
