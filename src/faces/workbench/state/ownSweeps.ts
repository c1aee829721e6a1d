/** The sweeps and maps that a study brings, and which of them the page shows. */

import type { Study } from '../../../study/model.ts';

export interface OwnSweep {
  /** A map has `map:` before its id. */ readonly key: string;
  readonly words: string;
}

const MAP = 'map:';
export const mapKey = (id: string): string => `${MAP}${id}`;

/** Sweeps first, then maps, each in the order of the study. */
export function ownSweeps(study: Pick<Study, 'sweeps' | 'maps'> | undefined): readonly OwnSweep[] {
  return [
    ...(study?.sweeps ?? []).map(({ id, title }) => ({ key: id, words: title ?? id })),
    ...(study?.maps ?? []).map(({ id, title }) => ({ key: mapKey(id), words: title ?? id })),
  ];
}

/**
 * What is shown: what was chosen; before anybody has chosen, the first that the study brings.
 * @param chosen a key; {@link TRIAL} for the one that is tried out; null where nobody has chosen
 * @returns null: the one that is tried out
 */
export function shownKey(chosen: string | null, own: readonly OwnSweep[]): string | null {
  if (chosen === null) return own[0]?.key ?? null;
  return own.some(({ key }) => key === chosen) ? chosen : null;
}

/** Chosen where the one to try out is wanted; no id of a study is empty. */
export const TRIAL = '';
