import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { holdVerdicts } from './holdVerdicts.ts';
import { meantVerdicts } from './meantVerdicts.ts';

it('each starter has its verdicts meant', () => {
  const starters = readdirSync(new URL('../../../starters/', import.meta.url));
  expect(Object.keys(meantVerdicts).sort()).toEqual(['alder-booster', ...starters].sort());
});

// Those that take longest stand in a file of their own, so that they run beside these.
holdVerdicts([
  'alder-booster',
  'bell-against-plug',
  'big-engines-and-cooling',
  'blank',
  'choking',
  'high-chamber-pressure',
  'hot-or-light-gas',
  'larger-or-smaller-throat',
  'mixture-ratio',
  'nozzle-speeds-up',
  'open-or-closed-cycle',
  'outrun-the-exhaust',
  'plug-cut-short',
  'pressure-temperature-molar-mass',
  'pumps-or-tanks',
  'sea-level-or-vacuum-nozzle',
  'stand-to-vacuum',
  'three-fuels',
  'thrust-grows-with-altitude',
  'vacuum-bell-at-the-pad',
  'where-the-push-acts',
  'why-the-chamber-survives',
]);
