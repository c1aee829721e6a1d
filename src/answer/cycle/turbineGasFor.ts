/** The gas of a stated cycle’s turbine. */

import { ProblemError } from '../../numerics/problem.ts';
import {
  generatorGas,
  heatedFuelGas,
  heatedFuelTemperature,
  type TurbineGas,
} from '../../physics/cycle/index.ts';
import { HIGHEST_CHAMBER_PRESSURE } from '../../physics/gas/index.ts';
import type { GasForTurbine } from './asStated.ts';

/** Heat per kilogram of coolant falls so with the chamber pressure at one thrust: heat goes with p_c^0.8 D^1.8, flow with p_c D². */
const HEAT_WITH_PRESSURE = -0.1;

/** Null where there is no turbine. @throws ProblemError */
export function turbineGasFor(needs: GasForTurbine, chamberPressure: number): TurbineGas | null {
  const { stated, pumped } = needs;
  switch (stated.kind) {
    case 'pressureFed':
    case 'electricPump':
      return null;
    case 'gasGenerator':
    case 'tapOff':
      return generatorGas(pumped.fed, 'fuel', stated.turbineInletTemperature.value, chamberPressure);
    case 'stagedCombustion':
      return generatorGas(
        pumped.fed,
        stated.rich,
        stated.turbineInletTemperature.value,
        preburnerPressure(chamberPressure),
      );
    case 'bleedExpander':
    case 'closedExpander': {
      const { fuel, species } = pumped.fed;
      const pressure = chamberPressure;
      const temperature =
        stated.turbineInletTemperature?.value ??
        heatedFuelTemperature(fuel, species, heatPerFuel(needs, chamberPressure), pressure);
      return heatedFuelGas(fuel, species, temperature, pressure);
    }
  }
}

/** Ahead of the turbine over that of the chamber, to begin with [–]: the gas hardly hangs on it. Common practice, no source. */
const STAGED_PRESSURE = 1.7;

/** [Pa] @throws ProblemError `preburner-pressure-above-data` */
function preburnerPressure(chamberPressure: number): number {
  const pressure = STAGED_PRESSURE * chamberPressure;
  if (pressure <= HIGHEST_CHAMBER_PRESSURE) return pressure;
  const most = HIGHEST_CHAMBER_PRESSURE / STAGED_PRESSURE;
  throw new ProblemError({
    code: 'preburner-pressure-above-data',
    what: `A chamber at ${(chamberPressure / 1e5).toPrecision(3)} bar asks for some ${(pressure / 1e5).toPrecision(3)} bar ahead of the turbine, beyond the 1000 bar to which the gas model goes.`,
    why: 'Far above that the gas is no ideal gas any more.',
    mend: `Lower the chamber pressure below ${Math.floor(most / 1e5)} bar, or choose another cycle.`,
    where: 'chamber.pressure',
    facts: { pressure, chamberPressure, most },
  });
}

/** Heat of all walls over the fuel’s flow [J/kg], scaled to another chamber pressure at the same thrust. */
function heatPerFuel({ wallHeat, pumped }: GasForTurbine, chamberPressure: number): number {
  if (wallHeat === null) {
    throw new ProblemError({
      code: 'expander-without-wall-heat',
      what: 'This nozzle model has no wall that heats the fuel.',
      mend: 'State a turbineInletTemperature, or choose a nozzle with a wall and its losses, such as a bell.',
      where: 'cycle.turbineInletTemperature',
    });
  }
  return (wallHeat / pumped.flow.fuel) * (chamberPressure / pumped.chamberPressure) ** HEAT_WITH_PRESSURE;
}
