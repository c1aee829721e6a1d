/** Numbers of the studies beside this one: offered by plain words, worked out for the one that is chosen. */

import { signal } from '@preact/signals';
import { needsOf } from '../../../../answer/asked/askProblem.ts';
import { askKey } from '../../../../answer/asked/model.ts';
import { plainAsk } from '../../../../answer/asked/plainAsk.ts';
import { show } from '../../../../answer/display.ts';
import { findQuantities, readWanted, saysName } from '../../../../answer/find/index.ts';
import { tellNumberOf } from '../../workshop/workshop.ts';
import { type NearStudy, readNearText } from '../studyLink.ts';
import type { Found } from './found.ts';
import { isOneNumber, placeMeant, placeWords } from './foundNumbers.ts';
import { near } from './near.ts';

/** Offered in all, and of a study that is not named. */
const MOST = 4;
const OF_OTHERS = 1;

const told = signal<ReadonlyMap<string, string>>(new Map());

/** A study may have been changed since: what was worked out is forgotten. */
export function forgetBeside(): void {
  told.value = new Map();
}

/** Those of a study or an engine that is named come first. */
export function foundBeside(typed: string): readonly Found[] {
  if (typed.trim() === '') return [];
  const all = near.value.studies.map((study) => ofStudy(study, typed));
  return [...all.filter(({ isNamed }) => isNamed), ...all.filter(({ isNamed }) => !isNamed)]
    .flatMap(({ found }) => found)
    .slice(0, MOST);
}

function ofStudy(
  study: NearStudy,
  typed: string,
): { readonly isNamed: boolean; readonly found: readonly Found[] } {
  const isStudyNamed = saysName(typed, study.name);
  const wanted = readWanted(isStudyNamed ? typed.replaceAll(study.name, ' ') : typed, study.engines);
  const isNamed = isStudyNamed || wanted.owners.length > 0;
  const entry = findQuantities(wanted)
    .map(({ item }) => item)
    .find((item) => item.notAsked === undefined && item.place !== 'air' && isOneNumber(item));
  if (entry === undefined || entry.place === 'comparison') return { isNamed, found: [] };
  const ambient = needsOf(entry).ambient ? placeMeant(wanted) : null;
  const where = ambient === null ? '' : ` ${placeWords(ambient)}`;
  const owners = study.engines
    .filter(({ id }) => wanted.owners.length === 0 || wanted.owners.includes(id))
    .slice(0, isNamed ? MOST : OF_OTHERS);
  const found = owners.map(({ id, name }): Found => {
    const ask = plainAsk(id, entry.name, ambient);
    const key = `beside-${study.name}-${askKey(ask)}`;
    return {
      key,
      group: 'Numbers of studies beside this one',
      label: `${name} in ${study.name}, ${entry.label}${where}`,
      detail: told.value.get(key) ?? 'to be worked out',
      choose() {
        tell(key, 'being worked out …');
        numberOf(study.name, ask).then(
          (text) => tell(key, text),
          (error: unknown) => {
            reportError(error);
            tell(key, 'could not be worked out');
          },
        );
      },
      live: null,
    };
  });
  return { isNamed, found };

  async function numberOf(name: string, ask: ReturnType<typeof plainAsk>): Promise<string> {
    const text = await readNearText(name);
    if (text === null) return 'the study is gone';
    const answer = await tellNumberOf(text, ask);
    return answer.ok ? show(ask.quantity, answer.value).text : `no number: ${answer.problem.what}`;
  }
}

function tell(key: string, text: string): void {
  told.value = new Map(told.value).set(key, text);
}
