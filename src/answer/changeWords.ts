/** Where a nozzle of two modes goes over, in sentences. */

import { show } from './display.ts';
import type { AmbientPlace, ChangeAnswer } from './model.ts';

/** `Skirt drawn up up to 11 km (0.22 bar outside), skirt out above. Where both push alike: …` */
export function changeWords(change: ChangeAnswer): string {
  const { thick, thin, how, band, back, estimates } = change;
  const words = [`${capital(thick)} in air of ${place(change)} and denser, ${thin} in thinner air. ${how}`];
  if (band !== undefined && band.low.ambientPressure < band.high.ambientPressure) {
    words.push(`Published models put it between ${place(band.low)} and ${place(band.high)}.`);
  } else if (estimates.length === 1) {
    words.push(`Only one published model holds here, ${estimates[0]!.by}: its spread is not known.`);
  }
  if (estimates.length > 1) {
    words.push(`${estimates.map((each) => `${each.by}: ${place(each)}`).join('; ')}.`);
  }
  if (back !== undefined) {
    words.push(`On the way back it changes between ${place(back.low)} and ${place(back.high)}.`);
  }
  return words.join(' ');
}

function place({ ambientPressure, altitude }: AmbientPlace): string {
  const pressure = show('ambientPressure', ambientPressure, 2).text;
  return altitude === null ? pressure : `${pressure} (${show('altitude', altitude, 2).text})`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
