/** For each starter one input whose change turns one verdict, and why it does. */

import type { Verdict } from '../../../src/answer/sentences/model.ts';
import type { StarterName } from './holdVerdicts.ts';

export interface Move {
  /** Path of the input below `engines`. */ readonly input: string;
  readonly from: string;
  readonly to: string;
  readonly sentence: string;
  readonly before: Verdict;
  readonly after: Verdict;
  readonly why: string;
}

const turned = { before: 'safe to say', after: 'don’t say' } as const;

export const moves: Readonly<Record<StarterName, Move>> = {
  'area-ratio-for-a-booster': {
    input: 'booster.nozzle.areaRatio',
    from: '20',
    to: '60',
    sentence: 'runs-full',
    ...turned,
    why: 'A bell three times as large lets the gas expand so far that the air pushes it off the wall at the pad.',
  },
  'bell-against-plug': {
    input: 'bell.nozzle.areaRatio',
    from: '20',
    to: '80',
    sentence: 'in-vacuum',
    ...turned,
    why: 'The plug’s gain in vacuum is its larger area ratio; a bell larger than the plug takes it away.',
  },
  blank: {
    input: 'long.nozzle.areaRatio',
    from: '40',
    to: '8',
    sentence: 'more-in-vacuum',
    ...turned,
    why: 'In vacuum the nozzle that expands further gives more, and now that is the other one.',
  },
  choking: {
    input: 'engine.chamber.pressure',
    from: '30 ± 1 bar',
    to: '12 ± 0.5 bar',
    sentence: 'air-does-not-matter',
    ...turned,
    why: 'Ten bar outside are more than the critical share, some 57 %, of twelve: the throat is not choked there.',
  },
  'dual-bell': {
    input: 'dual.nozzle.areaRatio',
    from: '60',
    to: '30',
    sentence: 'better-in-vacuum',
    ...turned,
    why: 'What is gained in vacuum is the area ratio of the second bell, and this one hardly adds any.',
  },
  'exit-pressure-match': {
    input: 'engine.nozzle.areaRatio',
    from: '13',
    to: '30',
    sentence: 'matched-there',
    ...turned,
    why: 'A larger nozzle lets the gas leave with far less pressure than the air has.',
  },
  'high-chamber-pressure': {
    input: 'high.chamber.pressure',
    from: '200 bar',
    to: '70 bar',
    sentence: 'pad-isp',
    ...turned,
    why: 'At hardly more pressure than the other’s, the larger nozzle is too large for the pad.',
  },
  'hot-or-light-gas': {
    input: 'heated.propellants.temperature',
    from: '2700 ± 100 K',
    to: '2150 ± 20 K',
    sentence: 'nearly-twice',
    ...turned,
    why: 'Speed goes like the square root of temperature; light as it is, hydrogen at 2150 K is not fast enough.',
  },
  'larger-or-smaller-throat': {
    input: 'narrow.chamber.pressure',
    from: '160 bar',
    to: '80 bar',
    sentence: 'same-flow',
    ...turned,
    why: 'At the same pressure, half the throat passes half the flow.',
  },
  'mixture-ratio': {
    input: 'engine.propellants.ratio',
    from: '5.5 ± 0.1',
    to: '7.5 ± 0.1',
    sentence: 'how-much',
    ...turned,
    why: 'An engine that already runs near to eight loses little by going there.',
  },
  'nozzle-speeds-up': {
    input: 'engine.nozzle.areaRatio',
    from: '40',
    to: '10',
    sentence: 'four-times-sound',
    ...turned,
    why: 'The Mach number at the lip is a matter of area ratio.',
  },
  'outrun-the-exhaust': {
    input: 'engine.nozzle.areaRatio',
    from: '80',
    to: '20',
    sentence: 'ten-kilometres',
    ...turned,
    why: 'A smaller bell gives less specific impulse, and the speed gained goes with it.',
  },
  'perfect-vacuum-nozzle': {
    input: 'engine.nozzle.areaRatio',
    from: '80',
    to: '320',
    sentence: 'there-is-a-limit',
    before: 'don’t say',
    after: 'say with care',
    why: 'A bell beats those that are smaller than itself, so any limit that is looked for below it seems to be there.',
  },
  'plug-cut-short': {
    input: 'short.nozzle.kept',
    from: '20 %',
    to: '75 %',
    sentence: 'most-of-the-metal',
    ...turned,
    why: 'Hardly cut, it keeps nearly all of its wall.',
  },
  'pressure-temperature-molar-mass': {
    input: 'light.propellants.temperature',
    from: '1200 ± 40 K',
    to: '600 ± 20 K',
    sentence: 'seven-times-lighter',
    ...turned,
    why: 'Half the temperature takes away a factor of 1.4 of the speed.',
  },
  'sea-level-or-vacuum-nozzle': {
    input: 'space.nozzle.areaRatio',
    from: '120',
    to: '25',
    sentence: 'vacuum-gain',
    ...turned,
    why: 'With little more area ratio than the ground engine’s there is little more to gain.',
  },
  'shock-diamonds': {
    input: 'booster.nozzle.areaRatio',
    from: '15',
    to: '6',
    sentence: 'over-at-the-pad',
    ...turned,
    why: 'A short bell lets the gas leave with more pressure than even the air at the pad has.',
  },
  'stand-to-vacuum': {
    input: 'upper.nozzle.areaRatio',
    from: '120',
    to: '25',
    sentence: 'not-for-a-big-bell',
    ...turned,
    why: 'A bell that flows full on the stand obeys the rule.',
  },
  'three-fuels': {
    input: 'hydrogen.propellants.ratio',
    from: '6 ± 0.1',
    to: '12 ± 0.1',
    sentence: 'a-litre',
    ...turned,
    why: 'Hydrogen is what makes the tanks large; with half as much of it the mixture is far denser.',
  },
  'throttled-landing': {
    input: 'bigger.nozzle.areaRatio',
    from: '24',
    to: '14',
    sentence: 'bigger-throttled',
    ...turned,
    why: 'A bell smaller than the lander’s runs full at half throttle, as the lander’s does.',
  },
  'thrust-grows-with-altitude': {
    input: 'engine.nozzle.areaRatio',
    from: '15',
    to: '30',
    sentence: 'how-much',
    ...turned,
    why: 'What is gained is the air’s pressure times the exit area, which is twice as large now.',
  },
  'open-or-closed-cycle': {
    input: 'open.chamber.pressure',
    from: '100 bar',
    to: '20 bar',
    sentence: 'share',
    ...turned,
    why: 'At a fifth of the pressure the pumps need a fifth of the power, and hardly anything is dumped.',
  },
  'pumps-or-tanks': {
    input: 'pressed.chamber.pressure',
    from: '20 bar',
    to: '5 bar',
    sentence: 'tank-mass',
    ...turned,
    why: 'Tanks for a chamber of five bar hold hardly more than those ahead of pumps.',
  },
  'vacuum-bell-at-the-pad': {
    input: 'upper.nozzle.areaRatio',
    from: '120',
    to: '300',
    sentence: 'full-later',
    ...turned,
    why: 'The larger the bell, the thinner the air in which it flows full.',
  },
  'where-the-push-acts': {
    input: 'bell.nozzle.areaRatio',
    from: '30',
    to: '3',
    sentence: 'bell-share',
    ...turned,
    why: 'A nozzle that hardly widens has little wall for the gas to push on.',
  },
  'alder-booster': {
    input: 'bell.nozzle.areaRatio',
    from: '25',
    to: '60',
    sentence: 'bell-runs-full',
    ...turned,
    why: 'A bell of the plug’s area ratio does not run full at the pad; that is why the booster’s is smaller.',
  },
};
