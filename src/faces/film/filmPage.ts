/** The page without a window in which films are encoded: opened, given its script and fonts, and talked to. */

import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { ProblemError } from '../../numerics/problem.ts';
import { fontFiles } from '../package/fontFiles.ts';
import { launchChromium } from './chromium.ts';
import type {} from './page/filmPage.ts';

/** Built; this folder lies three levels below the root both as source and as built. */
const script = fileURLToPath(new URL('../../../dist/faces/film/page/film.js', import.meta.url));
const weights = [400, 600, 700];

/** An address that no request ever reaches: all are answered here. Encoders are open to secure places only, as this is. */
const address = 'http://localhost/';

export interface OpenedFilmPage {
  readonly page: Page;
  /** Where the pieces of the film go. */ onWrite(
    write: (position: number, bytes: Buffer) => Promise<void>,
  ): void;
  close(): Promise<void>;
}

export async function openFilmPage(): Promise<OpenedFilmPage> {
  const code = await readFile(script, 'utf8').catch((error: unknown) => {
    throw new ProblemError({
      code: 'film-script-missing',
      what: `The script that encodes films is not there: ${(error as Error).message}.`,
      mend: 'Build the program (npm run build), or install it again.',
    });
  });
  const browser: Browser = await launchChromium();
  try {
    let write: (position: number, bytes: Buffer) => Promise<void> = () => Promise.resolve();
    const page = await browser.newPage();
    await page.route('**/*', async (route) => {
      const { pathname } = new URL(route.request().url());
      const font = weights.findIndex((weight) => pathname === `/${weight}.ttf`);
      if (font >= 0)
        return route.fulfill({ body: await readFile(fontFiles[font]!), contentType: 'font/ttf' });
      if (pathname === '/')
        return route.fulfill({ body: '<!doctype html><title>film</title>', contentType: 'text/html' });
      return route.abort();
    });
    await page.exposeFunction('plumelineWrite', (position: number, base64: string) =>
      write(position, Buffer.from(base64, 'base64')),
    );
    await page.goto(address);
    await page.addScriptTag({ content: code, type: 'module' });
    await page.waitForFunction(() => 'plumelineFilm' in globalThis);
    await page.evaluate((all) => globalThis.plumelineFilm.ready(all), weights);
    return {
      page,
      onWrite(to) {
        write = to;
      },
      close: () => browser.close(),
    };
  } catch (error) {
    await browser.close();
    throw error;
  }
}
