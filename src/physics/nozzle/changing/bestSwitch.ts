import { ProblemError } from '../../../numerics/problem.ts';
import type { ModeChange, NozzleMode, NozzleModel } from '../model.ts';

export interface BestSwitch {
  /** [Pa] */ readonly ambientPressure: number;
  /** One sentence: what decides it. */ readonly how: string;
}

/** Ambient pressures tried, evenly in the logarithm, between a millionth of the chamber pressure and the throat's. */
const TRIED = 60;
const LOWEST_SHARE = 1e-6;

/**
 * Ambient pressure [Pa] at which going over from one fixed nozzle to another, larger one loses nothing.
 *
 *   C_F,larger(p_a) = C_F,smaller(p_a)
 *
 * In thinner air the larger one pushes harder, in thicker air the smaller one. Where the flow would leave the wall of
 * the larger one at that pressure, the highest one at which it stays on is taken instead: nobody would go over before.
 *
 * @throws ProblemError `larger-nozzle-gains-nothing`
 */
export function bestSwitch(smaller: Pick<NozzleModel, 'at'>, larger: NozzleModel): BestSwitch {
  const { chamber, throat } = larger.expansion;
  const from = LOWEST_SHARE * chamber.pressure;
  const gains = (pressure: number): 'more' | 'less' | 'leaves the wall' => {
    const big = larger.at(pressure);
    if (big.thrustCoefficient === null || big.flow.state === 'separated') return 'leaves the wall';
    const small = smaller.at(pressure).thrustCoefficient;
    return small === null || big.thrustCoefficient > small ? 'more' : 'less';
  };
  let low = 0;
  if (gains(0) !== 'more') throw gainsNothing();
  for (let i = 0; i <= TRIED; i++) {
    let high = from * (throat.pressure / from) ** (i / TRIED);
    let outcome = gains(high);
    if (outcome === 'more') {
      low = high;
      continue;
    }
    for (let step = 0; step < 50; step++) {
      const middle = 0.5 * (low + high);
      const there = gains(middle);
      if (there === 'more') low = middle;
      else {
        high = middle;
        outcome = there;
      }
    }
    return { ambientPressure: high, how: outcome === 'less' ? EQUAL_THRUST : STAYS_ON_WALL };
  }
  return { ambientPressure: throat.pressure, how: EQUAL_THRUST };
}

const EQUAL_THRUST =
  'Where both push alike: above that pressure the smaller one pushes harder, below it the larger.';
const STAYS_ON_WALL =
  'Where the gas just fills the larger one: in thicker air it would leave the wall, in thinner air the larger pushes harder.';

/** The change between two fixed nozzles: where it is stated, or where it is best. */
export function switchBetween(
  stated: number | undefined,
  smaller: Pick<NozzleModel, 'at'>,
  larger: NozzleModel,
  modes: { readonly thick: NozzleMode; readonly thin: NozzleMode },
): ModeChange {
  const { ambientPressure, how } =
    stated === undefined ? bestSwitch(smaller, larger) : { ambientPressure: stated, how: 'As stated.' };
  return { ...modes, ambientPressure, band: null, back: null, estimates: [], how };
}

function gainsNothing(): ProblemError {
  return new ProblemError({
    code: 'larger-nozzle-gains-nothing',
    what: 'Even in vacuum the larger nozzle pushes no harder than the smaller one.',
    why: 'Then there is no altitude at which changing over helps.',
    mend: 'Make the smaller area ratio smaller or the larger nozzle longer, or state where it changes over.',
    where: 'nozzle.areaRatio',
  });
}
