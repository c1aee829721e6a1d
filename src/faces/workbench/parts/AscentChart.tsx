import { useLayoutEffect, useRef } from 'preact/hooks';
import type { VehicleAnswer } from '../../../answer/flight/model.ts';
import { ascentPanels, flightsDrawn } from '../../../telling/figures/ascentPanels.ts';
import type { EngineStyle } from '../../../telling/look/engineStyles.ts';
import { SCREEN_LINES, SCREEN_TYPE } from '../../../telling/look/formats.ts';
import { nodesToSvg } from '../../../telling/scene/svg.ts';

const size = { width: 328, height: 440 };
const box = { x: 2, y: 0, width: size.width - 6, height: size.height };
const style = { type: SCREEN_TYPE, line: SCREEN_LINES };

interface AscentChartProps {
  readonly vehicle: VehicleAnswer;
  readonly styles: Readonly<Record<string, EngineStyle>>;
}

/** The same panels as the figure's, at the size of the page. */
export function AscentChart({ vehicle, styles }: AscentChartProps) {
  const place = useRef<SVGSVGElement>(null);
  const flights = flightsDrawn(vehicle, styles);
  // Made by the scene writer, which escapes every word of the study.
  const markup = nodesToSvg(ascentPanels(flights, box, style), 'light', {
    colours: 'variables',
    idPrefix: `ascent-${vehicle.id}`,
  });
  useLayoutEffect(() => {
    if (place.current !== null) place.current.innerHTML = markup;
  }, [markup]);
  return (
    <svg
      ref={place}
      class="sweep-chart"
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-label={`${vehicle.name} on its way up: altitude, speed, dynamic pressure and throttle over time, and what is lost of the speed`}
    />
  );
}
