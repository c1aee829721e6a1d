/** One stage of a vehicle: what pushes it and what it weighs. */

import { type Cursor, keyOffset } from './cursor.ts';
import type { StageInput, StageName, StagePush } from './model.ts';
import { type EngineContext, engineNameAt } from './readEngine.ts';
import { quote } from './report.ts';
import { vehicleForms } from './vehicleForm.ts';
import type { SectionReader } from './vehicleSections.ts';

/** Null with a problem told. */
export function readStage(
  reader: SectionReader,
  name: StageName,
  cursor: Cursor,
  context: EngineContext,
): StageInput | null {
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
  const engineMass = section.choice('engineMass', form.engineMass);
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
  if (engineMass === 'estimated' && push?.by === 'figures') {
    reader.problem(
      name,
      'engine-mass-without-engine',
      'figures push it, so there is no engine whose mass could be estimated.',
      'Delete engineMass and count the engines in dry.',
    );
  }
  if (push === null || count === null || stopped === null || propellant === null || dry === null) return null;
  return lowestThrottle === null || engineMass === null
    ? null
    : { name, push, count, stopped, propellant, dry, engineMass, lowestThrottle, coast };
}

function pushOf(
  reader: SectionReader,
  name: StageName,
  section: ReturnType<SectionReader['section']>,
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
