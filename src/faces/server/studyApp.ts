/** The routes of the local server. */

import { readFile, realpath } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { stream, streamSSE } from 'hono/streaming';
import { ProblemError } from '../../numerics/problem.ts';
import { FILM_SHAPES, type FilmWanted } from '../film/filmModel.ts';
import type { Changes } from './changes.ts';
import type { FilmDesk } from './filmDesk.ts';
import type { FirstAnswer } from './firstAnswer.ts';
import type { FlowDesk } from './flowDesk.ts';
import { flowOrder } from './flowOrder.ts';
import { onlyMethods, onlyOwnSite, onlyWithToken, refuse, withSafetyHeaders } from './guard.ts';
import { isMissing } from './insideFolder.ts';
import { studiesIn, studyNear } from './nearStudies.ts';
import type { ScriptFile } from './scriptFile.ts';
import { answerWithFile, pathAfter } from './staticFiles.ts';
import { largestStudy, type StudyFile } from './studyFile.ts';

/** Where the page's own files lie. */
export interface ShippedFolders {
  /** The built workbench. */ readonly workbench: string;
  /** `species/*.json`, `propellants.json`. */ readonly data: string;
  readonly fonts: string;
  /** Ready studies to begin from. */ readonly starters: string;
  /** One page a method, as plain text. */ readonly methods: string;
  /** Script and style of the reading view. */ readonly reading: string;
}

export interface StudyAppParts {
  readonly file: StudyFile;
  readonly script: ScriptFile;
  readonly changes: Changes;
  readonly films: FilmDesk;
  readonly flows: FlowDesk;
  readonly firstAnswer: FirstAnswer;
  readonly token: string;
  readonly folders: ShippedFolders;
  /** Accepted Host headers; asked at each request, since the port is known only once the server listens. */
  readonly hosts: () => readonly string[];
}

/** Stands in the page where the token of the run belongs. */
const tokenPlace = '%PLUMELINE_TOKEN%';

/** A silent stream is kept open by a comment this often [ms]. */
const keepAlive = 15_000;

const noStore = { 'Cache-Control': 'no-store' };

export function studyApp({
  file,
  script,
  changes,
  films,
  flows,
  firstAnswer,
  token,
  folders,
  hosts,
}: StudyAppParts): Hono {
  const app = new Hono();
  app.use(withSafetyHeaders);
  app.use(onlyOwnSite(hosts));
  app.use(
    onlyMethods({
      '/api/study': ['PUT'],
      '/api/script': ['PUT'],
      '/api/script-numbers': ['PUT'],
      '/api/film': ['PUT'],
      '/api/flows': ['PUT'],
    }),
  );

  app.get('/', async (context) => {
    const page = await readPage(folders.workbench);
    if (page === null) {
      return context.text('The workbench is not built yet. Run `npm run build`, then reload.', 503, noStore);
    }
    return context.html(page.replace(tokenPlace, token), 200, noStore);
  });

  app.get('/api/study', async (context) => context.json(await file.read(), 200, noStore));

  app.get('/api/answer', async (context) => {
    const hash = context.req.query('hash') ?? '';
    const first = await firstAnswer.piece(hash, 0);
    // Nothing wrong: the page works it out by itself.
    if (first === null) return context.body(null, 204, noStore);
    context.header('Cache-Control', 'no-store');
    context.header('Content-Type', 'application/octet-stream');
    return stream(context, async (out) => {
      let [piece, which]: [typeof first | null, number] = [first, 0];
      while (piece !== null && !out.aborted) {
        await out.write(piece);
        piece = await firstAnswer.piece(hash, ++which);
      }
    });
  });
  app.get('/api/answer/flights', async (context) => {
    const flights = await firstAnswer.flights(context.req.query('hash') ?? '');
    return flights === null ? context.body(null, 204, noStore) : context.json(flights, 200, noStore);
  });

  /** A write: only with the token, of a bounded size, as JSON. */
  const onPut = (
    path: string,
    take: (context: Context, text: string, baseHash: string) => Promise<Response>,
  ): void => {
    app.put(
      path,
      onlyWithToken(token),
      bodyLimit({
        // JSON may write each byte of the text as six.
        maxSize: 6 * largestStudy + 1000,
        onError: (context) => refuse(context, 413, 'The study is too large.'),
      }),
      async (context) => {
        const type = context.req.header('content-type') ?? '';
        if (!/^application\/json(;\s*charset=utf-8)?$/i.test(type)) {
          return refuse(context, 415, 'A study is sent as application/json.');
        }
        const edit = readEdit(await context.req.text());
        if (edit === null) return refuse(context, 400, 'Expected {"text": …, "baseHash": …}.');
        if (Buffer.byteLength(edit.text, 'utf8') > largestStudy) {
          return refuse(context, 413, 'The study is too large.');
        }
        return take(context, edit.text, edit.baseHash);
      },
    );
  };
  const stale = 'The file was changed meanwhile.';

  onPut('/api/study', async (context, text, baseHash) => {
    const outcome = await file.write(text, baseHash);
    if (outcome.kind === 'written') return context.json(outcome.study, 200, noStore);
    return context.json({ error: stale, ...outcome.study }, 409, noStore);
  });

  app.get('/api/script', async (context) => context.json(await script.read(), 200, noStore));
  onPut('/api/script', async (context, text, baseHash) => {
    const outcome = await script.write(text, baseHash);
    if (outcome.kind === 'written') return context.json(outcome.script, 200, noStore);
    return context.json({ error: stale, ...outcome.script }, 409, noStore);
  });
  onPut('/api/script-numbers', async (context, text) => {
    await script.writeRecord(text);
    return context.json(await script.read(), 200, noStore);
  });

  app.get('/api/film', (context) => context.json(films.state(), 200, noStore));
  onPut('/api/film', async (context, text) => {
    const wanted = filmWanted(text);
    if (wanted === null) return refuse(context, 400, 'No such film can be asked for.');
    if (wanted === 'stop') await films.stop();
    else films.begin((await file.read()).text, wanted);
    return context.json(films.state(), 200, noStore);
  });
  app.get('/api/film/file', async (context) => {
    const film = await films.film();
    if (film === null) return refuse(context, 404, 'There is no film.');
    return context.body(Uint8Array.from(film.bytes), 200, {
      ...noStore,
      'Content-Type': film.name.endsWith('.mp4') ? 'video/mp4' : 'video/webm',
      'Content-Disposition': `attachment; filename="${film.name}"`,
    });
  });

  app.get('/api/flows', async (context) => context.json(await flows.list(), 200, noStore));
  onPut('/api/flows', async (context, text) => {
    const order = flowOrder(text);
    if (order === null) return refuse(context, 400, 'No such flow can be asked for.');
    if (order === 'stop') await flows.stop();
    else if ('look' in order) flows.look(order.look);
    else await flows.begin(order);
    return context.json(await flows.list(), 200, noStore);
  });
  app.get('/api/flows/cells', async (context) => {
    const cells = await flows.cells(context.req.query('key') ?? '');
    if (cells === null) return refuse(context, 404, 'There is no such flow.');
    return context.body(cells, 200, { ...noStore, 'Content-Type': 'application/json' });
  });

  app.get('/api/near', async (context) => {
    const own = await realpath(file.folder);
    const [studies, starters] = await Promise.all([
      studiesIn(dirname(own), own),
      studiesIn(folders.starters, null),
    ]);
    return context.json({ studies, starters }, 200, noStore);
  });

  app.get('/api/near/study', async (context) => {
    const own = await realpath(file.folder);
    const text = await studyNear(dirname(own), context.req.query('name') ?? '');
    if (text === null) return refuse(context, 404, 'There is no such study.');
    return context.body(text, 200, { ...noStore, 'Content-Type': 'text/plain; charset=utf-8' });
  });

  app.get('/api/changes', (context) => {
    context.header('Cache-Control', 'no-store');
    return streamSSE(context, async (stream) => {
      await new Promise<void>((resolve) => {
        const stop = changes.listen((what) => void stream.writeSSE({ event: 'study', data: what }));
        if (stop === null) return resolve();
        const beat = setInterval(() => void stream.write(': still here\n\n'), keepAlive);
        stream.onAbort(() => {
          clearInterval(beat);
          stop();
          resolve();
        });
        void stream.write(': listening\n\n');
      });
    });
  });

  const folder = (prefix: string, root: string, caching: 'forever' | 'ask') =>
    app.get(`${prefix}*`, async (context) => {
      const relative = pathAfter(context, prefix);
      if (relative === null) return refuse(context, 404, 'There is no such file.');
      return answerWithFile(context, root, relative, caching);
    });
  folder('/assets/', join(folders.workbench, 'assets'), 'forever');
  folder('/data/', folders.data, 'ask');
  folder('/fonts/', folders.fonts, 'ask');
  folder('/methods/', folders.methods, 'ask');
  folder('/reading/', folders.reading, 'ask');

  app.notFound((context) => refuse(context, 404, 'There is nothing here.'));
  app.onError((error, context) => {
    if (error instanceof ProblemError) {
      const { code, what, mend } = error.problem;
      return context.json({ error: `${what} ${mend}`, problem: { code, what, mend } }, 422, noStore);
    }
    console.error(error);
    return context.json({ error: 'The server failed; its terminal says more.' }, 500, noStore);
  });
  return app;
}

async function readPage(folder: string): Promise<string | null> {
  try {
    return await readFile(join(folder, 'index.html'), 'utf8');
  } catch (error) {
    if (isMissing(error)) return null;
    throw error;
  }
}

function readEdit(body: string): { text: string; baseHash: string } | null {
  let edit: unknown;
  try {
    edit = JSON.parse(body);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
  if (typeof edit !== 'object' || edit === null) return null;
  const { text, baseHash } = edit as { text?: unknown; baseHash?: unknown };
  return typeof text === 'string' && typeof baseHash === 'string' ? { text, baseHash } : null;
}

/** What was asked for, held to what there is; null: nothing of it. */
function filmWanted(text: string): FilmWanted | 'stop' | null {
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch {
    return null;
  }
  if (given === 'stop') return 'stop';
  const { clip, size, alpha, seconds, theme } = (given ?? {}) as Partial<FilmWanted>;
  if (typeof seconds !== 'number' || !(seconds >= 3 && seconds <= LONGEST_FILM)) return null;
  if (typeof clip !== 'string' || clip.length > LONGEST_NAME || typeof alpha !== 'boolean') return null;
  const shape = FILM_SHAPES.find((each) => each === size);
  if (shape === undefined || (theme !== 'light' && theme !== 'dark')) return null;
  return { clip, size: shape, alpha, seconds, theme };
}

const LONGEST_NAME = 200;

/** [s] */ const LONGEST_FILM = 60;
