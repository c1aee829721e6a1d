import { holdVerdicts } from './holdVerdicts.ts';

holdVerdicts([
  'area-ratio-for-a-booster',
  'dual-bell',
  'exit-pressure-match',
  'perfect-vacuum-nozzle',
  'shock-diamonds',
  'throttled-landing',
]);
