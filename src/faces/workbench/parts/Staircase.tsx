import { show } from '../../../answer/display.ts';
import type { CoolingAnswer } from '../../../answer/heat/model.ts';
import type { EngineStyle } from '../../../telling/look/engineStyles.ts';

const size = { width: 328, height: 176 };
const plot = { left: 12, right: 316, top: 14, bottom: 158 };

/** The staircase through the wall where it is hottest: gas, both faces of the wall, coolant. */
export function Staircase({
  cooling,
  style,
}: {
  readonly cooling: CoolingAnswer;
  readonly style: EngineStyle;
}) {
  const wall = cooling.walls.find(({ points }) =>
    points.some(({ wallHot }) => wallHot === cooling.hottestWall),
  );
  const point = wall?.points.find(({ wallHot }) => wallHot === cooling.hottestWall);
  if (wall === undefined || point === undefined) return null;
  const steps = [
    { name: 'gas', value: point.adiabaticTemperature },
    { name: 'hot face', value: point.wallHot },
    { name: 'cold face', value: point.wallCold },
    { name: 'coolant', value: point.coolantTemperature },
  ];
  const top = Math.max(...steps.map(({ value }) => value));
  const y = (value: number): number => plot.bottom - ((plot.bottom - plot.top) * value) / (1.12 * top);
  const each = (plot.right - plot.left) / steps.length;
  const x = (i: number): number => plot.left + i * each;
  const text = (value: number): string => show('cooling.wallHot', value).text;
  const path = steps.map(({ value }, i) => `${i === 0 ? 'M' : 'L'}${x(i)} ${y(value)}H${x(i + 1)}`).join('');
  const told = steps.map(({ name, value }) => `${name} ${text(value)}`).join(', ');
  return (
    <svg
      class={`staircase text-${style.order}`}
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-label={`Temperatures through the wall where it is hottest: ${told}. The wall stands ${text(cooling.wallLimit)}.`}
    >
      <path d={path} fill="none" stroke="currentColor" stroke-width="2" />
      <path
        d={`M${x(1)} ${y(cooling.wallLimit)}H${x(3)}`}
        fill="none"
        stroke="currentColor"
        stroke-width="1"
        stroke-dasharray="2 3"
      />
      {steps.map(({ name, value }, i) => (
        <g key={name} fill="currentColor" font-size="11" text-anchor="middle">
          <text x={x(i) + each / 2} y={y(value) - 5}>
            {text(value)}
          </text>
          <text x={x(i) + each / 2} y={size.height - 4}>
            {name}
          </text>
        </g>
      ))}
    </svg>
  );
}
