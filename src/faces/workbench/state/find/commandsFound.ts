/** What can be done: in the page at once, or by a command that is put on the clipboard. */

import { computed } from '@preact/signals';
import type { Tint } from '../../../../telling/look/flowRamps.ts';
import { drawBy, pageShown } from '../../flow/flows.ts';
import { setAltitude } from '../altitude.ts';
import { climbing, toggleClimb } from '../climb.ts';
import { beginFilm } from '../film.ts';
import { liveHash } from '../liveHash.ts';
import { openLive } from '../liveRoute.ts';
import { panelsThere, showPanel } from '../panels.ts';
import { beginSentence } from '../sentenceView.ts';
import { redoWords, undoWords } from '../studyHistory.ts';
import { redo, undo } from '../studySteps.ts';
import { closer, onlyDiffering, theme, toggleTheme } from '../view.ts';
import { copy } from './copied.ts';
import { type Thing, thing } from './thing.ts';

const act = (key: string, label: string, detail: string, choose: () => void, also = ''): Thing =>
  thing('Do', key, label, detail, choose, { also });

const tints: readonly { readonly tint: Tint; readonly words: string }[] = [
  { tint: 'pressure', words: 'pressure' },
  { tint: 'mach', words: 'Mach number' },
  { tint: 'temperature', words: 'temperature' },
  { tint: 'speed', words: 'speed' },
];

const looks = computed((): readonly Thing[] => [
  ...tints
    .filter((one) => one.tint !== pageShown.value)
    .map((one) =>
      act(`tint-${one.tint}`, `Draw the gas by ${one.words}`, 'look', () => drawBy(one.tint), 'colour tint'),
    ),
  ...(['throat', 'lip'] as const).map((part) =>
    act(
      `closer-${part}`,
      closer.value === part ? 'Leave the closer view' : `Closer to the ${part}`,
      'look',
      () => {
        closer.value = closer.value === part ? null : part;
      },
      'zoom larger',
    ),
  ),
  act(
    'theme',
    theme.value === 'dark' ? 'Light theme' : 'Dark theme',
    'look',
    toggleTheme,
    'dark light colours',
  ),
]);

/** What the command line does with this study, called from its folder. */
const ofLine: readonly { readonly does: string; readonly command: string; readonly also: string }[] = [
  {
    does: 'Pack the study for publishing',
    command: 'pack . --out ../package',
    also: 'package export hand over',
  },
  { does: 'Check the sentences', command: 'check .', also: 'verdicts' },
  { does: 'Print the script with its numbers', command: 'script .', also: 'words' },
  { does: 'Cut the script to 40 seconds', command: 'cut . --to "40 s"', also: 'shorten length' },
  { does: 'Write captions and chapters', command: 'captions . --out captions', also: 'subtitles' },
  { does: 'Hold a film’s captions against the script', command: 'slips . film.vtt', also: 'errors spoken' },
  { does: 'Find claims in a text', command: 'claims text.txt', also: 'comments sentences' },
  { does: 'Sign what was looked at', command: 'review . --by "your name"', also: 'reviewer sign-off' },
  {
    does: 'Make a clip of the climb',
    command: 'clip . --figure cut --out climb.mp4',
    also: 'animation film video',
  },
  { does: 'Print the numbers of the study', command: 'solve .', also: 'json answer' },
  { does: 'Draw a figure into a file', command: 'draw . --list', also: 'picture svg png' },
];

const steps = computed((): readonly Thing[] => [
  ...(undoWords.value === null
    ? []
    : [act('undo', `Undo: ${undoWords.value}`, 'Ctrl Z', () => void undo(), 'take back')]),
  ...(redoWords.value === null
    ? []
    : [act('redo', `Redo: ${redoWords.value}`, 'Ctrl Shift Z', () => void redo(), 'do again')]),
]);

export const commandsFound = computed((): readonly Thing[] => [
  ...panelsThere.value.map(({ id, label }) => act(`tab-${id}`, label, 'tab', () => showPanel(id))),
  act('live', 'Live answer, full screen', 'view', () => openLive(liveHash(null)), 'on air camera stream'),
  act(
    'overlay',
    'Live answer on a clear ground, for a stream',
    'view',
    () => openLive(`${liveHash(null)}&overlay`),
    'overlay transparent',
  ),
  act(
    'climb',
    climbing.value ? 'Stop the climb' : 'Climb from the pad to vacuum',
    'Altitude',
    toggleClimb,
    'play',
  ),
  act('pad', 'Go to the pad', 'Altitude', () => setAltitude(0), 'sea level ground'),
  act('vacuum', 'Go to vacuum', 'Altitude', () => setAltitude(Number.POSITIVE_INFINITY), 'space'),
  act('film', 'Film of the climb', 'Film', () => void beginFilm(), 'video clip animation'),
  act('sentence', 'Add a sentence', 'Sentences', () => beginSentence('', ''), 'new claim write'),
  act(
    'differing',
    onlyDiffering.value ? 'Show all inputs' : 'Show only inputs that differ',
    'Inputs',
    () => {
      onlyDiffering.value = !onlyDiffering.value;
      showPanel('inputs');
    },
    'difference compare',
  ),
  ...looks.value,
  ...steps.value,
  ...ofLine.map(({ does, command, also }) =>
    thing(
      'Copy a command',
      command,
      does,
      `plumeline ${command.split(' ')[0] ?? ''}`,
      () => copy(`plumeline ${command}`),
      {
        also: `${command} ${also}`,
      },
    ),
  ),
]);
