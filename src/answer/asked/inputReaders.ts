/** What the study states of an engine, defaults included. */

import type { PropellantRecord } from '../../physics/gas/index.ts';
import type { EngineInput, Ingredient, Quantity } from '../../study/model.ts';
import { ingredientsOf } from '../materials.ts';
import { namedOne } from './named.ts';
import { type Asked, absent, type Read, type Reader, type Readers } from './reader.ts';

const NOT_STATED = {
  why: 'This engine has no such input.',
  mend: 'Ask an engine that has it; docs/study-file.md says which do.',
};

/** Reads off an engine's inputs; undefined or null: it has none of that name. */
type Of = (input: EngineInput) => Quantity | null | undefined;

function stated(of: Of): Reader {
  return (asked) => (of(asked.solution.input) ?? absent(asked, NOT_STATED)).value;
}

type OfIngredient = (ingredient: Ingredient, row: PropellantRecord | undefined) => number | null | undefined;

/** Of one ingredient, told by its name in the study or in the data. */
function ofIngredient(of: OfIngredient): Reader {
  return (asked) => {
    const { input, records } = asked.solution;
    const all = ingredientsOf(input.propellants).map((one) => ({
      one,
      row: one.custom === null ? records.find(({ id }) => id === one.id) : undefined,
    }));
    const { one, row } = namedOne(asked, 'ingredient', all, (each) => [
      each.one.id,
      ...(each.row?.alsoCalled ?? []),
    ]);
    return of(one, row) ?? absent(asked, NOT_STATED);
  };
}

const statedOfCooling = ['share', 'land', 'thickness', 'film', 'skirtFrom'] as const;
const cycleKeys = [
  'injectorDrop',
  'jacketDrop',
  'lineDrop',
  'oxidiserPumpEfficiency',
  'fuelPumpEfficiency',
  'turbineEfficiency',
  'pumpPressureLimit',
  'exhaustAreaRatio',
  'burnTime',
  'tankStress',
  'tankDensity',
  'heliumPressure',
  'motorEfficiency',
  'batteryEnergy',
  'batteryPower',
] as const;
const chamberKeys = ['efficiency', 'contractionRatio', 'characteristicLength', 'convergingAngle'] as const;
const nozzleKeys = [
  'length',
  'shortAreaRatio',
  'insertAreaRatio',
  'insertLength',
  'designMach',
  'kept',
  'innerMach',
  'aspectRatio',
  'modules',
  'machOne',
  'pintleAreaRatio',
  'baseAreaRatio',
  'baseLength',
  'extensionLength',
  'inflectionAngle',
  'pressureRise',
  'baseLipAngle',
  'halfAngle',
  'throatAngle',
  'lipAngle',
] as const;

function ofNozzle(key: (typeof nozzleKeys)[number]): Of {
  return ({ nozzle }) => (nozzle as Partial<Record<typeof key, Quantity | null>>)[key];
}

function ofCycle(key: (typeof cycleKeys)[number]): Of {
  return ({ cycle }) => (cycle as Partial<Record<typeof key, Quantity>> | null)?.[key];
}

function ofPerfectGas(key: 'gamma' | 'molarMass'): Of {
  return ({ propellants }) => (propellants.kind === 'perfect' ? propellants[key] : null);
}

/** To which a gas is heated, or at which a named ingredient is fed. */
function temperature(asked: Asked): Read | number {
  const { propellants } = asked.solution.input;
  const whole = propellants.kind === 'heated' || propellants.kind === 'perfect' ? propellants : null;
  if (asked.part === null && whole !== null) return whole.temperature.value;
  return ofIngredient(({ custom }, row) => custom?.temperature.value ?? row?.temperature)(asked);
}

export const inputReaders: Readers = {
  ...Object.fromEntries(chamberKeys.map((key) => [`chamber.${key}`, stated(({ chamber }) => chamber[key])])),
  ...Object.fromEntries(cycleKeys.map((key) => [`cycle.${key}`, stated(ofCycle(key))])),
  ...Object.fromEntries(nozzleKeys.map((key) => [`nozzle.${key}`, stated(ofNozzle(key))])),
  ...Object.fromEntries(
    statedOfCooling.map((key) => [`cooling.${key}`, stated(({ cooling }) => cooling?.[key])]),
  ),
  'propellants.ratio': (asked) =>
    asked.solution.mixtureRatio ??
    absent(asked, {
      why: 'There are not two propellants to have a ratio.',
      mend: 'Ask an engine that burns an oxidiser with a fuel.',
    }),
  'propellants.equivalenceRatio': stated(({ propellants }) =>
    propellants.kind === 'burnt' && propellants.mixture.by === 'equivalenceRatio'
      ? propellants.mixture.ratio
      : null,
  ),
  'propellants.gamma': stated(ofPerfectGas('gamma')),
  'propellants.molarMass': stated(ofPerfectGas('molarMass')),
  'propellants.temperature': temperature,
  'propellants.share': ofIngredient(({ share }) => share.value),
  'propellants.enthalpy': ofIngredient(({ custom }, row) => custom?.enthalpy.value ?? row?.enthalpy),
  'propellants.density': ofIngredient(({ custom }, row) =>
    custom === null ? (row?.phase === 'gas' ? null : row?.density) : custom.density?.value,
  ),
  'chemistry.areaRatio': stated(({ chemistry }) =>
    chemistry.kind === 'frozenFrom' && 'areaRatio' in chemistry ? chemistry.areaRatio : null,
  ),
  'chemistry.pressure': stated(({ chemistry }) =>
    chemistry.kind === 'frozenFrom' && 'pressure' in chemistry ? chemistry.pressure : null,
  ),
  'size.thrust': stated(({ size }) => (size.by === 'thrust' ? size.thrust : null)),
};
