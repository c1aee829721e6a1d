/** The picture of the live answer: the engines cut open, and between them or beside them the altitude scale alone. */

import { useSignal } from '@preact/signals';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { altitudeAxis } from '../../../telling/figures/altitudeAxis.ts';
import { cutPanel } from '../../../telling/figures/cutPanel.ts';
import type { Altitude } from '../../../telling/figures/options.ts';
import { airStrip, altitudeWords } from '../../../telling/figures/overAltitudeAxes.ts';
import { SCREEN_LINES, SCREEN_TYPE } from '../../../telling/look/formats.ts';
import { CanvasLayer } from '../heart/CanvasLayer.tsx';
import { shapesOf, wordsIn } from '../heart/heartNodes.ts';
import { altitude } from '../state/altitude.ts';
import { drawnOf, pairAnswer, rowsHere } from '../state/drawn.ts';
import { enginesOnScreen } from '../state/pair.ts';
import { solved } from '../state/studyStore.ts';
import { AltitudeHandle } from './AltitudeHandle.tsx';
import { EngineMark } from './EngineMark.tsx';
import { Layer } from './Layer.tsx';
import { standingWords } from './standingWords.ts';

/** Size of a label, of the width of the picture; never below what the look asks for. */
const labelShare = 0.025;
const smallestLabel = 15.5;
/** Room beside the picture in which the air fades [px]. */
const fade = 20;

export function LivePicture({ only }: { readonly only: string | null }) {
  const place = useRef<HTMLElement>(null);
  const size = useSignal({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const measure = () => {
      size.value = { width: element.clientWidth, height: element.clientHeight };
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const { width, height } = size.value;
  return (
    <section class="live-picture" ref={place} aria-label="Engines cut open">
      {width > 200 && height > 160 && <Picture width={width} height={height} only={only} />}
    </section>
  );
}

interface PictureProps {
  readonly width: number;
  readonly height: number;
  /** The one engine asked of; null: both. */ readonly only: string | null;
}

function Picture({ width, height, only }: PictureProps) {
  const engines = enginesOnScreen.value;
  const pair = useMemo(() => pairAnswer(engines, solved.value?.answer ?? null), [engines]);
  const styles = useMemo(() => Object.fromEntries(engines.map(({ id, style }) => [id, style])), [engines]);
  const label = Math.max(smallestLabel, Math.round(labelShare * width));
  const style = useMemo(() => styleOf(label), [label]);
  const named = engines.filter((engine) => drawnOf(engine) !== null && (only === null || engine.id === only));
  const isTwo = named.length > 1;
  const column = 5.2 * label;
  const head = 2 * label;
  const left = isTwo ? (width - column) / 2 : width - column;
  const panel = useMemo(() => {
    const axis = altitudeAxis(head + label, height - 1.2 * label, 2 * label);
    const strip = { x: left + 3.2 * label, y: axis.top, width: 0.7 * label, height: axis.bottom - axis.top };
    return { axis, strip };
  }, [left, height, label, head]);
  const still = useMemo(
    () => [
      ...airStrip(panel.strip, panel.axis, style.line),
      ...altitudeWords(panel.strip, panel.axis, style),
    ],
    [panel, style],
  );
  if (pair === null) return null;
  const here: Altitude = Number.isFinite(altitude.value) ? altitude.value * 1000 : 'vacuum';
  const box = { x: 0, y: head, width: isTwo ? width : left - 0.5 * label, height: height - head };
  const { nodes } = cutPanel(pair, here, box, style, {
    size: { width: 480, height: 480 },
    theme: 'light',
    styles,
    rows: rowsHere(engines),
    legend: false,
    key: false,
    middle: column,
    ...(isTwo || only === null ? {} : { only }),
  });
  return (
    <div class="layers">
      <CanvasLayer
        name="cut"
        nodes={shapesOf(nodes)}
        seen={{ x: -fade, y: 0, width: width + 2 * fade, height }}
      />
      <Layer width={width} height={height} name="words" nodes={wordsIn(nodes)} />
      <Layer width={width} height={height} name="column" nodes={still} />
      <AltitudeHandle panel={panel} height={height} />
      {named.map(({ id, style: own, input, side, standing }) => (
        <p
          key={id}
          class="live-name"
          style={{
            left: `${isTwo && side === 'second' ? left + column : 0}px`,
            fontSize: `${1.1 * label}px`,
          }}
        >
          <EngineMark style={own} />
          <b class={`text-${own.order}`}>{input.name}</b>
          {standing !== undefined && <span> {standingWords[standing]}</span>}
        </p>
      ))}
    </div>
  );
}

/** The type and lines of the workbench, grown to this label. */
function styleOf(label: number) {
  const factor = label / SCREEN_TYPE.label;
  const grown = <Sizes extends object>(sizes: Sizes): Sizes =>
    Object.fromEntries(Object.entries(sizes).map(([name, px]) => [name, Number(px) * factor])) as Sizes;
  return { type: grown(SCREEN_TYPE), line: grown(SCREEN_LINES) };
}
