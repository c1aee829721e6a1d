/** Published figures beside the computed ones, one block an engine that has any. */

import type { EngineAnswer } from '../../../answer/model.ts';
import { checkWords, figureWords, solveWords } from '../../../answer/published/words.ts';
import { wrapped } from './wrap.ts';

export function publishedText(engines: readonly EngineAnswer[], width: number): string {
  return engines
    .filter(({ published }) => published.length > 0)
    .map((engine) => engineText(engine, width))
    .join('\n\n');
}

function engineText(engine: EngineAnswer, width: number): string {
  const rows = engine.published.map((figure, i) => {
    const { what, published, computed, difference, verdict, source } = figureWords(figure);
    const beside = difference === '' ? computed : `${computed} computed: ${difference}, ${verdict}`;
    return wrapped(
      `${what}: ${published} published, ${beside}. Source: ${source.replace(/\.$/, '')}.`,
      width,
      '     ',
      `${`${i + 1}`.padStart(3)}. `,
    );
  });
  const more = [
    ...checkWords(engine.publishedChecks),
    ...[solveWords(engine)].filter((text) => text !== null),
  ];
  return [
    `Published figures of ${engine.name}`,
    ...rows,
    ...more.map((text) => wrapped(text, width, '    ', '  - ')),
  ].join('\n');
}
