/** What stays as it is while an input moves: the trap in most sweeps, so it is said beside every figure. */

import type { Ambient, EngineInput, Size, Study, VehicleInput } from '../../study/model.ts';
import { nozzleForm } from '../compare/traits.ts';
import { show, showStated } from '../display.ts';
import { settableConditions } from '../inputs/conditions.ts';
import type { Held, SweptRange } from './model.ts';
import { moverOf } from './mover.ts';

/**
 * @param ranges what moves
 * @param named engines on which alone it moves; null: as the study states it
 * @param inCurves engines that the curves are of
 */
export function heldOf(
  study: Study,
  ranges: readonly SweptRange[],
  named: readonly string[] | null,
  inCurves: readonly string[],
): Held {
  const inputs = ranges.filter(({ over }) => !isCondition(over));
  const moved = new Set(inputs.map(({ over }) => inputOf(over)));
  const moving = new Set(inputs.flatMap((range) => moverOf(study, range, named, inCurves).engines));
  const engines = study.engines.filter(({ id }) => inCurves.includes(id));
  const nameOf = (id: string): string => study.engines.find((engine) => engine.id === id)?.name ?? id;
  const lines = engines.map((engine) => {
    const held = heldParts(engine, moving.has(engine.id) ? moved : new Set(), nameOf);
    return `${engine.name}: ${held.join(', ')}.`;
  });
  const flown = study.vehicles.filter(({ id }) => inCurves.includes(id)).map(vehicleLine);
  const leads = engines.filter(({ id }) => moving.has(id));
  const shorts = leads.map((engine) => sizeTrap(engine, moved, nameOf));
  return { short: shortOf(ranges, leads, shorts), lines: [...lines, ...flown] };
}

function vehicleLine({ name, steering }: VehicleInput): string {
  const bend = steering.bend === null ? 'its way up found anew at each point' : 'its first bend as stated';
  return `${name}: tanks, dry masses and drag as stated but for what moves; ${bend}.`;
}

function isCondition(over: string): boolean {
  return settableConditions.some(({ name }) => name === over);
}

function inputOf(over: string): string {
  return over.replace(/^(?:engines|vehicles)\.[^.]+\./, '');
}

function shortOf(
  ranges: readonly SweptRange[],
  leads: readonly EngineInput[],
  shorts: readonly string[],
): string {
  const conditions = ranges.filter(({ over }) => isCondition(over)).map(({ over }) => over);
  const said = conditionWords(conditions);
  if (leads.length === 0) return said ?? 'The engines stay as they are.';
  const alike = new Set(shorts).size === 1;
  const words = alike ? [capital(shorts[0]!)] : leads.map((engine, i) => `${engine.name}: ${shorts[i]!}`);
  return [...words, ...(said === null ? [] : [said])].join(' ');
}

function conditionWords(conditions: readonly string[]): string | null {
  if (conditions.length === 0) return null;
  if (conditions.every((name) => name === 'time'))
    return 'The flight stays as it is; only the moment changes.';
  return conditions.includes('throttle')
    ? 'Throat and nozzle stay as they are; the throttle lowers the chamber pressure.'
    : 'The engines stay as they are; only their surroundings change.';
}

/** What fixes the size, and what therefore moves along. */
function sizeTrap({ size }: EngineInput, moved: ReadonlySet<string>, nameOf: (id: string) => string): string {
  if (moved.has('size.thrust')) return 'the throat is sized for each thrust.';
  if (moved.has('size.throat') || moved.has('size.exit')) return 'the size itself moves; nothing else does.';
  switch (size.by) {
    case 'thrust':
      return `thrust held at ${showStated('size.thrust', size.thrust.value).text} ${placeWords(size.at)}: the throat is sized anew at each point.`;
    case 'throat':
      return `throat held at ${showStated('throat.diameter', size.diameter.value).text}: thrust and propellant flow follow.`;
    case 'exit':
      return `exit held at ${showStated('exit.diameter', size.diameter.value).text}: the throat is sized anew at each point.`;
    case 'same':
      return size.what === 'throat'
        ? `throat held at that of ${nameOf(size.as)}: thrust and propellant flow follow.`
        : `${size.what} held at that of ${nameOf(size.as)}: the throat is sized anew at each point.`;
  }
}

function heldParts(
  engine: EngineInput,
  moved: ReadonlySet<string>,
  nameOf: (id: string) => string,
): readonly string[] {
  const { chamber, nozzle, propellants } = engine;
  const parts = [sizeWords(engine.size, moved, nameOf)];
  if (!moved.has('chamber.pressure')) {
    parts.push(`chamber pressure ${showStated('chamber.pressure', chamber.pressure.value).text}`);
  }
  if (
    propellants.kind === 'burnt' &&
    !moved.has('propellants.ratio') &&
    !moved.has('propellants.equivalenceRatio')
  ) {
    const { by, ratio } = propellants.mixture;
    parts.push(
      by === 'massRatio'
        ? `mixture ratio ${showStated('propellants.ratio', ratio.value).text}`
        : `equivalence ratio ${showStated('propellants.equivalenceRatio', ratio.value).text}`,
    );
  }
  if (!moved.has('nozzle.areaRatio')) {
    parts.push(`area ratio ${showStated('areaRatio', nozzle.areaRatio.value).text}`);
  }
  if (![...moved].some((input) => input.startsWith('nozzle.') && input !== 'nozzle.areaRatio')) {
    parts.push(nozzleForm(nozzle));
  }
  const settled = engine.published?.solveFor;
  if (settled && !settled.stated) parts.push('what its published figures settle found anew at each point');
  return parts.filter((part) => part !== '');
}

function sizeWords(size: Size, moved: ReadonlySet<string>, nameOf: (id: string) => string): string {
  if (['size.thrust', 'size.throat', 'size.exit'].some((input) => moved.has(input))) return '';
  switch (size.by) {
    case 'thrust':
      return `thrust ${showStated('size.thrust', size.thrust.value).text} ${placeWords(size.at)}`;
    case 'throat':
      return `throat ${showStated('throat.diameter', size.diameter.value).text}`;
    case 'exit':
      return `exit ${showStated('exit.diameter', size.diameter.value).text}`;
    case 'same':
      return `${size.what} of ${nameOf(size.as)}`;
  }
}

function placeWords(at: Ambient): string {
  switch (at.kind) {
    case 'vacuum':
      return 'in vacuum';
    case 'altitude':
      return at.altitude.value === 0 ? 'at sea level' : `at ${show('altitude', at.altitude.value).text}`;
    case 'pressure':
      return `at ${show('ambientPressure', at.pressure.value).text} outside`;
  }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
