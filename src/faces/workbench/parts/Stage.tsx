/** The engines cut open side by side at one scale, and the altitude column that drives everything. */

import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { ConditionRow, StudyAnswer } from '../../../answer/model.ts';
import { cutPanel } from '../../../telling/figures/cutPanel.ts';
import type { Altitude } from '../../../telling/figures/options.ts';
import { type OverAltitudePanel, overAltitudePanel } from '../../../telling/figures/overAltitude.ts';
import { SCREEN_LINES, SCREEN_TYPE } from '../../../telling/look/formats.ts';
import { nodesToSvg } from '../../../telling/scene/svg.ts';
import { type ShownEngine, shownEngines } from '../state/pair.ts';
import { rowOfLadder } from '../state/shown.ts';
import { solved } from '../state/studyStore.ts';
import { altitude, engineInFront, theme } from '../state/view.ts';
import { AltitudeHandle } from './AltitudeHandle.tsx';
import { matchMarks } from './matchMarks.ts';

const style = { type: SCREEN_TYPE, line: SCREEN_LINES };
/** Widths of the layout [px]: the column between two engines, the column beside one. */
const columnBetween = 232;
const columnBeside = 176;
const gutter = 40;
/** Below this width of the page one engine is shown at a time. */
const narrow = 700;

export function Stage() {
  const place = useRef<HTMLElement>(null);
  const size = useSignal({ width: 984, height: 480 });
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry === undefined) return;
      const { width, height } = entry.contentRect;
      size.value = { width: Math.round(width), height: Math.round(height) };
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  const engines = shownEngines.value;
  const computed = engines.filter((engine) => engine.result.ok);
  const isNarrow = size.value.width < narrow;
  return (
    <section class="stage-place" aria-label="Engines">
      {isNarrow && engines.length > 1 && <EngineSwitch engines={engines} />}
      <section class="stage" ref={place} aria-label="Engines cut open">
        {computed.length > 0 && (
          <Drawing width={size.value.width} height={size.value.height} narrow={isNarrow} />
        )}
      </section>
      {engines.map((engine) =>
        engine.result.ok ? null : (
          <p key={engine.id} class="fault" role="alert">
            {engine.input.name} cannot be computed. {engine.result.problem.what} {engine.result.problem.mend}
          </p>
        ),
      )}
    </section>
  );
}

function EngineSwitch({ engines }: { readonly engines: readonly ShownEngine[] }) {
  return (
    <fieldset class="engine-switch">
      <legend class="unseen">Engine shown</legend>
      {engines.map(({ id, input, order }) => (
        <button
          key={id}
          type="button"
          class={`text-${order}`}
          aria-pressed={engineInFront.value === order - 1}
          onClick={() => {
            engineInFront.value = order === 1 ? 0 : 1;
          }}
        >
          {input.name}
        </button>
      ))}
    </fieldset>
  );
}

interface DrawingProps {
  readonly width: number;
  readonly height: number;
  readonly narrow: boolean;
}

function Drawing({ width, height, narrow: isNarrow }: DrawingProps) {
  const engines = shownEngines.value;
  const pair = useMemo(() => pairAnswer(engines, solved.value?.answer ?? null), [engines]);
  const curves = useMemo(() => curvesOf(engines), [engines]);
  const columnWidth = isNarrow ? columnBeside : columnBetween;
  const two = !isNarrow && Object.keys(pair?.engines ?? {}).length > 1;
  const left = two ? (width - columnWidth) / 2 : width - columnWidth;
  const panel = useMemo(
    () =>
      pair === null
        ? null
        : overAltitudePanel(
            pair,
            'specificImpulse',
            { x: left, y: 8, width: columnWidth, height: height - 8 },
            style,
            { size: { width: 480, height: 480 }, theme: 'light', curves },
            left + columnWidth,
          ),
    [pair, curves, left, columnWidth, height],
  );
  const still = useMemo(() => (panel === null ? '' : toMarkup(panel.nodes, 'still')), [panel, theme.value]);
  if (pair === null || panel === null) return null;
  const here: Altitude = Number.isFinite(altitude.value) ? altitude.value * 1000 : 'vacuum';
  const rows = rowsHere(engines);
  const front = engines[engineInFront.value] ?? engines[0];
  const cut = cutPanel(pair, here, { x: 0, y: 0, width: two ? width : left - 12, height }, style, {
    size: { width: 480, height: 480 },
    theme: 'light',
    rows,
    legend: true,
    key: false,
    middle: columnWidth + gutter,
    ...(isNarrow && front !== undefined ? { only: front.id } : {}),
  });
  return (
    <>
      <Markup name="cut" width={width} height={height} markup={toMarkup(cut.nodes, 'cut')} />
      <Markup name="column" width={width} height={height} markup={still} />
      <Markup
        name="cursor"
        width={width}
        height={height}
        markup={toMarkup([...panel.cursor(here, rows), ...matchMarks(panel, engines, isNarrow)], 'cursor')}
      />
      <AltitudeHandle panel={panel as OverAltitudePanel} width={width} height={height} />
    </>
  );
}

/** An answer that holds only the engines shown, in the order of the pair, so that each keeps its style. */
function pairAnswer(engines: readonly ShownEngine[], answer: StudyAnswer | null): StudyAnswer | null {
  if (answer === null) return null;
  const shown = engines.flatMap(({ id, result }) => (result.ok ? [[id, result.answer] as const] : []));
  if (shown.length === 0) return null;
  return { ...answer, engines: Object.fromEntries(shown), comparison: null };
}

function curvesOf(engines: readonly ShownEngine[]): Record<string, readonly ConditionRow[]> {
  return Object.fromEntries(
    engines.flatMap(({ id, result }) => {
      if (!result.ok) return [];
      const { rows, vacuum } = result.ladder;
      // Every half kilometre is fine enough for a line of a few hundred pixels.
      return [[id, [...rows.filter((_, i) => i % 5 === 0), vacuum]] as const];
    }),
  );
}

function rowsHere(engines: readonly ShownEngine[]): Record<string, ConditionRow> {
  return Object.fromEntries(
    engines.flatMap(({ id, result }) =>
      result.ok ? [[id, rowOfLadder(result.ladder, altitude.value)] as const] : [],
    ),
  );
}

function toMarkup(nodes: Parameters<typeof nodesToSvg>[0], prefix: string): string {
  return nodesToSvg(nodes, 'light', { colours: 'variables', idPrefix: prefix });
}

interface MarkupProps {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** Made by the scene writer, which escapes every word of the study. */ readonly markup: string;
}

function Markup({ name, width, height, markup }: MarkupProps) {
  const place = useRef<SVGSVGElement>(null);
  const drawn = useRef('');
  useEffect(() => {
    if (place.current !== null && drawn.current !== markup) {
      place.current.innerHTML = markup;
      drawn.current = markup;
    }
    document.documentElement.dataset.ready = 'true';
  }, [markup]);
  return <svg ref={place} class={name} width={width} height={height} aria-hidden="true" />;
}
