/** What two engines share and in what they differ, so that no comparison hides what it holds equal. */

import { STANDARD_ATMOSPHERE } from '../../physics/constants.ts';
import type { Ingredient, Nozzle, Propellants } from '../../study/model.ts';
import { figuresAt } from '../conditions.ts';
import { cycleName } from '../cycle/cycleWords.ts';
import { showStated } from '../display.ts';
import { diameterOf, type EngineSolution } from '../solution.ts';

/** Equal to this relative difference: rounding of a sized throat, not a design difference. */
const EQUAL = 1e-6;

interface Trait {
  readonly label: string;
  /** null where the engine has none of it. */ readonly of: (
    engine: EngineSolution,
  ) => string | number | null;
  /** Where it reads better than the label when the engines differ. */ readonly differsAs?: string;
  /** Absent in one engine means that the two cannot differ in it. */ readonly needsBoth?: true;
  /** As printed beside the label where the engines differ. */ readonly words: (
    engine: EngineSolution,
  ) => string;
}

const traits: readonly Trait[] = [
  { label: 'propellants', of: (e) => ingredientKey(e.input.propellants), words: (e) => e.propellants },
  number('mixture ratio', 'propellants.ratio', (e) => e.mixtureRatio, { needsBoth: true }),
  { label: 'chemistry', of: (e) => e.chemistry, words: (e) => e.chemistry },
  number('chamber pressure', 'chamber.pressure', (e) => e.expansion.chamber.pressure),
  number('chamber efficiency', 'chamber.efficiency', (e) => e.input.chamber.efficiency.value),
  { label: 'nozzle form', of: (e) => nozzleForm(e.input.nozzle), words: (e) => nozzleForm(e.input.nozzle) },
  number('area ratio', 'areaRatio', (e) => e.nozzle.spec.areaRatio),
  number('throat area', 'throat.diameter', (e) => diameterOf(e.throatArea), { differsAs: 'throat diameter' }),
  number('exit diameter', 'exit.diameter', (e) => diameterOf(e.exitArea)),
  {
    label: 'cycle',
    of: (e) => (e.input.cycle === null ? null : cycleName(e.input.cycle.kind)),
    needsBoth: true,
    words: (e) => (e.input.cycle === null ? 'none' : cycleName(e.input.cycle.kind)),
  },
  number('propellant flow', 'massFlow', (e) => e.massFlow),
  number('thrust in vacuum', 'vacuum.thrust', (e) => figuresAt(e, 0, null).figures.thrust),
  number(
    'thrust at sea level',
    'seaLevel.thrust',
    (e) => figuresAt(e, STANDARD_ATMOSPHERE, 0).figures.thrust,
  ),
];

function number(
  label: string,
  quantity: string,
  of: (engine: EngineSolution) => number | null,
  rest: Pick<Trait, 'differsAs' | 'needsBoth'> = {},
): Trait {
  return {
    ...rest,
    label,
    of,
    words: (engine) => {
      const value = of(engine);
      if (value === null) return 'none';
      return showStated(quantity, value).text;
    },
  };
}

export interface Shared {
  readonly heldEqual: readonly string[];
  readonly differs: readonly string[];
}

export function sharedTraits(base: EngineSolution, other: EngineSolution): Shared {
  const heldEqual: string[] = [];
  const differs: string[] = [];
  for (const trait of traits) {
    const b = trait.of(base);
    const o = trait.of(other);
    if (b === null && o === null) continue;
    if (trait.needsBoth && (b === null || o === null)) continue;
    if (same(b, o)) heldEqual.push(trait.label);
    else differs.push(`${trait.differsAs ?? trait.label} (${difference(trait, base, other)})`);
  }
  return { heldEqual, differs };
}

/** Two values side by side; where rounding makes them read alike, the share by which they differ. */
function difference(trait: Trait, base: EngineSolution, other: EngineSolution): string {
  const [left, right] = [trait.words(base), trait.words(other)];
  const [b, o] = [trait.of(base), trait.of(other)];
  if (left !== right || typeof b !== 'number' || typeof o !== 'number') return `${left} against ${right}`;
  return `${left}, alike to ${Number((Math.abs(o / b - 1) * 100).toPrecision(1))} %`;
}

function same(b: string | number | null, o: string | number | null): boolean {
  if (typeof b === 'number' && typeof o === 'number') {
    return Math.abs(b - o) <= EQUAL * Math.max(Math.abs(b), Math.abs(o));
  }
  return b === o;
}

/** The stuff itself, whatever its proportions between oxidiser and fuel. */
function ingredientKey(propellants: Propellants): string {
  switch (propellants.kind) {
    case 'burnt':
      return `burnt:${keyOf(propellants.oxidiser)}|${keyOf(propellants.fuel)}`;
    case 'mixed':
      return `mixed:${keyOf(propellants.parts)}`;
    case 'heated':
      return `heated:${keyOf(propellants.parts)}@${propellants.temperature.value}`;
    case 'perfect':
      return `perfect:${propellants.gamma.value},${propellants.molarMass.value},${propellants.temperature.value}`;
  }
}

function keyOf(parts: readonly Ingredient[]): string {
  return parts
    .map((part) => {
      const custom = part.custom;
      const own = custom ? `${JSON.stringify(custom.elements)}:${custom.enthalpy.value}` : '';
      return `${part.id}${own}*${part.share.value}`;
    })
    .sort()
    .join('+');
}

/** The kind of nozzle and its shape, without its area ratio. */
export function nozzleForm(nozzle: Nozzle): string {
  switch (nozzle.kind) {
    case 'ideal':
      return 'ideal nozzle, no wall of its own';
    case 'cone':
      return `${showStated('nozzle.halfAngle', nozzle.halfAngle.value).text} cone`;
    case 'bell':
      return `bell of ${showStated('nozzle.length', nozzle.length.value).text} length`;
    case 'idealBell':
      return idealBellForm(nozzle);
    case 'adapting':
      return 'nozzle that adapts to the air, a bound';
    case 'plug':
      return plugForm(nozzle);
    case 'extendableSkirt':
      return `bell of ${showStated('nozzle.length', nozzle.length.value).text} length with a skirt drawn up to area ratio ${showStated('areaRatio', nozzle.shortAreaRatio.value).text} at first`;
    case 'expansionDeflection':
      return `expansion–deflection nozzle of ${showStated('nozzle.length', nozzle.length.value).text} length`;
    case 'dualBell':
      return `dual bell on a base of area ratio ${showStated('areaRatio', nozzle.baseAreaRatio.value).text}`;
    case 'insert':
      return `bell of ${showStated('nozzle.length', nozzle.length.value).text} length with an insert of area ratio ${showStated('areaRatio', nozzle.insertAreaRatio.value).text} at first`;
  }
}

function idealBellForm({ length, designMach }: Nozzle & { kind: 'idealBell' }): string {
  if (designMach !== null)
    return `ideal bell made for Mach ${showStated('nozzle.designMach', designMach.value).text}`;
  return length === null
    ? 'ideal bell, whole'
    : `ideal bell cut to ${showStated('nozzle.length', length.value).text} length`;
}

function plugForm({ form, kept, modules, moduleShape }: Nozzle & { kind: 'plug' }): string {
  const length = kept.value >= 1 ? 'uncut' : `cut to ${showStated('nozzle.kept', kept.value).text}`;
  const of = modules === null ? '' : `, ${modules.value} ${moduleShape} modules`;
  return `${form === 'linear' ? 'linear plug' : 'plug'} ${length}${of}`;
}
