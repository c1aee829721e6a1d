/** What a little more of each thing is worth to a vehicle: kilograms to its orbit, a bar a rate. */

import { CAUTION } from '../../answer/caution.ts';
import type { ExchangeRate } from '../../answer/exchange/index.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import type { VehicleWorth } from '../../answer/worth/index.ts';
import { layoutOf } from '../look/formats.ts';
import { formatSpoken } from '../numbers/formatNumber.ts';
import type { Scene } from '../scene/scene.ts';
import { barRows } from './barRows.ts';
import { drawnEngines } from './drawnEngines.ts';
import type { FigureRow } from './figureTable.ts';
import { frame } from './frame.ts';
import type { FigureOptions } from './options.ts';

/** Beside the bars, where there is little room; the subtitle says that each is more. */
const BRIEFLY: Readonly<Record<ExchangeRate['lever'], string>> = {
  specificImpulse: 'a second of specific impulse',
  dryMass: 'a kilogram of dry mass',
  thrust: 'a per cent of thrust',
  propellant: 'a per cent of propellant',
};

const label = ({ stage, words }: ExchangeRate): string => `${stage} stage: ${words}`;
const kilograms = (value: number): string => formatSpoken('flight.payload', value);

function finding({ name, exchange: { rates } }: VehicleWorth): string {
  const best = rates.find(({ stage, lever }) => stage === 'first' && lever === 'specificImpulse');
  if (best === undefined) return `What a little more is worth to ${name}.`;
  return `For ${name}, ${best.words} in the first stage is worth ${kilograms(best.payload)} of payload.`;
}

export function figureExchange(worth: VehicleWorth, answer: StudyAnswer, options: FigureOptions): Scene {
  const layout = layoutOf(options.size);
  const { exchange } = worth;
  const title = options.title ?? finding(worth);
  const around = frame(
    layout,
    {
      title,
      subtitle: `Payload to the orbit for a little more of one thing, all else held, at ${kilograms(exchange.payload)}`,
      foot: ['Slopes at what the study has: for larger changes fly them. Spread not drawn. Model: flight.'],
    },
    options,
  );
  const { style } = drawnEngines(answer, 4, options.styles).engines[0]!;
  const rows = exchange.rates.map((rate) => ({
    label: `${rate.stage} stage: ${BRIEFLY[rate.lever]}`,
    bars: [{ style, value: rate.payload, text: kilograms(rate.payload) }],
  }));
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [
      `Exchange rates of ${worth.name}.`,
      ...exchange.rates.map((rate) => `${label(rate)}, ${kilograms(rate.payload)} of payload.`),
      CAUTION,
    ].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...around.nodes, ...barRows(rows, around.content, layout)],
  };
}

export function exchangeFigureRows({ name, exchange }: VehicleWorth): readonly FigureRow[] {
  return exchange.rates.map((rate) => ({
    of: name,
    quantity: 'flight.payload',
    which: label(rate),
    value: rate.payload,
    note: 'change of the payload for it',
  }));
}
