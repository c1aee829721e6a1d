/** The engines cut open side by side at one scale, and the altitude column that drives everything. */

import { useSignal } from '@preact/signals';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import type { ConditionRow } from '../../../answer/model.ts';
import { cutPanel } from '../../../telling/figures/cutPanel.ts';
import type { Altitude } from '../../../telling/figures/options.ts';
import { overAltitudePanel } from '../../../telling/figures/overAltitude.ts';
import { SCREEN_LINES, SCREEN_TYPE } from '../../../telling/look/formats.ts';
import { textWidth, wrapText } from '../../../telling/look/measureText.ts';
import { FlowOver } from '../flow/FlowOver.tsx';
import { fieldsOnScreen, underFlows } from '../flow/underFlows.ts';
import { CanvasLayer } from '../heart/CanvasLayer.tsx';
import { shapesOf, wordsIn } from '../heart/heartNodes.ts';
import { litCurves } from '../heart/litCurves.ts';
import { altitude } from '../state/altitude.ts';
import { curvesOf, drawnOf, pairAnswer, rowsHere } from '../state/drawn.ts';
import { enginesOnScreen, failedElsewhere, type ShownEngine } from '../state/pair.ts';
import { charted, litEngines } from '../state/selected.ts';
import { solved } from '../state/studyStore.ts';
import { closer, engineInFront, tint } from '../state/view.ts';
import { AltitudeHandle } from './AltitudeHandle.tsx';
import { CloserView, closerAcross } from './CloserView.tsx';
import { DrawnNumbers } from './DrawnNumbers.tsx';
import { EngineMark } from './EngineMark.tsx';
import { Layer } from './Layer.tsx';
import { MatchButtons } from './MatchButtons.tsx';
import { matchMarks } from './matchMarks.ts';
import { standingWords } from './standingWords.ts';
import { TracedNumber } from './TracedNumber.tsx';

const style = { type: SCREEN_TYPE, line: SCREEN_LINES };
/** Widths of the layout [px]: the column between two engines, the column beside one. */
const columnBetween = 232;
const columnBeside = 184;
const gutter = 24;
/** The scale begins lower than the drawing: in vacuum the bob hangs above it [px]. */
const columnTop = 32;
/** What a marker at the edge of the column may reach past it [px]. */
const overhang = 12;
/** Room beside the drawing in which the air fades [px]. */
const fade = 20;
/** Height of the line of names [px], and of a line of facts folded under it where room is short. */
const nameLine = 28;
const factLine = 18;
/** Type of the names and facts [px]. */
const nameSize = 17;
const factSize = 14;
/** Words below the lips are set a little smaller than a label; 13 px is the least on screen. */
const cutStyle = { type: { ...SCREEN_TYPE, label: SCREEN_TYPE.label / 0.92 }, line: SCREEN_LINES };
/** The bar of the scale at the left of the foot [px]. */
const scaleBarHeight = 40;
/** Below this width of the stage one engine is shown at a time. */
const narrowBelow = 700;

const tintWords = {
  pressure: 'pressure',
  mach: 'Mach number',
  temperature: 'temperature',
  speed: 'speed',
} as const;

/** On less than this [px] nothing could be read; so small is only a page that is not laid out yet. */
const smallest = 260;

export function Stage() {
  const place = useRef<HTMLElement>(null);
  const size = useSignal({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const measure = () => {
      const { width, height } = element.getBoundingClientRect();
      size.value = { width: Math.round(width), height: Math.round(height) };
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  const engines = enginesOnScreen.value;
  const drawable = engines.filter((engine) => drawnOf(engine) !== null);
  const isNarrow = size.value.width < narrowBelow;
  const front = engines[engineInFront.value] ?? engines[0];
  return (
    <section class="stage-place" aria-label="Engines">
      {isNarrow && engines.length > 1 && <EngineSwitch engines={engines} />}
      <section class="stage" ref={place} aria-label="Engines cut open">
        {drawable.length > 0 && size.value.width >= smallest && size.value.height >= smallest && (
          <Drawing
            width={size.value.width}
            height={size.value.height}
            only={isNarrow ? (front?.id ?? null) : null}
            isNarrow={isNarrow}
          />
        )}
      </section>
      {engines.map(({ id, input, result }) =>
        result.ok || result.isAwaited ? null : (
          <p key={id} class="fault">
            {input.name} cannot be computed. {result.problem.what} {result.problem.mend}
            {result.before !== null && ' The drawing shows it as it was before.'}
          </p>
        ),
      )}
      {failedElsewhere.value.map(({ id, name, problem }) => (
        <p key={id} class="fault">
          {name}, not shown here, cannot be computed. {problem.what} {problem.mend}
        </p>
      ))}
    </section>
  );
}

function EngineSwitch({ engines }: { readonly engines: readonly ShownEngine[] }) {
  return (
    <fieldset class="engine-switch">
      <legend class="unseen">Engine shown</legend>
      {engines.map(({ id, input, style: own }, index) => (
        <button
          key={id}
          type="button"
          class={`text-${own.order}`}
          aria-pressed={engineInFront.value === index}
          onClick={() => {
            engineInFront.value = index === 0 ? 0 : 1;
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
  /** The one engine there is room for; null where all are drawn. */ readonly only: string | null;
  readonly isNarrow: boolean;
}

function Drawing({ width, height, only, isNarrow }: DrawingProps) {
  const engines = enginesOnScreen.value;
  const pair = useMemo(() => pairAnswer(engines, solved.value?.answer ?? null), [engines]);
  const styles = useMemo(
    () => Object.fromEntries(engines.map((engine) => [engine.id, engine.style])),
    [engines],
  );
  const curves = useMemo(() => curvesOf(engines), [engines]);
  const columnWidth = isNarrow ? columnBeside : columnBetween;
  const two = only === null && engines.length > 1;
  const left = two ? (width - columnWidth) / 2 : width - columnWidth;
  const options = useMemo(
    () => ({ size: { width: 480, height: 480 }, theme: 'light', curves, styles }) as const,
    [curves, styles],
  );
  const panel = useMemo(
    () =>
      pair === null
        ? null
        : overAltitudePanel(
            pair,
            charted.value,
            { x: left, y: columnTop, width: columnWidth, height: height - columnTop },
            style,
            options,
            left + columnWidth,
          ),
    [pair, options, left, columnWidth, height, charted.value],
  );
  const marks = useMemo(
    () => (panel === null ? [] : matchMarks(panel, engines, !two)),
    [panel, engines, two],
  );
  const lit = engines.filter(({ id }) => litEngines.value.includes(id)).map((engine) => engine.style.order);
  const litNodes = useMemo(() => litCurves(panel?.nodes ?? [], lit), [panel, lit.join()]);
  if (pair === null || panel === null) return null;
  const here: Altitude = Number.isFinite(altitude.value) ? altitude.value * 1000 : 'vacuum';
  const rows = rowsHere(engines);
  const drawnIds = Object.keys(pair?.engines ?? {});
  // An engine without any drawing leaves its side empty; the other keeps its own.
  const alone = two && drawnIds.length === 1 ? engines.find(({ id }) => id === drawnIds[0]) : undefined;
  const cutLeft = alone?.side === 'second' ? left + columnWidth + gutter / 2 : 0;
  const cutWidth = two && alone === undefined ? width : left - gutter / 2;
  const nameWidth = (two ? left : cutWidth) - gutter;
  const named = only === null ? engines : engines.filter(({ id }) => id === only);
  const head = nameLine + factLine * Math.max(0, ...named.map((engine) => foldedLines(engine, nameWidth)));
  const hasCut = only === null || drawnIds.includes(only);
  const fields = fieldsOnScreen(engines, rows);
  const shownCut = !hasCut
    ? null
    : cutPanel(pair, here, { x: cutLeft, y: head, width: cutWidth, height: height - head }, cutStyle, {
        ...options,
        ...underFlows(fields),
        rows,
        tint: tint.value,
        legend: false,
        key: false,
        middle: columnWidth + gutter,
        ...(only === null ? {} : { only }),
      });
  const pale = engines.filter(isPale).map(({ style: { order } }) => order);
  const shapes = shapesOf(
    shownCut?.nodes ?? [],
    pale.map((order) => `engine-${order}`),
  );
  const column = { x: Math.floor(left) - overhang, y: 0, width: columnWidth + 2 * overhang, height };
  const layer = { width, height };
  return (
    <div class={['layers', ...engines.flatMap(paler)].join(' ')}>
      <CanvasLayer
        name="cut"
        label={`${named.map(({ input }) => input.name).join(' and ')} cut open, gas tinted by ${tintWords[tint.value]}`}
        nodes={shapes}
        seen={{ x: -fade, y: 0, width: width + 2 * fade, height }}
      />
      {shownCut !== null && fields.size > 0 && (
        <FlowOver
          panel={shownCut}
          fields={fields}
          names={Object.fromEntries(named.map(({ id, input }) => [id, input.name]))}
          seen={{ x: -fade, y: 0, width: width + 2 * fade, height }}
        />
      )}
      <Layer {...layer} name="words" nodes={wordsIn(shownCut?.nodes ?? [])} />
      <Layer {...layer} name="column" nodes={panel.nodes} />
      {litNodes.length > 0 && <Layer {...layer} name="lit" nodes={litNodes} />}
      <Layer {...layer} name="marks" nodes={marks} />
      <CanvasLayer name="cursor" nodes={panel.cursor(here, withoutFailed(rows, engines))} seen={column} />
      <AltitudeHandle panel={panel} height={height} />
      {two && <MatchButtons panel={panel} engines={engines} />}
      <DrawnNumbers nodes={shownCut?.nodes ?? []} engines={named} />
      {named.map(({ id, side }) => {
        const engine = pair.engines[id];
        if (closer.value === null || shownCut === null || engine === undefined) return null;
        const isRight = side === 'second' && two;
        return (
          <CloserView
            key={id}
            engine={engine}
            part={closer.value}
            panel={shownCut}
            nodes={shapes}
            left={isRight ? width - closerAcross : 0}
            foot={isRight ? height : height - scaleBarHeight}
          />
        );
      })}
      {named.map((engine) => (
        <EngineName
          key={engine.id}
          engine={engine}
          from={engine.side === 'second' && two ? left + columnWidth + gutter : 0}
          width={nameWidth}
        />
      ))}
    </div>
  );
}

function factsOf({ result, standing }: ShownEngine): string {
  if (standing !== undefined) return standingWords[standing];
  if (result.ok) return result.answer.description;
  return result.isAwaited ? 'being worked out …' : 'cannot be computed';
}

/** Its drawing is not what it is now. */
const isPale = ({ result, standing }: ShownEngine): boolean =>
  !result.ok || (standing !== undefined && standing !== 'estimate');

/** What of the picture holds no longer, for the style sheet. */
function paler({ result, standing, style: { order } }: ShownEngine): readonly string[] {
  return !result.ok || standing === 'before' ? [`failed-${order}`] : [];
}

/** Lines that an engine's facts take below its name: none where they fit beside it. */
function foldedLines(engine: ShownEngine, width: number): number {
  const facts = factsOf(engine);
  const name = 44 + textWidth(engine.input.name, nameSize, 600);
  if (name + textWidth(facts, factSize, 400) <= width) return 0;
  return wrapText(facts, width, factSize, 400).length;
}

/** Sign, name and plain facts: the legend. */
function EngineName({
  engine,
  from,
  width,
}: {
  readonly engine: ShownEngine;
  readonly from: number;
  readonly width: number;
}) {
  const { input, style: own } = engine;
  return (
    <p class="engine-name" style={{ left: `${from}px`, width: `${width}px` }}>
      <EngineMark style={own} />
      <b class={`text-${own.order}`}>{input.name}</b>
      <span>
        {engine.result.ok && engine.standing === undefined ? (
          <TracedNumber
            quantity="areaRatio"
            engine={engine.id}
            shown={factsOf(engine)}
            condition=""
            label={`${input.name}, what it is`}
            expression={`${engine.id}.areaRatio`}
          />
        ) : (
          factsOf(engine)
        )}
      </span>
    </p>
  );
}

/** The cursor marks no value of an engine that has none now. */
function withoutFailed(
  rows: Readonly<Record<string, ConditionRow>>,
  engines: readonly ShownEngine[],
): Readonly<Record<string, ConditionRow>> {
  const failed = engines.filter(({ result }) => !result.ok).map(({ id }) => id);
  return Object.fromEntries(
    Object.entries(rows).map(([id, row]) => [
      id,
      failed.includes(id) ? { ...row, specificImpulse: null, thrust: null, thrustCoefficient: null } : row,
    ]),
  );
}
