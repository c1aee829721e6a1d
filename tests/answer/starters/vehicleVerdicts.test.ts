import { holdVerdicts } from './holdVerdicts.ts';

holdVerdicts([
  'a-second-of-impulse',
  'area-ratio-over-the-ascent',
  'more-engines',
  'throttle-on-the-way-up',
  'why-big-rockets-rise-slowly',
]);
