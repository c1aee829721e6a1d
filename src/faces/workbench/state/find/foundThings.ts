/** All that is no number: sentences, sweeps and needs of the study, tabs and commands, other studies and starters. */

import { computed } from '@preact/signals';
import { indexOf, rank } from '../../../../answer/find/index.ts';
import { capital } from '../../../../study/capital.ts';
import { figuresNamed, loadFigures, openFigure } from '../figures.ts';
import { liveSentenceHash } from '../liveHash.ts';
import { ownSweeps } from '../ownSweeps.ts';
import { showPanel } from '../panels.ts';
import { showSentence } from '../sentenceView.ts';
import type { NearStudy } from '../studyLink.ts';
import { solved } from '../studyStore.ts';
import { chosenSweep } from '../sweepTrial.ts';
import { commandsFound } from './commandsFound.ts';
import { copy, quoted } from './copied.ts';
import type { Found, FoundGroup } from './found.ts';
import { forgetBeside } from './foundBeside.ts';
import { near, readNearAgain } from './near.ts';
import { type Thing, thing } from './thing.ts';

/** Looked through anew each time the box is opened. */
export async function lookAround(): Promise<void> {
  loadFigures().catch(reportError);
  forgetBeside();
  await readNearAgain();
}

const ofStudy = computed((): readonly Thing[] => {
  const study = solved.value?.study;
  if (study === undefined) return [];
  return [
    ...study.sentences.map(({ id, say }) =>
      thing('In this study', `sentence-${id}`, say, 'sentence', () => showSentence(id), {
        also: id,
        live: liveSentenceHash(id),
      }),
    ),
    ...ownSweeps(study).map(({ key, words }) =>
      thing(
        'In this study',
        `sweep-${key}`,
        words,
        key.startsWith('map:') ? 'map' : 'sweep',
        () => {
          chosenSweep.value = key;
          showPanel('sweeps');
        },
        { also: `${key} figure curve` },
      ),
    ),
    ...study.needs.map(({ id, title }) =>
      thing('In this study', `need-${id}`, title ?? id, 'need', () => showPanel('worth'), {
        also: `${id} needs`,
      }),
    ),
    ...study.vehicles.map(({ id, name }) =>
      thing('In this study', `vehicle-${id}`, name, 'vehicle', () => showPanel('vehicles'), {
        also: `${id} rocket stages payload flight ascent figure`,
      }),
    ),
    ...study.analogies.map(({ id, say }) =>
      thing('In this study', `analogy-${id}`, say, 'likeness', () => showPanel('sentences'), { also: id }),
    ),
    ...study.facts.map(({ id, say }) =>
      thing('In this study', `fact-${id}`, say, 'reported', () => showPanel('sentences'), { also: id }),
    ),
  ];
});

function ofOthers(
  group: FoundGroup,
  studies: readonly NearStudy[],
  command: (name: string) => string,
): readonly Thing[] {
  return studies.flatMap(({ name, question, engines, sentences }) => [
    thing(group, name, question, name, () => copy(command(name)), {
      also: [name, ...engines.map((engine) => engine.name)].join(' '),
    }),
    ...sentences.map((say, i) =>
      thing(group, `${name}-${i}`, say, name, () => copy(command(name)), { also: name, weight: -0.1 }),
    ),
  ]);
}

const ofFigures = computed((): readonly Thing[] =>
  figuresNamed.value
    // A sentence is found by its own words already.
    .filter(({ name }) => !name.startsWith('sentence-'))
    .map(({ name, about }) =>
      thing(
        'In this study',
        `figure-${name}`,
        capital(about),
        'figure',
        () => {
          openFigure.value = name;
        },
        { also: `${name} figure picture draw plot chart` },
      ),
    ),
);

const index = computed(() =>
  indexOf([
    ...ofStudy.value,
    ...ofFigures.value,
    ...commandsFound.value,
    ...ofOthers(
      'Studies beside this one',
      near.value.studies,
      (name) => `plumeline open ${quoted(`../${name}`)}`,
    ),
    ...ofOthers('Starters', near.value.starters, (name) => `plumeline new my-study --from ${name}`),
  ]),
);

/** What is told of each group at most. */
const most: Readonly<Record<FoundGroup, number>> = {
  Numbers: 0,
  'Numbers of studies beside this one': 0,
  'In this study': 5,
  Do: 4,
  'Copy a command': 3,
  'Studies beside this one': 4,
  Starters: 3,
};

export interface RankedFound {
  readonly found: Found;
  readonly score: number;
}

export function foundThings(typed: string): readonly RankedFound[] {
  const told = new Map<FoundGroup, number>();
  return rank(typed, index.value).flatMap(({ item, score }) => {
    const count = told.get(item.group) ?? 0;
    if (count >= most[item.group]) return [];
    told.set(item.group, count + 1);
    return [{ found: item, score }];
  });
}
