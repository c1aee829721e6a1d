import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Builds the script of the page in which films are encoded: one file, given to a browser without a window. */
export default defineConfig({
  root: here('src/faces/film/page'),
  publicDir: false,
  build: {
    outDir: here('dist/faces/film/page'),
    emptyOutDir: true,
    target: 'es2022',
    lib: { entry: here('src/faces/film/page/filmPage.ts'), formats: ['es'], fileName: () => 'film.js' },
  },
});
