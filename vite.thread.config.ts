import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/**
 * Puts the thread of the first answer into two files, the solver in one of its own: to read the hundreds that they are made of
 * takes longer than to solve an engine. They lie where the compiler puts the thread, equally deep, so that the addresses in them hold.
 */
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: here('src/faces/server/firstAnswerThread.ts'),
    outDir: here('dist/faces/server'),
    emptyOutDir: false,
    target: 'node20',
    minify: false,
    rollupOptions: {
      output: {
        entryFileNames: 'firstAnswerThread.js',
        chunkFileNames: 'firstAnswerThread-[name].js',
      },
    },
  },
});
