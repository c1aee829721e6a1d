import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Builds the workbench; the server in `src/faces/server` serves what lies in `dist/faces/workbench`. */
export default defineConfig({
  root: here('src/faces/workbench'),
  publicDir: false,
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es' },
  build: {
    outDir: here('dist/faces/workbench'),
    emptyOutDir: true,
    target: 'es2022',
    // Everything is a file of its own: the page's security policy allows no inline script, style or picture.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
