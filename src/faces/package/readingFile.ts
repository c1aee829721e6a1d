/** The reading view in one file, its script and style inside. */

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { type ReadingScript, readingPage } from '../../telling/script/index.ts';

const asset = (name: string): string =>
  readFileSync(new URL(`../../../assets/reading/${name}`, import.meta.url), 'utf8');

const digest = (text: string): string => createHash('sha256').update(text).digest('base64');

export const readingFile = (answer: ReadingScript): string =>
  readingPage({ answer, script: asset('reading.js'), styles: asset('reading.css'), digest });
