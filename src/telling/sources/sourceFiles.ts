/** The three lists of references of a package. */

import { type SourcesOf, usedSources } from '../../answer/cited/index.ts';
import { plainText } from '../scene/safeText.ts';
import { bibtex } from './bibtex.ts';
import { cslJson } from './cslJson.ts';
import { readableSources } from './readable.ts';
import { programReference, type Reference, referenceOf } from './reference.ts';

export interface SourceFile {
  readonly name: string;
  readonly content: string;
}

const FROM_MEMORY =
  'Bibliographic details of the works that the program itself cites are from memory where its documentation does not say that they were read: look a work up before you quote it.';

/** Everything the answer rests on, the program last. */
export function referencesOf(sources: SourcesOf): readonly Reference[] {
  const { program, caution } = sources.answer;
  return [...usedSources(sources).map(referenceOf), programReference(program.version, caution)];
}

export function sourceFiles(sources: SourcesOf): readonly SourceFile[] {
  const { question, caution } = sources.answer;
  const references = referencesOf(sources);
  const head = [`Sources: ${plainText(question)}`, caution, FROM_MEMORY];
  return [
    { name: 'sources.json', content: cslJson(references) },
    { name: 'sources.bib', content: bibtex(references, head) },
    { name: 'sources.txt', content: readableSources(references, head) },
  ];
}
