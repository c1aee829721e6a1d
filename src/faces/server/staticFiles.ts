import { readFile } from 'node:fs/promises';
import { extname } from 'node:path';
import type { Context } from 'hono';
import { refuse } from './guard.ts';
import { fileInside } from './insideFolder.ts';

/** Media types of the files we ship; a file of any other type is not served. */
const mediaTypes: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  // As plain text every browser shows it.
  '.md': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
};

/**
 * Answers with a file of `folder`.
 *
 * @param relative percent-decoded path inside the folder
 * @param caching  `forever` for names that carry a hash of their content
 */
export async function answerWithFile(
  context: Context,
  folder: string,
  relative: string,
  caching: 'forever' | 'ask',
): Promise<Response> {
  const type = mediaTypes[extname(relative).toLowerCase()];
  const file = type === undefined ? null : await fileInside(folder, relative);
  if (file === null || type === undefined) return refuse(context, 404, 'There is no such file.');
  const bytes = await readFile(file);
  return context.body(new Uint8Array(bytes), 200, {
    'Content-Type': type,
    'Cache-Control': caching === 'forever' ? 'private, max-age=31536000, immutable' : 'no-cache',
  });
}

/** The part of the request's path after `prefix`, percent-decoded once; null where it cannot be decoded. */
export function pathAfter(context: Context, prefix: string): string | null {
  const { pathname } = new URL(context.req.url);
  if (!pathname.startsWith(prefix)) return null;
  try {
    return decodeURIComponent(pathname.slice(prefix.length));
  } catch (error) {
    if (error instanceof URIError) return null;
    throw error;
  }
}
