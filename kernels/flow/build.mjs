/**
 * Builds the kernel and writes it as a module of the program:
 *
 *   cd kernels/flow && npm ci && npm run build
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sourceHash } from './sourceHash.mjs';

const here = fileURLToPath(new URL('.', import.meta.url));
const compiler = join(here, 'node_modules', 'assemblyscript', 'bin', 'asc.js');
const folder = mkdtempSync(join(tmpdir(), 'flow-kernel-'));
const out = join(folder, 'flow.wasm');
/** Pages of 64 KiB: all that a module of this kind can ever see. */
const pages = 65_536;
const flags = ['-O3', '--noAssert', '--runtime', 'stub', '--enable', 'simd', '--importMemory', '--noExportMemory'].concat(
  '--maximumMemory',
  String(pages),
);
const { status } = spawnSync(
  process.execPath,
  [compiler, 'source/index.ts', '--outFile', out, ...flags, '--use', 'abort='],
  { cwd: here, stdio: 'inherit' },
);
if (status !== 0) process.exit(1);
const bytes = readFileSync(out);
rmSync(folder, { recursive: true });
/** The import `env.memory`: a memory whose next byte says that it has a largest size (1), or that it is shared too (3). */
const imported = Buffer.from('\x03env\x06memory\x02', 'latin1');
const flagsAt = bytes.indexOf(imported) + imported.length;
if (flagsAt < imported.length || bytes[flagsAt] !== 1) throw new Error('the memory is not imported as expected');
writeFileSync(
  join(here, '../../src/physics/euler/kernel/bytes.ts'),
  `/** The step of a field in WebAssembly, built by kernels/flow/build.mjs: not to be edited. */

/** Of the sources that it was built from. */
export const KERNEL_SOURCES = '${sourceHash()}';

/** Place of the byte that says what memory it takes: 1 its own, 3 one that threads share. */
export const MEMORY_KIND_AT = ${flagsAt};

/** The module in base 64. */
export const KERNEL_BYTES =
  '${bytes.toString('base64')}';
`,
);
console.log(`${bytes.length} bytes written to src/physics/euler/kernel/bytes.ts`);
