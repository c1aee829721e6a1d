/** The study file over the local server. */

import type { Outcome, Problem } from '../../../numerics/problem.ts';
import type { FilmState, FilmWanted } from '../../film/filmModel.ts';

export interface StudyText {
  readonly text: string;
  readonly hash: string;
  readonly name: string;
}

const address = '/api/study';

const unreachable: Problem = {
  code: 'server-not-reachable',
  what: 'The program that serves this page does not answer.',
  mend: 'Start it again in the study folder; what you see here is kept until then.',
};

export async function readStudyText(): Promise<Outcome<StudyText>> {
  const reply = await fetch(address, { cache: 'no-store' }).catch(() => null);
  if (reply === null) return { ok: false, problem: unreachable };
  if (!reply.ok) return { ok: false, problem: await problemOf(reply) };
  return { ok: true, value: (await reply.json()) as StudyText };
}

export type WriteOutcome =
  | { readonly kind: 'written'; readonly study: StudyText }
  | { readonly kind: 'stale'; readonly study: StudyText }
  | { readonly kind: 'refused'; readonly problem: Problem };

export interface ScriptText {
  /** Null where there is none yet. */ readonly text: string | null;
  readonly hash: string;
  /** The record of its numbers as written. */ readonly record: string | null;
}

export async function readScriptText(): Promise<Outcome<ScriptText>> {
  const reply = await fetch('/api/script', { cache: 'no-store' }).catch(() => null);
  if (reply === null) return { ok: false, problem: unreachable };
  if (!reply.ok) return { ok: false, problem: await problemOf(reply) };
  return { ok: true, value: (await reply.json()) as ScriptText };
}

export type ScriptWrite =
  | { readonly kind: 'written' | 'stale'; readonly script: ScriptText }
  | { readonly kind: 'refused'; readonly problem: Problem };

/** Replaces the script, if its file still is what `baseHash` stands for; makes it where that is empty. */
export const writeScriptText = (text: string, baseHash: string): Promise<ScriptWrite> =>
  putScript('/api/script', text, baseHash);

export const writeScriptNumbers = (record: string): Promise<ScriptWrite> =>
  putScript('/api/script-numbers', record, '');

async function putScript(address: string, text: string, baseHash: string): Promise<ScriptWrite> {
  const reply = await put(address, text, baseHash);
  if (reply === null) return { kind: 'refused', problem: unreachable };
  if (!reply.ok && reply.status !== 409) return { kind: 'refused', problem: await problemOf(reply) };
  return { kind: reply.ok ? 'written' : 'stale', script: (await reply.json()) as ScriptText };
}

/** In characters, with room for those of several bytes: browsers keep 64 KiB of requests alive. */
const MOST_KEPT_ALIVE = 20_000;

function put(address: string, text: string, baseHash: string): Promise<Response | null> {
  const token = document.querySelector<HTMLMetaElement>('meta[name="plumeline-token"]')?.content ?? '';
  const body = JSON.stringify({ text, baseHash });
  return fetch(address, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json', 'X-Plumeline-Token': token },
    body,
    // The browser carries a small one through even where the page is being left.
    keepalive: body.length < MOST_KEPT_ALIVE,
  }).catch(() => null);
}

/** Replaces the file's text, if the file still is what `baseHash` stands for. */
export async function writeStudyText(text: string, baseHash: string): Promise<WriteOutcome> {
  const reply = await put(address, text, baseHash);
  if (reply === null) return { kind: 'refused', problem: unreachable };
  if (reply.ok) return { kind: 'written', study: (await reply.json()) as StudyText };
  if (reply.status === 409) return { kind: 'stale', study: (await reply.json()) as StudyText };
  return { kind: 'refused', problem: await problemOf(reply) };
}

async function problemOf(reply: Response): Promise<Problem> {
  const body = (await reply.json().catch(() => null)) as { error?: string; problem?: Problem } | null;
  return (
    body?.problem ?? {
      code: 'server-refused',
      what: body?.error ?? `The server answered with status ${reply.status}.`,
      mend: 'Reload the page.',
    }
  );
}

/** Calls `tell` when the file may have changed: at each change, and whenever the connection comes to stand. */
export function onStudyChanged(tell: () => void): void {
  new EventSource('/api/changes').addEventListener('study', tell);
}

/** A study told in few words. */
export interface NearStudy {
  readonly name: string;
  readonly question: string;
  readonly engines: readonly { readonly id: string; readonly name: string }[];
  readonly sentences: readonly string[];
}
export interface Near {
  /** In the folder above this one’s. */ readonly studies: readonly NearStudy[];
  readonly starters: readonly NearStudy[];
}

/** Other studies within reach; none where they cannot be read now. */
export async function readNear(): Promise<Near> {
  const reply = await fetch('/api/near', { cache: 'no-store' }).catch(() => null);
  return reply?.ok ? ((await reply.json()) as Near) : { studies: [], starters: [] };
}

/** The text of one of them; null where it is gone. */
export async function readNearText(name: string): Promise<string | null> {
  const reply = await fetch(`/api/near/study?name=${encodeURIComponent(name)}`, { cache: 'no-store' }).catch(
    () => null,
  );
  return reply?.status === 200 ? reply.text() : null;
}

/** Begins a film, stops it, or (null) only looks: what the server says of it. */
export async function askFilm(wanted: FilmWanted | 'stop' | null): Promise<FilmState> {
  const reply =
    wanted === null
      ? await fetch('/api/film', { cache: 'no-store' }).catch(() => null)
      : await put('/api/film', JSON.stringify(wanted), '');
  if (reply === null) return { is: 'failed', problem: unreachable };
  return reply.ok ? ((await reply.json()) as FilmState) : { is: 'failed', problem: await problemOf(reply) };
}
