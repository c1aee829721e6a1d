import { PRESSURE_STEPS, pressureStepStart } from '../../../telling/look/pressureRamp.ts';
import { airPressure } from '../state/shown.ts';

const width = 328;
const lowest = Math.log10(pressureStepStart(1));
const highest = Math.log10(pressureStepStart(PRESSURE_STEPS + 1));

/** Place of a pressure [Pa] along the ramp, 0 to 1. */
function along(pressure: number): number {
  const share = (Math.log10(Math.max(pressure, 1e-9)) - lowest) / (highest - lowest);
  return Math.min(1, Math.max(0, share));
}

const labels = [0.03, 0.1, 0.3, 1, 3, 10, 30, 100, 300];

/** The key to the tint of gas and air, with the air at the altitude shown. */
export function PressureKey() {
  const air = airPressure.value;
  const x = Math.max(1, along(air) * width);
  const step = width / PRESSURE_STEPS;
  return (
    <svg
      class="pressure-key"
      width={width}
      height="56"
      viewBox={`0 0 ${width} 56`}
      role="img"
      aria-label="Key to the tint: pressure of gas and air, 0.03 to 300 bar; the further from paper, the higher"
    >
      <text x={width} y="12" text-anchor="end" class="second">
        gas and air, bar
      </text>
      {Array.from({ length: PRESSURE_STEPS }, (_, index) => (
        <rect
          key={index}
          x={(index * step).toFixed(2)}
          y="18"
          width={(step + 0.4).toFixed(2)}
          height="13"
          fill={`var(--pressure-${index + 1})`}
        />
      ))}
      <rect x="0.5" y="18" width={width - 1} height="13" class="frame" />
      {labels.map((bar, index) => {
        const at = along(bar * 1e5) * width;
        const anchor = index === 0 ? 'start' : index === labels.length - 1 ? 'end' : 'middle';
        return (
          <g key={bar}>
            <path d={`M${at.toFixed(1)} 31v4`} class="frame" />
            <text x={at.toFixed(1)} y="48" text-anchor={anchor}>
              {bar}
            </text>
          </g>
        );
      })}
      <path d={`M${x.toFixed(1)} 12V31`} class="ink-line thick" />
      <text
        x={(x > 200 ? x - 6 : x + 6).toFixed(1)}
        y="12"
        text-anchor={x > 200 ? 'end' : 'start'}
        class="strong"
      >
        air here
      </text>
    </svg>
  );
}
