/** The plumb line and its bob: the one slider that everything follows. */

import { useRef } from 'preact/hooks';
import type { OverAltitudePanel } from '../../../telling/figures/overAltitude.ts';
import { altitude, setAltitude } from '../state/altitude.ts';
import { stopClimb } from '../state/climb.ts';
import { topOfScale } from '../state/scale.ts';
import { altitudeSpoken, sliderNumber } from '../state/shown.ts';

/** Steps of the keys and the wheel [km]. */
const smallStep = 0.5;
const largeStep = 5;
/** Room to grab beside the strip [px]. */
const grab = 14;
/** Room for the bob with its ring: across, and below its tip [px]. */
const bobAcross = 44;
const bobBelow = 10;
/** The hook that the line hangs from, above the scale [px]. */
const hookAbove = 36;

interface HandleProps {
  readonly panel: Pick<OverAltitudePanel, 'axis' | 'strip'>;
  readonly height: number;
}

export function AltitudeHandle({ panel, height }: HandleProps) {
  const slider = useRef<HTMLDivElement>(null);
  const { axis, strip } = panel;
  const x = strip.x + strip.width / 2;
  /** The line is drawn as long as it can be and pulled up; above its hook it is cut off. */
  const top = axis.top - hookAbove;
  const long = axis.bottom - top;
  const bob = `M${bobAcross / 2 - 3} ${long - 27}h6v5c6 2 8 7 8 10c0 3-4 6-11 12c-7-6-11-9-11-12c0-3 2-8 8-10z`;
  const tip = axis.y(Number.isFinite(altitude.value) ? altitude.value * 1000 : 'vacuum');

  function moveTo(event: PointerEvent) {
    const box = slider.current?.getBoundingClientRect();
    if (box === undefined) return;
    stopClimb();
    const there = axis.altitudeAt(event.clientY - box.top + axis.top);
    setAltitude(there === 'vacuum' || there > topOfScale * 1000 ? Number.POSITIVE_INFINITY : there / 1000);
  }
  function moveBy(step: number) {
    stopClimb();
    const from = Number.isFinite(altitude.value) ? altitude.value : topOfScale + (step < 0 ? 0 : smallStep);
    setAltitude(Number.isFinite(altitude.value) ? from + step : topOfScale + Math.min(step + smallStep, 0));
  }
  function onKeyDown(event: KeyboardEvent) {
    const steps: Readonly<Record<string, number>> = {
      ArrowUp: smallStep,
      ArrowRight: smallStep,
      ArrowDown: -smallStep,
      ArrowLeft: -smallStep,
      PageUp: largeStep,
      PageDown: -largeStep,
    };
    const step = steps[event.key];
    if (step !== undefined) moveBy(step);
    else if (event.key === 'Home') setAltitude(0);
    else if (event.key === 'End') setAltitude(Number.POSITIVE_INFINITY);
    else return;
    event.preventDefault();
  }

  return (
    <>
      <div
        ref={slider}
        class="altitude-slider"
        role="slider"
        tabIndex={0}
        aria-label="Altitude"
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={topOfScale + 1}
        aria-valuenow={sliderNumber}
        aria-valuetext={altitudeSpoken}
        style={{
          left: `${strip.x - grab}px`,
          top: `${axis.top}px`,
          width: `${strip.width + 2 * grab}px`,
          height: `${axis.bottom - axis.top}px`,
        }}
        onKeyDown={onKeyDown}
        onWheel={(event) => {
          event.preventDefault();
          moveBy(event.deltaY < 0 ? smallStep : -smallStep);
        }}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          event.currentTarget.focus();
          moveTo(event);
        }}
        onPointerMove={(event) => {
          if (event.currentTarget.hasPointerCapture(event.pointerId)) moveTo(event);
        }}
      />
      <div
        class="plumb"
        aria-hidden="true"
        style={{
          left: `${x - bobAcross / 2}px`,
          top: `${top}px`,
          width: `${bobAcross}px`,
          height: `${height - top}px`,
        }}
      >
        <svg
          aria-hidden="true"
          width={bobAcross}
          height={long + bobBelow}
          style={{ transform: `translateY(${(tip - top - long).toFixed(2)}px)` }}
        >
          <path class="ink-line" d={`M${bobAcross / 2} 0V${long - 22}`} />
          <path class="ring" d={bob} />
          <path class="ring gap" d={bob} />
          <path class="bob" d={bob} />
        </svg>
        <span class="hook" />
      </div>
    </>
  );
}
