/** One vehicle, its sections merged already, into SI. */

import { type Cursor, choiceAt, textAt } from './cursor.ts';
import type { VehicleInput } from './model.ts';
import type { EngineContext } from './readEngine.ts';
import { readGoal, refuseFlatOrbit } from './readGoal.ts';
import { readStage } from './readStage.ts';
import { heldField, vehicleForms } from './vehicleForm.ts';
import { sectionReader, type WrittenVehicle } from './vehicleSections.ts';

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
  const first = readStage(reader, 'first', cursor, context);
  const second = has('second') ? readStage(reader, 'second', cursor, context) : null;
  const third = has('third') ? readStage(reader, 'third', cursor, context) : null;
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
    goal: readGoal(reader, written, cursor, context),
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
