/** All that is no number: sentences, sweeps and needs of the study, tabs and commands, other studies and starters. */

import { computed, signal } from '@preact/signals';
import { type Findable, indexOf, rank } from '../../../../answer/find/index.ts';
import { climbing, toggleClimb } from '../climb.ts';
import { liveHash } from '../liveHash.ts';
import { openLive } from '../liveRoute.ts';
import { ownSweeps } from '../ownSweeps.ts';
import { panelsThere, showPanel } from '../panels.ts';
import { showSentence } from '../sentenceView.ts';
import { type Near, type NearStudy, readNear } from '../studyLink.ts';
import { redo, redoWords, solved, undo, undoWords } from '../studyStore.ts';
import { chosenSweep } from '../sweepTrial.ts';
import { setAltitude, theme, toggleTheme } from '../view.ts';
import type { Found, FoundGroup } from './found.ts';

const near = signal<Near>({ studies: [], starters: [] });
/** Looked through anew each time the box is opened. */
export async function lookAround(): Promise<void> {
  near.value = await readNear();
}

/** What was put on the clipboard just now, in words; null: nothing. */
export const copied = signal<string | null>(null);

type Thing = Findable & Found;

/** What is in the study itself comes before the like of it elsewhere. */
const nearest: Readonly<Partial<Record<FoundGroup, number>>> = { 'In this study': 0.25, Do: 0.2 };

const thing = (
  group: FoundGroup,
  key: string,
  label: string,
  detail: string,
  choose: () => void,
  more: Partial<Thing> = {},
): Thing => ({
  key: `${group}-${key}`,
  group,
  label,
  detail,
  choose,
  live: null,
  weight: nearest[group] ?? 0,
  ...more,
});

const ofStudy = computed((): readonly Thing[] => {
  const study = solved.value?.study;
  if (study === undefined) return [];
  return [
    ...study.sentences.map(({ id, say }) =>
      thing('In this study', `sentence-${id}`, say, 'sentence', () => showSentence(id), { also: id }),
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
    ...study.facts.map(({ id, say }) =>
      thing('In this study', `fact-${id}`, say, 'reported', () => showPanel('sentences'), { also: id }),
    ),
  ];
});

const ofPage = computed((): readonly Thing[] => [
  ...panelsThere.value.map(({ id, label }) => thing('Do', `tab-${id}`, label, 'tab', () => showPanel(id))),
  thing('Do', 'live', 'Live answer, full screen', 'view', () => openLive(liveHash(null)), {
    also: 'on air camera stream',
  }),
  thing(
    'Do',
    'overlay',
    'Live answer on a clear ground, for a stream',
    'view',
    () => openLive(`${liveHash(null)}&overlay`),
    { also: 'overlay transparent' },
  ),
  thing(
    'Do',
    'climb',
    climbing.value ? 'Stop the climb' : 'Climb from the pad to vacuum',
    'Altitude',
    toggleClimb,
    { also: 'play' },
  ),
  thing('Do', 'pad', 'Go to the pad', 'Altitude', () => setAltitude(0), { also: 'sea level ground' }),
  thing('Do', 'vacuum', 'Go to vacuum', 'Altitude', () => setAltitude(Number.POSITIVE_INFINITY), {
    also: 'space',
  }),
  thing('Do', 'theme', theme.value === 'dark' ? 'Light theme' : 'Dark theme', 'look', toggleTheme, {
    also: 'dark light colours',
  }),
  ...(undoWords.value === null
    ? []
    : [thing('Do', 'undo', `Undo: ${undoWords.value}`, 'Ctrl Z', () => void undo())]),
  ...(redoWords.value === null
    ? []
    : [thing('Do', 'redo', `Redo: ${redoWords.value}`, 'Ctrl Shift Z', () => void redo())]),
]);

/** A folder may be called anything: pasted into a shell its name stays a name. */
const quoted = (path: string): string =>
  /^[\w./-]+$/.test(path) ? path : `'${path.replaceAll("'", "'\\''")}'`;

function copy(command: string): void {
  navigator.clipboard.writeText(command).then(
    () => {
      copied.value = `Copied: ${command}`;
    },
    () => {
      copied.value = `To open it: ${command}`;
    },
  );
}

function ofOthers(
  group: FoundGroup,
  studies: readonly NearStudy[],
  command: (name: string) => string,
): readonly Thing[] {
  return studies.flatMap(({ name, question, engines, sentences }) => [
    thing(group, name, question, name, () => copy(command(name)), { also: [name, ...engines].join(' ') }),
    ...sentences.map((say, i) =>
      thing(group, `${name}-${i}`, say, name, () => copy(command(name)), { also: name, weight: -0.1 }),
    ),
  ]);
}

const index = computed(() =>
  indexOf([
    ...ofStudy.value,
    ...ofPage.value,
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
  'In this study': 5,
  Do: 4,
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
