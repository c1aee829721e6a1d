/** Where a vehicle is to go. */

import { type Cursor, fieldQuantityAt, keyOffset } from './cursor.ts';
import type { Quantity, VehicleGoal } from './model.ts';
import { plainQuantity } from './plainQuantity.ts';
import type { EngineContext } from './readEngine.ts';
import { quote } from './report.ts';
import { payloadField, vehicleForms } from './vehicleForm.ts';
import type { SectionReader, WrittenVehicle } from './vehicleSections.ts';

/** Where the vehicle is to go: an orbit, or as high as a payload lets it. Null with a problem told. */
export function readGoal(
  reader: SectionReader,
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
export function refuseFlatOrbit(
  { latitude, inclination }: { readonly latitude: Quantity | null; readonly inclination: Quantity | null },
  reader: SectionReader,
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
