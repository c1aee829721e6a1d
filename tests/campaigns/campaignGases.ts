import { burnt, species } from '../physics/gas/rows.ts';
import { type NozzleGas, nozzleGases } from './nozzleCases.ts';

/** Perfect gases, and oxygen with methane, hydrogen and kerosene, shifting and frozen, from 100 bar. */
export function campaignGases(): readonly NozzleGas[] {
  return nozzleGases(species, [
    { name: 'oxygen/methane 3.5', reactants: burnt('LOX', 'LCH4', 3.5) },
    { name: 'oxygen/hydrogen 6', reactants: burnt('LOX', 'LH2', 6) },
    { name: 'oxygen/kerosene 2.4', reactants: burnt('LOX', 'RP-1', 2.4) },
  ]);
}
