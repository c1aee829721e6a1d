/** A server started through a shell ends when the shell is told to end, whether or not the shell passes that on. */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const module = new URL('../../scripts/stopWithParent.mjs', import.meta.url).href;
const server = `const { stopWithParent } = await import('${module}');
stopWithParent();
process.once('SIGTERM', () => { console.log('stopped'); process.exit(0); });
setInterval(() => undefined, 1000);
console.log('ready');`;

test.skipIf(process.platform === 'win32')(
  'a shell that dies of SIGTERM takes the server with it',
  async () => {
    // The colon keeps the shell from handing its place over to node.
    const shell = spawn('sh', ['-c', '"$0" --input-type=module -e "$1"; :', process.execPath, server], {
      cwd: fileURLToPath(new URL('../../', import.meta.url)),
    });
    let told = '';
    await new Promise<void>((resolve) => {
      shell.stdout.on('data', (text: Buffer) => {
        told += text.toString();
        if (told.includes('ready')) resolve();
      });
    });
    const ended = new Promise<void>((resolve) => shell.stdout.on('end', () => resolve()));
    shell.kill('SIGTERM');
    await ended;
    expect(told).toContain('stopped');
  },
);
