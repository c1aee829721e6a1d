/** The reading view as one file to keep: what a tablet opens without a network. */

import { readingPage } from '../../../telling/script/readingView.ts';
import type { ScriptAnswer } from '../../../telling/script/scriptAnswer.ts';
import { saveText } from './saveText.ts';

const asset = async (name: string): Promise<string> => (await fetch(`/reading/${name}`)).text();

/** SHA-256 in Base64. */
async function digestOf(text: string): Promise<string> {
  const bytes = new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text)));
  return btoa(String.fromCharCode(...bytes));
}

export async function saveReadingPage(answer: ScriptAnswer, name: string): Promise<void> {
  const [script, styles] = await Promise.all([asset('reading.js'), asset('reading.css')]);
  const digests = new Map([
    [script, await digestOf(script)],
    [styles, await digestOf(styles)],
  ]);
  const page = readingPage({ answer, script, styles, digest: (text) => digests.get(text)! });
  saveText(`${name}-to-read.html`, page, 'text/html');
}
