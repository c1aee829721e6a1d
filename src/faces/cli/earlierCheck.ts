/** What an earlier `plumeline check --json` printed, read back for its verdicts. */

import { readFile } from 'node:fs/promises';
import type { JudgedAnalogy } from '../../answer/analogies/index.ts';
import type { Judged, Verdict } from '../../answer/sentences/index.ts';
import { BadInput } from './badInput.ts';

const VERDICTS: ReadonlySet<unknown> = new Set<Verdict>([
  'safe to say',
  'say with care',
  'don’t say',
  'can’t tell',
  'reported',
  'not checked',
]);

export interface EarlierCheck {
  readonly sentences: readonly Judged[];
  /** Null where the file tells nothing of analogies. */ readonly analogies: readonly JudgedAnalogy[] | null;
}

/** @throws BadInput where the file cannot be read or is something else */
export async function readEarlierCheck(path: string): Promise<EarlierCheck> {
  const text = await readFile(path, 'utf8').catch((error: Error) => {
    throw badFile(`--before: ${path} cannot be read: ${error.message}.`);
  });
  const found = parsed(text);
  if (typeof found !== 'object' || found === null || !('format' in found) || !('sentences' in found)) {
    throw badFile(`--before: ${path} is no check of sentences.`);
  }
  const { format, sentences } = found;
  if (format !== 'plumeline check 1' || !Array.isArray(sentences) || !sentences.every(isJudged)) {
    throw badFile(`--before: ${path} is no check of sentences that this version reads.`);
  }
  const analogies = 'analogies' in found ? found.analogies : null;
  if (analogies !== null && !(Array.isArray(analogies) && analogies.every(isJudgedAnalogy))) {
    throw badFile(`--before: ${path} has analogies that this version does not read.`);
  }
  return { sentences, analogies };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}

function isJudged(value: unknown): value is Judged {
  if (typeof value !== 'object' || value === null) return false;
  const { id, say, verdict, share } = value as Record<string, unknown>;
  const known = typeof id === 'string' && typeof say === 'string' && VERDICTS.has(verdict);
  return known && (share === null || typeof share === 'number');
}

const isJudgedAnalogy = (value: unknown): value is JudgedAnalogy =>
  typeof value === 'object' && value !== null && isJudged({ share: null, ...value });

function badFile(what: string): BadInput {
  return new BadInput([
    {
      code: 'earlier-check-unreadable',
      what,
      mend: 'Give a file written by: plumeline check my-question --json > before.json',
    },
  ]);
}
