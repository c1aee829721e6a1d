/** One vehicle, its sections merged already, into SI. */

import {
  type Cursor,
  choiceAt,
  defaultQuantity,
  type Entries,
  fieldQuantityAt,
  keyOffset,
  offsetAt,
  refuseOtherKeys,
  textAt,
} from './cursor.ts';
import type { QuantityField } from './form.ts';
import type { Quantity, StageInput, StageName, StagePush, VehicleGoal, VehicleInput } from './model.ts';
import { plainQuantity } from './plainQuantity.ts';
import { type EngineContext, engineNameAt } from './readEngine.ts';
import { quote } from './report.ts';
import { heldField, payloadField, type VehicleSection, vehicleForms } from './vehicleForm.ts';

/** A vehicle as written, with what it has from others. */
export interface WrittenVehicle {
  readonly sections: ReadonlyMap<string, Entries>;
  /** Where each of them is written last. */ readonly cursors: ReadonlyMap<string, Cursor>;
  readonly payload: Cursor | null;
  readonly held: Cursor | null;
}

interface Named {
  readonly like: string | null;
  readonly name: Cursor | undefined;
}

/** Null with a problem told. */
export function readVehicle(
  id: string,
  cursor: Cursor,
  written: WrittenVehicle,
  { like, name: nameAt }: Named,
  context: EngineContext,
): VehicleInput | null {
  const { report } = context;
  const told = report.problems.length;
  const reader = sectionReader(cursor, written, context);
  const { has, section } = reader;
  const first = stageOf(reader, 'first', cursor, context);
  const second = has('second') ? stageOf(reader, 'second', cursor, context) : null;
  const third = has('third') ? stageOf(reader, 'third', cursor, context) : null;
  if (has('third') && !has('second')) {
    reader.problem(
      'third',
      'stage-without-one-below',
      'There is a third stage and no second.',
      'Call it second.',
    );
  }
  const fairing = section('fairing');
  const drag = section('drag');
  const limits = section('limits');
  const launch = section('launch');
  const steering = section('steering');
  const reliability = section('reliability');
  const name =
    nameAt === undefined ? id : textAt(nameAt, 'a name', 'Write a name, e.g. Alder booster.', report);
  const vehicle = {
    id,
    name: name?.trim() ?? id,
    like,
    stages: [first, second, third].filter((stage) => stage !== null),
    fairing: has('fairing')
      ? {
          mass: fairing.required('mass', vehicleForms.fairing.mass),
          dropAltitude: fairing.required('dropAltitude', vehicleForms.fairing.dropAltitude),
        }
      : null,
    drag: {
      area: drag.required('area', vehicleForms.drag.area),
      table: drag.choice('table', vehicleForms.drag.table),
      factor: drag.required('factor', vehicleForms.drag.factor),
    },
    limits: {
      acceleration: limits.optional('acceleration', vehicleForms.limits.acceleration),
      dynamicPressure: limits.optional('dynamicPressure', vehicleForms.limits.dynamicPressure),
    },
    launch: {
      latitude: launch.required('latitude', vehicleForms.launch.latitude),
      altitude: launch.required('altitude', vehicleForms.launch.altitude),
      inclination: launch.optional('inclination', vehicleForms.launch.inclination),
    },
    steering: {
      turnSpeed: steering.required('turnSpeed', vehicleForms.steering.turnSpeed),
      bend: steering.optional('bend', vehicleForms.steering.bend),
    },
    goal: goalOf(reader, written, cursor, context),
    held: written.held === null ? heldField.byDefault : choiceAt(written.held, heldField, report),
    reliability: has('reliability')
      ? {
          each: reliability.required('each', vehicleForms.reliability.each),
          allowedOut: reliability.whole('allowedOut', vehicleForms.reliability.allowedOut),
          uncontained: reliability.required('uncontained', vehicleForms.reliability.uncontained),
        }
      : null,
  };
  refuseFlatOrbit(vehicle.launch, reader);
  if (vehicle.reliability?.allowedOut && first && vehicle.reliability.allowedOut.value > first.count.value) {
    reader.problem(
      'reliability',
      'more-out-than-engines',
      'More engines may stop than there are.',
      'Allow fewer.',
    );
  }
  // A problem anywhere leaves some of these null; with none, all that may not be null is there.
  return report.problems.length > told ? null : (vehicle as VehicleInput);
}

type Reader = ReturnType<typeof sectionReader>;

function sectionReader(cursor: Cursor, { sections, cursors }: WrittenVehicle, { report }: EngineContext) {
  const seen = new Set<VehicleSection>();
  function problem(name: VehicleSection, code: string, what: string, mend: string): void {
    const at = cursors.get(name) ?? cursor;
    report.problem({ code, what: `${quote(at.path)}: ${what}`, mend }, at.path, keyOffset(at));
  }
  function section(name: VehicleSection) {
    const entries: Entries = sections.get(name) ?? new Map<string, Cursor>();
    if (!seen.has(name))
      refuseOtherKeys(entries, Object.keys(vehicleForms[name]), `the section ${name} of a vehicle`, report);
    seen.add(name);
    function required(key: string, field: QuantityField): Quantity | null {
      const at = entries.get(key);
      if (at !== undefined) {
        const read = fieldQuantityAt(at, field, report);
        return read === null ? null : plainQuantity(read);
      }
      if (field.byDefault !== undefined) return defaultQuantity(field, `${cursor.path}.${name}.${key}`);
      const where = cursors.get(name) ?? cursor;
      report.problem(
        {
          code: 'key-missing',
          what: `${quote(`${cursor.path}.${name}`)} has no ${key}.`,
          mend: `Add it, e.g. ${key}: ${field.example}.`,
        },
        `${cursor.path}.${name}.${key}`,
        keyOffset(where),
      );
      return null;
    }
    function whole(key: string, field: QuantityField): Quantity | null {
      const read = required(key, field);
      if (read === null || Number.isInteger(read.value)) return read;
      const at = entries.get(key)!;
      report.problem(
        {
          code: 'not-whole',
          what: `${quote(read.text)} is no whole number.`,
          mend: `Write ${field.range.words}.`,
        },
        at.path,
        offsetAt(at),
      );
      return null;
    }
    return {
      entries,
      required,
      whole,
      optional: (key: string, field: QuantityField): Quantity | null =>
        entries.has(key) ? required(key, field) : null,
      choice<T extends string>(
        key: string,
        field: {
          readonly is: 'choice';
          readonly options: readonly T[];
          readonly byDefault: T;
          readonly meaning: string;
        },
      ): T | null {
        const at = entries.get(key);
        return at === undefined ? field.byDefault : choiceAt(at, field, report);
      },
    };
  }
  return { section, problem, has: (name: VehicleSection): boolean => sections.has(name) };
}

function stageOf(reader: Reader, name: StageName, cursor: Cursor, context: EngineContext): StageInput | null {
  const { report } = context;
  if (!reader.has(name)) {
    report.problem(
      {
        code: 'key-missing',
        what: `${quote(cursor.path)} has no first stage.`,
        mend: 'Add first: { engine: bell, count: 9, propellant: 240 t, dry: 18 t }.',
      },
      `${cursor.path}.first`,
      keyOffset(cursor),
    );
    return null;
  }
  const form = vehicleForms[name];
  const section = reader.section(name);
  const push = pushOf(reader, name, section, context);
  const count = section.whole('count', form.count);
  const stopped = section.whole('stopped', form.stopped);
  const propellant = section.required('propellant', form.propellant);
  const dry = section.required('dry', form.dry);
  const lowestThrottle = section.required('lowestThrottle', form.lowestThrottle);
  const coast = 'coast' in form ? section.required('coast', form.coast) : null;
  if (count !== null && stopped !== null && stopped.value >= count.value) {
    reader.problem(
      name,
      'no-engine-left',
      'no engine is left running.',
      'Stop fewer engines than there are.',
    );
  }
  if (push === null || count === null || stopped === null || propellant === null || dry === null) return null;
  return lowestThrottle === null
    ? null
    : { name, push, count, stopped, propellant, dry, lowestThrottle, coast };
}

function pushOf(
  reader: Reader,
  name: StageName,
  section: ReturnType<Reader['section']>,
  context: EngineContext,
): StagePush | null {
  const at = section.entries.get('engine');
  const byFigures = section.entries.has('specificImpulse') || section.entries.has('thrust');
  if (at !== undefined && byFigures) {
    reader.problem(
      name,
      'stage-two-ways',
      'an engine and figures push it.',
      'Keep engine, or specificImpulse and thrust.',
    );
    return null;
  }
  if (at !== undefined) {
    const engine = engineNameAt(at, context);
    return engine === null ? null : { by: 'engine', engine };
  }
  if (name === 'first' || !byFigures) {
    const figures = name === 'first' ? '' : ', or specificImpulse: 355 s and thrust: 120 kN';
    reader.problem(
      name,
      'key-missing',
      'nothing pushes it.',
      `Add engine: ${context.engineIds[0] ?? 'bell'}${figures}.`,
    );
    return null;
  }
  const form = vehicleForms[name];
  const specificImpulse = section.required('specificImpulse', form.specificImpulse);
  const thrust = section.required('thrust', form.thrust);
  return specificImpulse === null || thrust === null ? null : { by: 'figures', specificImpulse, thrust };
}

function goalOf(
  reader: Reader,
  { payload: payloadAt }: WrittenVehicle,
  cursor: Cursor,
  { report }: EngineContext,
): VehicleGoal | null {
  const refuse = (code: string, what: string, mend: string): null => {
    report.problem({ code, what, mend }, cursor.path, keyOffset(cursor));
    return null;
  };
  if (reader.has('orbit') && payloadAt !== null) {
    const what = `${quote(cursor.path)} states an orbit and a payload.`;
    return refuse(
      'goal-two-ways',
      what,
      'Keep orbit, to find the payload, or payload, to find the highest point.',
    );
  }
  if (payloadAt !== null) {
    const payload = fieldQuantityAt(payloadAt, payloadField, report);
    return payload === null ? null : { is: 'height', payload: plainQuantity(payload) };
  }
  if (!reader.has('orbit')) {
    const what = `${quote(cursor.path)} states neither an orbit nor a payload.`;
    return refuse(
      'key-missing',
      what,
      'Add orbit: { altitude: 200 km }, or payload: 50 kg for a flight straight up.',
    );
  }
  const orbit = reader.section('orbit');
  const altitude = orbit.required('altitude', vehicleForms.orbit.altitude);
  const apogee = orbit.optional('apogee', vehicleForms.orbit.apogee);
  if (altitude !== null && apogee !== null && apogee.value < altitude.value) {
    reader.problem(
      'orbit',
      'apogee-below',
      'the apogee lies below the altitude.',
      'Give a higher apogee, or none for a circle.',
    );
  }
  return altitude === null ? null : { is: 'orbit', altitude, apogee };
}

/** No launch reaches a plane that leans less than its latitude without turning it. */
function refuseFlatOrbit(
  { latitude, inclination }: { readonly latitude: Quantity | null; readonly inclination: Quantity | null },
  reader: Reader,
): void {
  if (latitude === null || inclination === null) return;
  const least = Math.abs(latitude.value) - 1e-9;
  if (inclination.value >= least && inclination.value <= Math.PI - least) return;
  reader.problem(
    'launch',
    'orbit-too-flat',
    'the plane of the orbit leans less than the latitude of the pad.',
    'Give an inclination of at least the latitude, or none for a launch due east.',
  );
}
