/** In which order the engines of a study are worked out. */

import type { Problem } from '../numerics/problem.ts';
import type { EngineInput, Study } from '../study/model.ts';

/** In an order in which each finds the one before it that it takes its size from; those compared, with what they need, first. */
export function comparedFirst(study: Study): {
  readonly ordered: Readonly<Record<'compared' | 'others', readonly EngineInput[]>>;
  readonly circle: readonly EngineInput[];
} {
  const { ordered, circle } = inOrderOfSize(study.engines);
  const needed = new Set<string>();
  const need = (id: string | undefined): void => {
    const engine = ordered.find((each) => each.id === id);
    if (engine === undefined || needed.has(engine.id)) return;
    needed.add(engine.id);
    if (engine.size.by === 'same') need(engine.size.as);
  };
  comparedIds(study).forEach(need);
  return {
    ordered: {
      compared: ordered.filter(({ id }) => needed.has(id)),
      others: ordered.filter(({ id }) => !needed.has(id)),
    },
    circle,
  };
}

/** Engines that take their size from another come after it; those in a circle have none and fail. */
function inOrderOfSize(engines: readonly EngineInput[]): {
  readonly ordered: readonly EngineInput[];
  readonly circle: readonly EngineInput[];
} {
  const ordered: EngineInput[] = [];
  let waiting = [...engines];
  while (waiting.length > 0) {
    const ready = waiting.filter(({ size }) => {
      return size.by !== 'same' || !waiting.some((other) => other.id === size.as);
    });
    if (ready.length === 0) break;
    ordered.push(...ready);
    waiting = waiting.filter((engine) => !ready.includes(engine));
  }
  return { ordered, circle: waiting };
}

export const sizeCircle = (circle: readonly EngineInput[], id: string): Problem => ({
  code: 'size-circle',
  what: `The engines ${circle.map((engine) => engine.id).join(', ')} take their size from each other in a circle.`,
  mend: 'Give one of them a throat, an exit or a thrust.',
  where: `engines.${id}.size`,
});

/** The pair the study names, else its first two engines. */
export function comparedIds({ engines, compare }: Study): readonly [string | undefined, string | undefined] {
  return [compare?.base ?? engines[0]?.id, compare?.other ?? engines[1]?.id];
}
