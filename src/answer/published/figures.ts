/** Published rows beside what the models give. */

import type { PublishedRow, SourceInput } from '../../study/model.ts';
import { halfSpan } from '../../study/plainQuantity.ts';
import type { EngineAnswer, Reason } from '../model.ts';
import type { EngineSolution } from '../solution.ts';
import { ambientPressureOf, comparedWith, computedValue } from './computedValue.ts';
import type { PublishedFigure } from './model.ts';

/** A computed value on the edge of a band is inside it in spite of the last bits. */
const EDGE = 1e-12;

/** How far the true value may lie from the one stated [SI]: the ±, half of the range, or half of the last digit. */
export function leeway(row: PublishedRow): number {
  return halfSpan(row.value) ?? row.rounding;
}

export function publishedFigures(
  engine: EngineSolution,
  sources: readonly SourceInput[],
  reasons: Reason[],
): readonly PublishedFigure[] {
  return (engine.input.published?.rows ?? []).map((row, i) => {
    const { value: computed, absent } = computedValue(engine, row);
    const { value, plusMinus, text } = row.value;
    const difference = computed === null ? null : computed - value;
    if (absent !== null) {
      for (const key of ['computed', 'difference', 'share', 'within']) {
        reasons.push({
          path: `published[${i}].${key}`,
          reason: absent,
          mend: 'Compare the figure in vacuum or at a higher altitude, or delete the row.',
        });
      }
    }
    return {
      quantity: row.quantity,
      comparedWith: comparedWith(engine.input, row.quantity),
      at: row.at && {
        altitude: row.at.kind === 'altitude' ? row.at.altitude.value : null,
        ambientPressure: ambientPressureOf(row.at),
      },
      value,
      plusMinus,
      rounding: row.rounding,
      text,
      ...sourceOf(row, sources),
      computed,
      difference,
      share: difference === null ? null : difference / value,
      within: difference === null ? null : Math.abs(difference) <= leeway(row) + EDGE * Math.abs(value),
    };
  });
}

function sourceOf(
  { source }: PublishedRow,
  sources: readonly SourceInput[],
): Pick<PublishedFigure, 'source' | 'sourceKey'> {
  if ('words' in source) return { source: source.words, sourceKey: null };
  const known = sources.find(({ id }) => id === source.key);
  return { source: known?.title ?? source.key, sourceKey: source.key };
}

/** Which quantity the numbers at a path inside an engine's answer are of: `published[2].computed` → `cycle.thrust`. */
export function publishedQuantityAt(
  engine: Pick<EngineAnswer, 'published' | 'publishedChecks' | 'publishedSolve'>,
  path: string,
): string | undefined {
  if (path.startsWith('publishedSolve.')) return engine.publishedSolve?.quantity;
  const [, list, index, field] = /^(published|publishedChecks)\[(\d+)\]\.?(\w*)/.exec(path) ?? [];
  if (list === 'published') {
    const figure = engine.published[Number(index)];
    return field === 'computed' ? figure?.comparedWith : figure?.quantity;
  }
  return list === undefined ? undefined : engine.publishedChecks[Number(index)]?.quantity;
}
