/**
 * Who may talk to the local server, and what its answers allow.
 *
 * The server listens on loopback only, but a page from anywhere in the same browser can send requests there
 * (cross-site requests, or a host name that is made to resolve to 127.0.0.1). Three checks keep such pages out:
 * the Host header must name this very address and port; Origin and Sec-Fetch-Site, which a page cannot forge,
 * must not speak of another site; and a write must carry the token that only our own page was given.
 */

import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { Context, MiddlewareHandler } from 'hono';

/** Name of the request header that carries the write token. */
export const tokenHeader = 'x-plumeline-token';

/** 256 random bits, hexadecimal; one for each run of the server. */
export function newToken(): string {
  return randomBytes(32).toString('hex');
}

/** Whether `given` is the token; takes the same time wherever the first difference is. */
export function sameToken(given: string | undefined, token: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text, 'utf8').digest();
  return timingSafeEqual(digest(given ?? ''), digest(token)) && given !== undefined;
}

/** Host header values that mean this server, on the given port. */
export function acceptedHosts(port: number): readonly string[] {
  return [`127.0.0.1:${port}`, `localhost:${port}`, `[::1]:${port}`];
}

/** Hosts the server may be bound to. */
export function isLoopback(host: string): boolean {
  return host === '127.0.0.1' || host === 'localhost' || host === '::1';
}

const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Headers of every answer, errors included. */
export const safetyHeaders: Readonly<Record<string, string>> = {
  'Content-Security-Policy': contentSecurityPolicy,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=()',
};

/** An error answer: words for a person, no detail of the machine. */
export function refuse(
  context: Context,
  status: 400 | 403 | 404 | 405 | 409 | 413 | 415 | 503,
  words: string,
) {
  return context.json({ error: words }, status, { 'Cache-Control': 'no-store' });
}

/** Sets the safety headers on every answer. */
export const withSafetyHeaders: MiddlewareHandler = async (context, next) => {
  await next();
  for (const [name, value] of Object.entries(safetyHeaders)) context.res.headers.set(name, value);
};

/** Lets through only requests addressed to this server, and not sent by another site's page. */
export function onlyOwnSite(hosts: () => readonly string[]): MiddlewareHandler {
  return async (context, next) => {
    const host = context.req.header('host');
    if (host === undefined || !hosts().includes(host.toLowerCase())) {
      return refuse(context, 403, 'This server answers only on its own loopback address.');
    }
    const origin = context.req.header('origin');
    if (origin !== undefined && !hosts().some((own) => origin.toLowerCase() === `http://${own}`)) {
      return refuse(context, 403, 'Requests from other sites are refused.');
    }
    const site = context.req.header('sec-fetch-site');
    const isNavigation = context.req.header('sec-fetch-mode') === 'navigate' && context.req.method === 'GET';
    if (site !== undefined && site !== 'same-origin' && site !== 'none' && !isNavigation) {
      return refuse(context, 403, 'Requests from other sites are refused.');
    }
    return next();
  };
}

/** Lets only reading methods through, apart from those named for a path. */
export function onlyMethods(writable: Readonly<Record<string, readonly string[]>>): MiddlewareHandler {
  return async (context, next) => {
    const allowed = ['GET', 'HEAD', ...(writable[context.req.path] ?? [])];
    if (!allowed.includes(context.req.method)) {
      context.header('Allow', allowed.join(', '));
      return refuse(context, 405, 'This method is not used here.');
    }
    return next();
  };
}

/** Lets a write through only with the token of this run. */
export function onlyWithToken(token: string): MiddlewareHandler {
  return async (context, next) => {
    if (!sameToken(context.req.header(tokenHeader), token)) {
      return refuse(context, 403, 'This page was opened by an earlier run. Reload it to go on editing.');
    }
    return next();
  };
}
