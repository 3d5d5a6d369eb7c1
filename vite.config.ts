import { defineConfig } from 'vite';

/** The page: built from web/ into dist/. Nothing is inlined, so that the server's policy can forbid inline script and style. */
export default defineConfig({
  root: 'web',
  base: './',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: { outDir: '../dist', emptyOutDir: true, assetsInlineLimit: 0, target: 'es2022', reportCompressedSize: true },
});
