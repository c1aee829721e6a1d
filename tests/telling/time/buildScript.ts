import type { NumberPiece, Piece, Scene, Script, ScriptLine } from '../../../src/study/script/model.ts';
import type { NumbersTold } from '../../../src/telling/time/model.ts';

/** A line in few words: `{{…}}` stands for a live number of that expression. */
export function lineOf(id: string, text: string, rest: Partial<ScriptLine> = {}): ScriptLine {
  const pieces = text.split(/(\{\{.*?\}\})/).flatMap((part): readonly Piece[] => {
    if (part === '') return [];
    if (!part.startsWith('{{')) return [{ kind: 'words', text: part, from: 0, to: part.length }];
    return [numberOf(part.slice(2, -2))];
  });
  return { id, pieces, weight: 1, relies: [], pause: 0, from: 0, to: 0, ...rest };
}

const numberOf = (expression: string): NumberPiece => ({
  kind: 'number',
  expression,
  about: false,
  spoken: false,
  from: 0,
  to: 0,
});

export function sceneOf(id: string, lines: readonly ScriptLine[], rest: Partial<Scene> = {}): Scene {
  return { id, name: id, weight: 0, relies: [], lines, shown: [], from: 0, to: 0, ...rest };
}

export function scriptOf(scenes: readonly Scene[], rest: Partial<Script> = {}): Script {
  return { title: 'A script', pace: 140, densePace: 120, units: 'metric', cuts: [], scenes, ...rest };
}

/** Every live number is 120 bar. */
export const PRESSURE: NumbersTold = () => ({
  written: '120 bar',
  said: 'a hundred and twenty bar',
  value: 120e5,
  dimension: [1, -1, -2, 0, 0, 0],
});
