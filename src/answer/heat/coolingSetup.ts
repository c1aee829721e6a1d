/** From what the study says of the cooling to all that the march needs. */

import type { PropellantRecord } from '../../physics/gas/records.ts';
import type { Correlation, WallMaterialRecord } from '../../physics/heat/index.ts';
import type { Cooling, EngineInput } from '../../study/model.ts';
import type { CoolingMaterials } from '../materials.ts';
import { type CoolantSupply, coolantSupply, propellantFlows } from './coolantSupply.ts';
import type { CoolingSetup } from './engineCooling.ts';
import type { EngineHeat } from './engineHeat.ts';

/** What the injector needs above the chamber, and what channels usually lose, over the chamber pressure (common practice, no source). */
const INJECTOR = 0.2;
const USUAL_DROP = 0.25;
/** Away from the critical pressure where no inlet pressure is stated. */
const NEAR_CRITICAL = { from: 0.92, to: 1.1 };

export interface CoolingParts {
  readonly input: EngineInput;
  readonly cooling: Cooling;
  readonly heat: EngineHeat;
  readonly materials: CoolingMaterials;
  readonly propellants: ReadonlyMap<string, PropellantRecord>;
  readonly massFlow: number;
  readonly mixtureRatio: number | null;
  /** [Pa] */ readonly chamberPressure: number;
  /** [m] of a circle of the throat’s area */ readonly throatDiameter: number;
  /** Whether the radius of the wall tells the area ratio. */ readonly isRound: boolean;
}

export interface CoolingDraft {
  readonly setup: CoolingSetup;
  readonly notes: readonly string[];
}

/** @throws ProblemError where the coolant, its flow or its inlet cannot be had */
export function coolingSetup(parts: CoolingParts): CoolingDraft {
  const { input, cooling, heat, materials, propellants, chamberPressure, throatDiameter } = parts;
  const flows = propellantFlows(parts.massFlow, parts.mixtureRatio);
  const supply = coolantSupply(input, cooling, materials, propellants, flows);
  const film = cooling.film.value > 0 ? filmSupply(parts, flows.fuel) : null;
  const wall = (id: string): WallMaterialRecord => materials.walls.find((row) => row.id === id)!;
  const drop = cooling.pressureDrop?.value ?? USUAL_DROP * chamberPressure;
  const inlet = cooling.inletPressure?.value ?? inletPressure(supply, chamberPressure, drop);
  const skirt = cooling.skirtFrom;
  const notes = [
    ...(supply.row.id === 'dodecane'
      ? ['The kerosene in the channels is reckoned as n-dodecane; real kerosene is a blend.']
      : []),
    ...(film === null ? [] : ['What the film costs in specific impulse is not taken off.']),
    ...(skirt !== null && !parts.isRound
      ? ['A radiating skirt is reckoned on cones and bells only; this engine has channels to its end.']
      : []),
  ];
  return {
    notes,
    setup: {
      sides: heat.sides.map(({ side }) => side),
      supply,
      film,
      material: wall(cooling.wall),
      thickness: cooling.thickness.value,
      width: cooling.channelWidth?.value ?? Math.max(1e-3, 0.01 * throatDiameter),
      land: cooling.land.value,
      correlation: correlationOf(cooling, supply),
      inletPressure: inlet,
      by: cooling.channelDepth === null ? { drop } : { depth: cooling.channelDepth.value },
      chamberPressure,
      skirtRadius: skirt === null || !parts.isRound ? null : (throatDiameter / 2) * Math.sqrt(skirt.value),
      skirtMaterial: wall(cooling.skirtWall),
    },
  };
}

function correlationOf({ correlation }: Cooling, { row }: CoolantSupply): Correlation {
  if (correlation !== 'usual') return correlation;
  return row.id === 'hydrogen' || row.id === 'normal-hydrogen' ? 'taylor' : 'gnielinski';
}

/** Enough for injector and channels, and never so that the coolant comes near its critical pressure on its way. */
function inletPressure({ fluid }: CoolantSupply, chamberPressure: number, drop: number): number {
  const outlet = (1 + INJECTOR) * chamberPressure;
  const { criticalPressure } = fluid.record;
  const isNear =
    outlet + drop > NEAR_CRITICAL.from * criticalPressure && outlet < NEAR_CRITICAL.to * criticalPressure;
  return drop + (isNear ? NEAR_CRITICAL.to * criticalPressure : outlet);
}

function filmSupply({ input, cooling, materials, propellants }: CoolingParts, fuel: number): CoolantSupply {
  const asFed: Cooling = { ...cooling, coolant: 'fuel', share: cooling.film, flow: null };
  return coolantSupply(input, asFed, materials, propellants, { fuel, oxidiser: 0 });
}
