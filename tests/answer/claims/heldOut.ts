/** Invented sentences on which no rule was ever mended: what a new text may meet. Corpus.ts was mended on. */

import type { Expected } from './corpus.ts';

export const heldOut: readonly Expected[] = [
  ['At lift-off the plug develops 780 kilonewtons of thrust.', 'number', 'thrust'],
  ['Inside the chamber it is three thousand six hundred degrees Celsius.', 'number', 'chamber.temperature'],
  ['The bell reaches 362 s once it is out in space.', 'number', 'specificImpulse'],
  ['A quarter of a tonne of propellant rushes through per second.', 'number', 'massFlow'],
  ['The gas comes out at eleven times the speed of sound.', 'number', 'exit.mach'],
  ['The expansion ratio of the bell is 30.', 'number', 'areaRatio'],
  ['Its throat is only 25 centimetres across.', 'number', 'throat.diameter'],
  ['The molar mass of the exhaust is 22 g/mol.', 'number', 'chamber.molarMass'],
  ['On the pad the plug outperforms the bell in thrust.', 'comparison', 'thrust'],
  [
    'The bell weighs less on the propellant: its specific impulse is 3 % higher than that of the plug.',
    'comparison',
    'specificImpulse',
  ],
  ['Compared with the bell, the plug has a lower exit pressure.', 'comparison', 'exit.pressure'],
  ['Twice the chamber pressure of the bell is what the plug runs on.', 'comparison', 'chamber.pressure'],
  ['No other nozzle gets so much thrust out of thin air.', 'superlative', 'thrust'],
  ['The plug keeps the best specific impulse from the ground to orbit.', 'superlative', 'specificImpulse'],
  ['The bell never catches up with the thrust of the plug.', 'absolute', 'thrust'],
  ['In any air the plug is the more efficient one.', 'absolute', 'specificImpulse'],
  ['The drawing shows the nozzle from the side.', null, null],
  ['In the next part we fill the tanks.', null, null],
  ['Nobody had tried that before.', null, null],
  ['We will come back to it in 10 minutes.', null, null],
];
