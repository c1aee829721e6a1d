/** What every sentence and every likeness of the starters and of the example is meant to be found. */

import type { Verdict } from '../../../src/answer/sentences/model.ts';

export interface MeantVerdicts {
  readonly sentences: Readonly<Record<string, Verdict>>;
  readonly analogies?: Readonly<Record<string, Verdict>>;
}

export const meantVerdicts = {
  'area-ratio-for-a-booster': {
    sentences: {
      'pad-best': 'safe to say',
      'larger-is-taken': 'safe to say',
      'for-vacuum': 'safe to say',
      'runs-full': 'safe to say',
      'not-at-sixty': 'safe to say',
      'bigger-better': 'don’t say',
    },
  },
  'bell-against-plug': {
    sentences: {
      'in-vacuum': 'safe to say',
      'not-the-shape': 'safe to say',
      'but-not-at-pad': 'safe to say',
      'at-pad': 'safe to say',
      everywhere: 'don’t say',
    },
  },
  'big-engines-and-cooling': {
    sentences: {
      'more-heat': 'safe to say',
      'more-coolant': 'safe to say',
      'milder-throat': 'safe to say',
      easier: 'safe to say',
      'pressure-is-the-trouble': 'safe to say',
      harder: 'don’t say',
    },
  },
  blank: {
    sentences: {
      'more-in-vacuum': 'safe to say',
    },
  },
  choking: {
    sentences: {
      'air-does-not-matter': 'safe to say',
      'pressure-still-does': 'safe to say',
      sonic: 'safe to say',
      'half-the-pressure': 'safe to say',
      'no-more-flow': 'don’t say',
    },
    analogies: { turnstile: 'say with care' },
  },
  'dual-bell': {
    sentences: {
      'same-at-pad': 'safe to say',
      'better-in-vacuum': 'safe to say',
      'switches-on-the-way': 'safe to say',
      'above-three': 'can’t tell',
      'a-dip': 'safe to say',
      free: 'don’t say',
    },
  },
  'alder-booster': {
    sentences: {
      'on-the-way': 'safe to say',
      'vacuum-gain': 'safe to say',
      'bell-runs-full': 'safe to say',
      'a-bound': 'safe to say',
      'thrust-grows': 'safe to say',
      'payload-gain': 'safe to say',
      'weight-takes-it-back': 'safe to say',
      'pad-gain': 'say with care',
      'always-better': 'don’t say',
    },
  },
  'exit-pressure-match': {
    sentences: {
      'best-is-matched': 'safe to say',
      'matched-there': 'safe to say',
      'flat-top': 'safe to say',
      'larger-higher': 'safe to say',
      'pressure-term': 'don’t say',
    },
  },
  'high-chamber-pressure': {
    sentences: {
      'pad-isp': 'safe to say',
      smaller: 'safe to say',
      'through-the-nozzle': 'safe to say',
      hotter: 'safe to say',
      faster: 'don’t say',
    },
  },
  'hot-or-light-gas': {
    sentences: {
      cooler: 'safe to say',
      'nearly-twice': 'safe to say',
      light: 'safe to say',
      'square-root': 'safe to say',
      'hotter-is-faster': 'don’t say',
    },
  },
  'larger-or-smaller-throat': {
    sentences: {
      'same-pressure': 'safe to say',
      'same-flow': 'safe to say',
      'little-in-vacuum': 'safe to say',
      'at-the-pad': 'safe to say',
      'smaller-always': 'don’t say',
    },
  },
  'mixture-ratio': {
    sentences: {
      'best-is-rich': 'safe to say',
      'hottest-is-not-best': 'safe to say',
      'light-gas': 'safe to say',
      'how-much': 'safe to say',
      density: 'safe to say',
      'rich-is-wasteful': 'don’t say',
    },
  },
  'nozzle-speeds-up': {
    sentences: {
      'speeds-up': 'safe to say',
      'pressure-falls': 'safe to say',
      'density-wins': 'safe to say',
      'four-times-sound': 'safe to say',
      cools: 'safe to say',
      'garden-hose': 'don’t say',
    },
    analogies: { 'thumb-on-the-hose': 'don’t say' },
  },
  'open-or-closed-cycle': {
    sentences: {
      share: 'safe to say',
      seconds: 'safe to say',
      'closed-nothing': 'safe to say',
      'pays-in-pressure': 'safe to say',
      grows: 'safe to say',
      tenth: 'don’t say',
    },
  },
  'pumps-or-tanks': {
    sentences: {
      'tanks-hold-more': 'safe to say',
      'tank-mass': 'safe to say',
      'pressure-times-mass': 'safe to say',
      'pumps-get-more': 'safe to say',
      free: 'don’t say',
    },
  },
  'outrun-the-exhaust': {
    sentences: {
      'mass-ratio-e': 'safe to say',
      'twice-as-fast': 'safe to say',
      'ten-kilometres': 'safe to say',
      'exhaust-speed': 'safe to say',
      'never-faster': 'don’t say',
    },
  },
  'perfect-vacuum-nozzle': {
    sentences: {
      'always-more': 'safe to say',
      'less-and-less': 'safe to say',
      size: 'safe to say',
      'there-is-a-limit': 'don’t say',
    },
  },
  'plug-cut-short': {
    sentences: {
      'little-lost': 'safe to say',
      'most-of-the-metal': 'safe to say',
      'base-pushes-in-vacuum': 'safe to say',
      'base-drags': 'safe to say',
      'free-thrust': 'don’t say',
    },
  },
  'pressure-temperature-molar-mass': {
    sentences: {
      'pressure-does-little': 'safe to say',
      'pressure-is-thrust': 'safe to say',
      'four-times-hotter': 'safe to say',
      'seven-times-lighter': 'safe to say',
      'pressure-is-speed': 'don’t say',
    },
    analogies: { 'thrown-balls': 'safe to say' },
  },
  'sea-level-or-vacuum-nozzle': {
    sentences: {
      'same-flow': 'safe to say',
      'vacuum-gain': 'safe to say',
      width: 'safe to say',
      'pad-loss': 'safe to say',
      'tiny-ambient': 'don’t say',
    },
  },
  'shock-diamonds': {
    sentences: {
      'over-at-the-pad': 'safe to say',
      'under-later': 'safe to say',
      'longer-higher': 'safe to say',
      'throttle-shortens': 'safe to say',
      balloons: 'safe to say',
      'mach-disk': 'safe to say',
      'engine-changed': 'don’t say',
    },
  },
  'single-stage-to-orbit': {
    sentences: {
      'it-arrives': 'safe to say',
      'plug-helps': 'safe to say',
      'every-kilogram': 'safe to say',
      'lift-off': 'safe to say',
      'nozzle-is-enough': 'don’t say',
    },
  },
  'sounding-rocket': {
    sentences: {
      'edge-of-space': 'safe to say',
      'payload-costs-height': 'safe to say',
      'air-costs-height': 'safe to say',
      'burnt-low': 'safe to say',
      'not-an-orbit': 'don’t say',
    },
  },
  'stand-to-vacuum': {
    sentences: {
      'the-rule': 'safe to say',
      'how-much': 'safe to say',
      'speed-the-same': 'safe to say',
      'not-for-a-big-bell': 'safe to say',
      'faster-in-vacuum': 'don’t say',
    },
  },
  'three-fuels': {
    sentences: {
      'a-kilogram': 'safe to say',
      'a-litre': 'safe to say',
      'same-tank': 'safe to say',
      'methane-between': 'safe to say',
      'hydrogen-hotter': 'don’t say',
    },
  },
  'throttled-landing': {
    sentences: {
      'full-power': 'safe to say',
      'lander-throttled': 'safe to say',
      'bigger-throttled': 'safe to say',
      'ring-walks': 'safe to say',
      'full-power-is-enough': 'don’t say',
    },
  },
  'thrust-grows-with-altitude': {
    sentences: {
      grows: 'safe to say',
      'how-much': 'safe to say',
      'by-the-air': 'safe to say',
      'most-early': 'safe to say',
      'falls-above-design': 'don’t say',
      'exhaust-faster': 'don’t say',
    },
  },
  'vacuum-bell-at-the-pad': {
    sentences: {
      'lets-go': 'safe to say',
      'thrust-left': 'safe to say',
      'better-than-stuck': 'safe to say',
      'full-later': 'safe to say',
      'no-thrust': 'don’t say',
    },
  },
  'why-the-chamber-survives': {
    sentences: {
      'hotter-than-copper-melts': 'safe to say',
      staircase: 'safe to say',
      'metal-is-no-step': 'safe to say',
      'throat-is-worst': 'safe to say',
      'methane-can-take-it': 'safe to say',
      'metal-stands-it': 'don’t say',
    },
  },
  'where-the-push-acts': {
    sentences: {
      'face-most': 'safe to say',
      'converging-back': 'safe to say',
      'bell-share': 'safe to say',
      'two-roads': 'safe to say',
      'nothing-to-push-against': 'safe to say',
      'all-on-injector': 'don’t say',
    },
  },
  'why-big-rockets-rise-slowly': {
    sentences: {
      'little-to-spare': 'safe to say',
      'gravity-takes': 'safe to say',
      'faster-start-less-loss': 'safe to say',
      'more-for-the-air': 'safe to say',
      'engines-to-spare': 'safe to say',
      'thrust-builds-up': 'don’t say',
    },
  },
  'throttle-on-the-way-up': {
    sentences: {
      'air-presses': 'safe to say',
      'kept-below': 'safe to say',
      'beyond-sound': 'safe to say',
      'it-costs': 'safe to say',
      'sound-barrier': 'don’t say',
    },
  },
  'a-second-of-impulse': {
    sentences: {
      'a-second-above': 'safe to say',
      'not-in-per-cent': 'safe to say',
      'kilogram-for-kilogram': 'safe to say',
      'works-in-space': 'safe to say',
      'not-in-space': 'don’t say',
    },
  },
  'more-engines': {
    sentences: {
      'one-alone': 'safe to say',
      'none-to-spare': 'safe to say',
      'one-to-spare': 'safe to say',
      'thrust-left': 'safe to say',
      'always-worse': 'don’t say',
    },
  },
  'area-ratio-over-the-ascent': {
    sentences: {
      'burnt-low': 'safe to say',
      'mean-between': 'safe to say',
      'larger-than-at-the-pad': 'safe to say',
      'but-it-lets-go': 'safe to say',
      'matched-at-the-pad': 'don’t say',
    },
  },
} satisfies Readonly<Record<string, MeantVerdicts>>;
