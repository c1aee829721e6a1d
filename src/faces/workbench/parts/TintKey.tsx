import type { Shown } from '../../../answer/flow/model.ts';
import { TINTS } from '../../../telling/look/flowRamps.ts';
import {
  GRADIENT_LABELS,
  GRADIENT_NAME,
  gradientOpacity,
  rampOf,
} from '../../../telling/look/gradientRamp.ts';
import { FlowChoice } from '../flow/FlowChoice.tsx';
import { drawBy, pageShown } from '../flow/flows.ts';
import { airPressure } from '../state/shown.ts';
import { closer } from '../state/view.ts';

const width = 328;

interface TintWords {
  readonly name: string;
  readonly unit: string;
  /** Along the key, in its unit. */ readonly labels: readonly number[];
  /** As written; absent: the numbers themselves. */ readonly texts?: readonly string[];
  /** Of the ramp over that of the labels. */ readonly factor: number;
  readonly isLog: boolean;
}

const words: Readonly<Record<Shown, TintWords>> = {
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
  'density gradient': {
    name: 'Density change',
    unit: GRADIENT_NAME,
    labels: GRADIENT_LABELS.map(([value]) => value),
    texts: GRADIENT_LABELS.map(([, text]) => text),
    factor: 1,
    isLog: true,
  },
  speed: { name: 'Speed', unit: 'gas, m/s', labels: [1000, 2000, 3000, 4000, 5000], factor: 1, isLog: false },
};

/** Place of a value along the ramp, 0 to 1. */
function along(value: number, shown: Shown): number {
  const { steps, startOf } = rampOf(shown);
  const scaled = (x: number): number => (words[shown].isLog ? Math.log10(Math.max(x, 1e-9)) : x);
  const [low, high] = [scaled(startOf(1)), scaled(startOf(steps + 1))];
  return Math.min(1, Math.max(0, (scaled(value) - low) / (high - low)));
}

/** What the gas is tinted by: the choice, and the key to it. */
export function TintKey() {
  const shown = pageShown.value;
  return (
    <div class="tint">
      <fieldset class="tint-choice">
        <legend class="unseen">What the gas is tinted by</legend>
        {TINTS.map((one) => (
          <button key={one} type="button" aria-pressed={one === shown} onClick={() => drawBy(one)}>
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
      <Key shown={shown} />
    </div>
  );
}

function Key({ shown }: { readonly shown: Shown }) {
  const { steps } = rampOf(shown);
  const { unit, labels, texts = labels.map(String), factor } = words[shown];
  const step = width / steps;
  const meaning =
    shown === 'pressure'
      ? 'pressure of gas and air, 0.03 to 300 bar; the further from paper, the higher'
      : `${unit}, ${texts[0]} to ${texts.at(-1)}; the further from paper, the higher${shown.startsWith('density') ? '' : '. The air is left plain'}`;
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
          {...(shown === 'density gradient'
            ? { fill: 'var(--ink)', 'fill-opacity': gradientOpacity(index + 1) }
            : { fill: `var(--${shown}-${index + 1})` })}
        />
      ))}
      <rect x="0.5" y="18" width={width - 1} height="13" class="frame" />
      {labels.map((label, k) => {
        const at = along(label * factor, shown) * width;
        const anchor = at < 8 ? 'start' : at > width - 14 ? 'end' : 'middle';
        return (
          <g key={label}>
            <path d={`M${at.toFixed(1)} 31v4`} class="frame" />
            <text x={at.toFixed(1)} y="48" text-anchor={anchor}>
              {texts[k]}
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
