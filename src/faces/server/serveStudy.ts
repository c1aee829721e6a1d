/** Serves one study folder and the workbench to this machine's browser, on loopback only. */

import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createAdaptorServer, type ServerType } from '@hono/node-server';
import { ProblemError } from '../../numerics/problem.ts';
import { watchStudy } from './changes.ts';
import { filmDesk } from './filmDesk.ts';
import { firstAnswerFor } from './firstAnswer.ts';
import { flowDesk } from './flowDesk.ts';
import { acceptedHosts, isLoopback, newToken } from './guard.ts';
import { openScriptFile } from './scriptFile.ts';
import { type ShippedFolders, studyApp } from './studyApp.ts';
import { openStudyFile } from './studyFile.ts';

export interface ServeOptions {
  /** Folder with `study.yaml`. */ readonly folder: string;
  /** First port tried; the next free one is taken. 0: any free port. */ readonly port?: number;
  /** A loopback address. */ readonly host?: string;
}

export interface RunningServer {
  readonly url: string;
  close(): Promise<void>;
}

const usualPort = 5174;
const portsTried = 50;

/** The package's own root, the same distance above `src/faces/server` and `dist/faces/server`. */
const packageRoot = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');

const shippedFolders: ShippedFolders = {
  workbench: join(packageRoot, 'dist', 'faces', 'workbench'),
  data: join(packageRoot, 'data'),
  fonts: join(packageRoot, 'assets', 'fonts'),
  starters: join(packageRoot, 'starters'),
  methods: join(packageRoot, 'docs', 'methods'),
  reading: join(packageRoot, 'assets', 'reading'),
};

/**
 * Starts the server.
 *
 * @throws ProblemError when the host is not loopback, the folder holds no study, or no port is free
 */
export async function serveStudy({
  folder,
  port = usualPort,
  host = '127.0.0.1',
}: ServeOptions): Promise<RunningServer> {
  if (!isLoopback(host)) {
    throw new ProblemError({
      code: 'host-not-loopback',
      what: `The workbench can write files and does not listen on ${host}.`,
      why: 'Anybody who reaches that address could change the study.',
      mend: 'Use 127.0.0.1, ::1 or localhost.',
    });
  }
  const file = openStudyFile(folder);
  await file.read();
  const changes = watchStudy(file);
  let hosts: readonly string[] = [];
  const script = openScriptFile(folder);
  const films = filmDesk();
  const flows = flowDesk(file);
  const firstAnswer = firstAnswerFor(file);
  const app = studyApp({
    films,
    flows,
    firstAnswer,
    file,
    script,
    changes,
    token: newToken(),
    folders: shippedFolders,
    hosts: () => hosts,
  });
  const server = createAdaptorServer({ fetch: app.fetch });
  const taken = await listenOnFreePort(server, host, port);
  hosts = acceptedHosts(taken);
  return {
    url: `http://${host === '::1' ? '[::1]' : host}:${taken}/`,
    async close() {
      changes.close();
      await films.close();
      await flows.close();
      await firstAnswer.close();
      const closed = once(server, 'close');
      server.close();
      if ('closeAllConnections' in server) server.closeAllConnections();
      await closed;
    },
  };
}

async function listenOnFreePort(server: ServerType, host: string, first: number): Promise<number> {
  const last = first === 0 ? 0 : Math.min(first + portsTried - 1, 65535);
  for (let port = first; port <= last; port++) {
    if (await listens(server, host, port)) return (server.address() as AddressInfo).port;
  }
  throw new ProblemError({
    code: 'no-free-port',
    what: `No port from ${first} to ${last} is free on ${host}.`,
    mend: 'Name another with --port, or 0 for any free one.',
    facts: { first, last },
  });
}

/** Whether the server could take the port; false when another program holds it. */
function listens(server: ServerType, host: string, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException) => {
      server.off('listening', done);
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    };
    const done = () => {
      server.off('error', failed);
      resolve(true);
    };
    server.once('error', failed);
    server.once('listening', done);
    server.listen(port, host);
  });
}
