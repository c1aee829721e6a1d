import { type FieldTint, RAMPS, TINTS } from '../../../telling/look/flowRamps.ts';
import { FlowChoice } from '../flow/FlowChoice.tsx';
import { flowsHere, flowView } from '../flow/flows.ts';
import { airPressure } from '../state/shown.ts';
import { closer, tint } from '../state/view.ts';

const width = 328;

interface TintWords {
  readonly name: string;
  readonly unit: string;
  /** Along the key, in its unit. */ readonly labels: readonly number[];
  /** Of the ramp over that of the labels. */ readonly factor: number;
  readonly isLog: boolean;
}

const words: Readonly<Record<FieldTint, TintWords>> = {
  pressure: {
    name: 'Pressure',
    unit: 'gas and air, bar',
    labels: [0.03, 0.1, 0.3, 1, 3, 10, 30, 100, 300],
    factor: 1e5,
    isLog: true,
  },
  mach: { name: 'Mach', unit: 'gas, Mach number', labels: [1, 2, 3, 4, 5, 6], factor: 1, isLog: false },
  temperature: {
    name: 'Temperature',
    unit: 'gas, K',
    labels: [1000, 2000, 3000, 4000],
    factor: 1,
    isLog: false,
  },
  density: {
    name: 'Density',
    unit: 'gas and air, kg/m³',
    labels: [0.001, 0.01, 0.1, 1, 10],
    factor: 1,
    isLog: true,
  },
  speed: { name: 'Speed', unit: 'gas, m/s', labels: [1000, 2000, 3000, 4000, 5000], factor: 1, isLog: false },
};

/** Place of a value along the ramp, 0 to 1. */
function along(value: number, shown: FieldTint): number {
  const { steps, startOf } = RAMPS[shown];
  const scaled = (x: number): number => (words[shown].isLog ? Math.log10(Math.max(x, 1e-9)) : x);
  const [low, high] = [scaled(startOf(1)), scaled(startOf(steps + 1))];
  return Math.min(1, Math.max(0, (scaled(value) - low) / (high - low)));
}

/** What the gas is tinted by: the choice, and the key to it. */
export function TintKey() {
  const shown = tint.value;
  const keyed = flowsHere.value.size > 0 && flowView.value === 'density' ? 'density' : shown;
  return (
    <div class="tint">
      <fieldset class="tint-choice">
        <legend class="unseen">What the gas is tinted by</legend>
        {TINTS.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={one === shown}
            onClick={() => {
              tint.value = one;
            }}
          >
            {words[one].name}
          </button>
        ))}
      </fieldset>
      <fieldset class="tint-choice">
        <legend class="unseen">Drawn larger beside the engines</legend>
        {(['throat', 'lip'] as const).map((part) => (
          <button
            key={part}
            type="button"
            aria-pressed={closer.value === part}
            onClick={() => {
              closer.value = closer.value === part ? null : part;
            }}
          >
            Closer: {part}
          </button>
        ))}
      </fieldset>
      <FlowChoice />
      <Key shown={keyed} />
    </div>
  );
}

function Key({ shown }: { readonly shown: FieldTint }) {
  const { steps } = RAMPS[shown];
  const { unit, labels, factor } = words[shown];
  const step = width / steps;
  const meaning =
    shown === 'pressure'
      ? 'pressure of gas and air, 0.03 to 300 bar; the further from paper, the higher'
      : `${unit}, ${labels[0]} to ${labels.at(-1)}; the further from paper, the higher${shown === 'density' ? '' : '. The air is left plain'}`;
  return (
    <svg
      class="pressure-key"
      width={width}
      height="56"
      viewBox={`0 0 ${width} 56`}
      role="img"
      aria-label={`Key to the tint: ${meaning}`}
    >
      <text x={width} y="12" text-anchor="end" class="second">
        {unit}
      </text>
      {Array.from({ length: steps }, (_, index) => (
        <rect
          key={index}
          x={(index * step).toFixed(2)}
          y="18"
          width={(step + 0.4).toFixed(2)}
          height="13"
          fill={`var(--${shown}-${index + 1})`}
        />
      ))}
      <rect x="0.5" y="18" width={width - 1} height="13" class="frame" />
      {labels.map((label) => {
        const at = along(label * factor, shown) * width;
        const anchor = at < 8 ? 'start' : at > width - 14 ? 'end' : 'middle';
        return (
          <g key={label}>
            <path d={`M${at.toFixed(1)} 31v4`} class="frame" />
            <text x={at.toFixed(1)} y="48" text-anchor={anchor}>
              {label}
            </text>
          </g>
        );
      })}
      {shown === 'pressure' && <AirHere />}
    </svg>
  );
}

function AirHere() {
  const x = Math.max(1, along(airPressure.value, 'pressure') * width);
  const isRight = x > 200;
  return (
    <>
      <path d={`M${x.toFixed(1)} 12V31`} class="ink-line thick" />
      <text
        x={(isRight ? x - 6 : x + 6).toFixed(1)}
        y="12"
        text-anchor={isRight ? 'end' : 'start'}
        class="strong"
      >
        air here
      </text>
    </>
  );
}
