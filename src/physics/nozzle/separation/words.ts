import type { Judgement } from './judgement.ts';

export const UNCHOKED_NOTE =
  'The throat does not choke for sure: one-dimensional, a jet from the bare throat as the best value, gas held by the wall to the lip as the other end.';

/** Why there is no thrust. */
export function noOutflow(ambientPressure: number, chamberPressure: number): string {
  return (
    `The surroundings press with ${kPa(ambientPressure)}, the chamber with ${kPa(chamberPressure)}: nothing flows out. ` +
    'Raise the chamber pressure above that of the surroundings.'
  );
}

/** The criterion that decides, and what to know of it at one ambient pressure. */
export function decidingWords(
  { criterion, why }: Judgement,
  from: 'field' | 'mean',
  withoutMach: boolean,
): string {
  const words = withoutMach
    ? `${criterion.name} (the gas has no Mach number at the lip)`
    : why === null
      ? criterion.name
      : `${criterion.name}, outside the Mach numbers it was fitted to`;
  return from === 'mean' ? `${words}, by the mean pressure over each section` : words;
}

function kPa(pressure: number): string {
  return `${Number((pressure / 1000).toPrecision(3))} kPa`;
}
