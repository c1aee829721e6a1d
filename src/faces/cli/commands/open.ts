import { spawn } from 'node:child_process';
import { solveStudy } from '../../../answer/solve.ts';
import { openDataShelf } from '../../disk/data.ts';
import { serveStudy } from '../../server/serveStudy.ts';
import { BadInput } from '../badInput.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import type { Terminal } from '../terminal.ts';
import { wrapped } from '../text/wrap.ts';
import { programVersion } from '../version.ts';

export interface OpenFlags {
  readonly port?: string;
  readonly browser: boolean;
}

/** Serves the workbench on this machine until it is stopped. */
export async function openCommand(given: string, flags: OpenFlags, terminal: Terminal): Promise<ExitStatus> {
  const port = flags.port === undefined ? undefined : portNumber(flags.port);
  const shelf = openDataShelf();
  const { study, folder } = await openStudy(given, shelf, terminal);
  const { question, shortAnswer } = await solveStudy(study, shelf, { version: programVersion() });
  const stopped = untilStopped();
  const server = await serveStudy({ folder, ...(port !== undefined && { port }) });
  terminal.out(wrapped(question, terminal.width));
  terminal.out(wrapped(`${shortAnswer.verdict}. ${shortAnswer.text}`, terminal.width, '  '));
  terminal.out(`\nThe workbench is open at ${server.url}`);
  terminal.err('Only this machine can reach it. Stop it with Ctrl+C.');
  if (flags.browser) showInBrowser(server.url, terminal);
  await stopped;
  await server.close();
  return EXIT.answered;
}

function portNumber(text: string): number {
  const port = Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65535) return port;
  throw new BadInput([
    {
      code: 'port-invalid',
      what: `--port: “${text}” is not a port.`,
      mend: 'Give a whole number from 0 to 65535; 0 takes any free one.',
    },
  ]);
}

/** Asks the system to show the page; without a desktop the printed address has to do. */
function showInBrowser(url: string, terminal: Terminal): void {
  const [program, ...rest] = opener();
  if (program === undefined) return;
  const child = spawn(program, [...rest, url], { stdio: 'ignore', detached: true });
  child.on('error', () => terminal.err('No browser could be started; open the address above yourself.'));
  child.unref();
}

function opener(): readonly string[] {
  switch (process.platform) {
    case 'darwin':
      return ['open'];
    case 'win32':
      return ['rundll32', 'url.dll,FileProtocolHandler'];
    default:
      return process.env.DISPLAY || process.env.WAYLAND_DISPLAY ? ['xdg-open'] : [];
  }
}

function untilStopped(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
}
