/** The figures of whole flows: a field by each of what it holds, and its pressure along axis and wall. */

import type { FlowField, Shown } from '../../answer/flow/index.ts';
import type { EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import { drawnStyles } from './drawnEngines.ts';
import { figureFlow } from './figureFlow.ts';
import { figureFlowAlong } from './figureFlowAlong.ts';
import { figureCsv } from './figureTable.ts';
import { flowNear } from './flowNear.ts';
import { flowAlongRows, flowRows } from './flowRows.ts';
import { USUAL_STREAMLINES } from './flowStreamlines.ts';
import { endedWords, WITHOUT_FRICTION } from './flowWords.ts';
import type { FigureKind } from './kind.ts';
import type { FigureOptions } from './options.ts';

/** By the end of a figure's name. */
const VIEWS: readonly { readonly ending: string; readonly shown: Shown; readonly words: string }[] = [
  { ending: '', shown: 'pressure', words: 'pressure' },
  { ending: '-mach-number', shown: 'mach', words: 'Mach number' },
  { ending: '-temperature', shown: 'temperature', words: 'temperature' },
  { ending: '-density', shown: 'density', words: 'density' },
  { ending: '-speed', shown: 'speed', words: 'speed, with streamlines' },
  { ending: '-density-gradient', shown: 'density gradient', words: 'how steeply the density changes' },
];
const ALONG = '-along';

/** Engines that may have a whole flow: those whose wall is a shape. */
export const flowEngines = ({ engines }: Pick<StudyAnswer, 'engines'>): readonly EngineAnswer[] =>
  Object.values(engines).filter(({ contourIs }) => contourIs === 'shape');

/** Names and what they show, whether computed or not. */
export function flowFigureNames(
  answer: Pick<StudyAnswer, 'engines'>,
): readonly { readonly name: string; readonly about: string; readonly engine: string }[] {
  return flowEngines(answer).flatMap(({ id, name }) => [
    ...VIEWS.map(({ ending, words }) => ({
      name: `flow-${id}${ending}`,
      about: `the whole flow of ${name}, computed without friction: ${words}`,
      engine: id,
    })),
    {
      name: `flow-${id}${ALONG}`,
      about: `the whole flow of ${name}: pressure along axis and wall`,
      engine: id,
    },
  ]);
}

/** Those of the engines that have fields. @param wanted names; absent: all */
export function flowKinds(
  answer: StudyAnswer,
  flows: readonly FlowField[],
  wanted?: readonly string[],
): readonly FigureKind[] {
  const styles = drawnStyles(answer);
  return flowFigureNames(answer)
    .filter(({ engine }) => flows.some((field) => field.engine === engine))
    .filter(({ name }) => wanted?.includes(name) ?? true)
    .map(({ name, about, engine }): FigureKind => {
      const view = VIEWS.find(({ ending }) => name === `flow-${engine}${ending}`);
      const fieldAt = (options: FigureOptions): FlowField => flowNear(flows, engine, options.altitude ?? 0)!;
      return {
        name,
        about,
        altitude: 0,
        draw: (options) =>
          view === undefined
            ? figureFlowAlong(
                fieldAt(options),
                answer.engines[engine] ?? null,
                options.styles?.[engine] ?? styles[engine]!,
                options,
              )
            : figureFlow(fieldAt(options), view.shown, {
                ...options,
                ...(view.shown === 'speed' && { streamlines: USUAL_STREAMLINES }),
              }),
        csv: (options) => {
          const field = fieldAt(options);
          const whatItIs = ['Inviscid, computed.', WITHOUT_FRICTION, endedWords(field)];
          return figureCsv(
            (view === undefined ? flowAlongRows : flowRows)(field),
            whatItIs.filter((words) => words !== '').join(' '),
          );
        },
      };
    });
}
