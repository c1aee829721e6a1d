/** Sentences of the study added, changed and taken out. */

import type { Problem } from '../../../numerics/problem.ts';
import type { Edit, ValueEdit } from '../workshop/messages.ts';
import type { SentenceDraft } from './sentenceView.ts';
import { commitEdits } from './studyEdits.ts';
import { solved } from './studyStore.ts';

const longestId = 24;

/** Resolves with the faults that kept it from being written; with none when it was. */
export function saveSentence({ was, say, holds, said }: SentenceDraft): Promise<readonly Problem[]> {
  const words = oneLine(say);
  const test = oneLine(holds);
  if (was === null) {
    const entry = {
      id: freshId(words),
      say: words,
      ...(said ? {} : { said: false }),
      ...(test === '' ? {} : { holds: test }),
    };
    return commitEdits([{ list: 'sentences', add: entry }]);
  }
  const before = solved.value?.study.sentences.find(({ id }) => id === was);
  const value = (key: string, text: ValueEdit['value']): Edit => ({
    path: `sentences.${was}.${key}`,
    value: text,
  });
  return commitEdits([
    ...(before?.say === words ? [] : [value('say', words)]),
    ...(before?.holds === (test === '' ? null : test) ? [] : [value('holds', test === '' ? null : test)]),
    ...(before?.said === said ? [] : [value('said', said ? null : false)]),
  ]);
}

export function removeSentence(id: string): Promise<readonly Problem[]> {
  return commitEdits([{ list: 'sentences', remove: id }]);
}

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** A short name from the first words, with a number where it is taken. */
function freshId(words: string): string {
  const taken = new Set(solved.value?.study.sentences.map(({ id }) => id));
  const plain = words.toLowerCase().match(/[a-z0-9]+/g) ?? [];
  const short = plain.filter((word) => !/^(the|a|an|of|is|at|in)$/.test(word)).slice(0, 4);
  const base =
    short
      .join('-')
      .slice(0, longestId)
      .replace(/-+$/, '')
      .replace(/^[^a-z]+/, '') || 'sentence';
  if (!taken.has(base)) return base;
  let number = 2;
  while (taken.has(`${base}-${number}`)) number += 1;
  return `${base}-${number}`;
}
