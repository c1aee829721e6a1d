/** Which whole flows a script and a package show, as figures and as clips. */

import type { StudyAnswer } from '../../answer/model.ts';
import type { NamedClip } from '../clips/namedClips.ts';
import { wordsOfClip } from '../clips/wordsOfClip.ts';
import { type FlowWanted, flowOfClip, flowOfFigure } from '../figures/flowsWanted.ts';
import type { MediaSlot } from './mediaSlots.ts';

export interface FlowsShown {
  /** Each once. */ readonly wanted: readonly FlowWanted[];
  /** Names of the figures, those that stand for a clip where nothing may move among them. */
  readonly figures: readonly string[];
}

/** @param asked names of clips that the study asks for besides the script */
export function flowsShown(
  answer: Pick<StudyAnswer, 'engines'>,
  slots: readonly Pick<MediaSlot, 'name' | 'shown'>[],
  clips: readonly NamedClip[],
  asked: readonly string[],
): FlowsShown {
  const wanted = new Map<string, FlowWanted>();
  const figures = new Set<string>();
  const add = (name: string, words: string): void => {
    const clip = clips.find((each) => each.name === name);
    const figure = clip?.still ?? name;
    const still = flowOfFigure(answer, figure, 0);
    if (still === null) return;
    figures.add(figure);
    const moving =
      clip === undefined
        ? null
        : flowOfClip(answer, { from: 0, to: 'vacuum', at: 0, ...clip.asked, ...wordsOfClip(words) });
    for (const flow of [still, ...(moving === null ? [] : [moving])]) wanted.set(JSON.stringify(flow), flow);
  };
  for (const { name, shown } of slots) add(name, shown.words);
  for (const name of asked) add(name, '');
  return { wanted: [...wanted.values()], figures: [...figures] };
}
