/** The figures of the study: drawn by the same code as in files, which is loaded when somebody looks for one. */

import { computed, signal } from '@preact/signals';
import type { ConditionRow } from '../../../answer/model.ts';
import type { VehicleWorth } from '../../../answer/worth/index.ts';
import type { FigureKind } from '../../../telling/figures/kind.ts';
import type { FigureFormat } from '../../../telling/look/formats.ts';
import type { Ladder } from '../../solved/ladder.ts';
import { openedRow } from '../../solved/packedRows.ts';
import type { SolvedStudy } from '../../solved/solvedStudy.ts';
import { flowInFigure, flowToCome } from '../flow/flowFigure.ts';
import { weighVehicles } from '../workshop/workshop.ts';
import { wholeAnswer } from './flights.ts';
import { CURVE_EVERY } from './ladders.ts';
import { outdated, solved, solving, tried } from './studyStore.ts';
import { checkedById, checking } from './verdicts.ts';

type Drawing = typeof import('../../../telling/figures/figureKinds.ts') &
  Pick<typeof import('../../../telling/figures/flowKinds.ts'), 'flowFigureNames'>;
const drawing = signal<Drawing | null>(null);
/** Exchange rates take a while: they come when figures are looked at. */
const weighed = signal<{ readonly study: SolvedStudy; readonly worths: readonly VehicleWorth[] } | null>(
  null,
);

/** Name of the figure that lies over the page; null: none. */
export const openFigure = signal<string | null>(null);
export const figureFormat = signal<FigureFormat>('16:9');
export const figureFormats: readonly FigureFormat[] = ['16:9', '9:16', '1:1', 'print'];

export async function loadFigures(): Promise<void> {
  if (drawing.value !== null) return;
  const [kinds, { flowFigureNames }] = await Promise.all([
    import('../../../telling/figures/figureKinds.ts'),
    import('../../../telling/figures/flowKinds.ts'),
  ]);
  drawing.value = { ...kinds, flowFigureNames };
}

/** What exchange rates are drawn of. */
export async function weighForFigures(): Promise<void> {
  const study = solved.value;
  if (solving.value || study === null || study.study.vehicles.length === 0) return;
  const outcome = await weighVehicles();
  if (outcome.ok) weighed.value = { study, worths: outcome.value };
}

/** All that need no question of their own; sweeps, maps and needs are shown where they are asked. */
export const figures = computed((): readonly FigureKind[] => {
  const study = solved.value;
  const answer = wholeAnswer.value;
  if (study === null || answer === null || drawing.value === null) return [];
  const { ladders } = study;
  const curves = Object.fromEntries(Object.entries(ladders).map(([id, ladder]) => [id, curveOf(ladder)]));
  const sentences = [...checkedById.value.values()];
  const vehicleWorths = weighed.value?.study === study ? weighed.value.worths : [];
  const flow = flowInFigure.value;
  const flows = flow === null ? [] : [flow];
  return drawing.value.figureKinds({ answer, curves, sentences, vehicleWorths, flows });
});

/** Figures of whole flows, whether computed or not: name, what it shows, and the id of the engine. */
export const flowFigures = computed(() =>
  drawing.value === null || wholeAnswer.value === null
    ? []
    : drawing.value.flowFigureNames(wholeAnswer.value),
);

/** All that can be opened. */
export const figuresNamed = computed((): readonly { readonly name: string; readonly about: string }[] => {
  const flows = new Set(flowFigures.value.map(({ name }) => name));
  return [...figures.value.filter(({ name }) => !flows.has(name)), ...flowFigures.value];
});

/** Why a figure is not to be saved as it stands; null: it is. */
export const unsettledWords = computed((): string | null => {
  if (tried.value !== null) return 'It shows what is being tried, not the study.';
  if (outdated.value) return 'It shows the study as it was before.';
  if (solving.value) return 'The study is being worked out.';
  if (flowToCome.value) return 'A nearer or finer field is being computed.';
  return checking.value ? 'The sentences are being checked.' : null;
});

/** Every half kilometre is fine enough for a line of a picture; with the fields that cuts are drawn of. */
const curveOf = (ladder: Ladder): readonly ConditionRow[] => [
  ...ladder.rows.flatMap((_, i) =>
    (i * ladder.every) % CURVE_EVERY === 0 ? (openedRow(ladder, i) ?? []) : [],
  ),
  ladder.vacuum,
];
