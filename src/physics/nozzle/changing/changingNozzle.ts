import { requireAmbientPressure } from '../../air/ambient.ts';
import type { Expansion } from '../../gas/flow.ts';
import type {
  ChamberShape,
  Contour,
  FieldBalance,
  ModeChange,
  NozzleMode,
  NozzleModel,
  NozzleSpec,
  ThrustAt,
} from '../model.ts';

/** A nozzle with two modes: what belongs to it, and where it goes over from one to the other. */
export interface ChangingNozzle {
  readonly spec: NozzleSpec;
  /** The nozzle as it is in thin air: exit state, field and balance of the whole are its. */
  readonly whole: Pick<
    NozzleModel,
    'exit' | 'divergenceFactor' | 'matchedAmbient' | 'dischargeCoefficient' | 'wallStations'
  > & { balance(): FieldBalance | null };
  /** Found when first asked for, then kept. */ change(): ModeChange;
  /** Where the gas shapes the wall, else absent. */
  readonly contour?: (throatRadius: number, chamberShape: ChamberShape) => Contour;
  readonly wakeAdds?: NozzleModel['wakeAdds'];
  readonly omitted: readonly string[];
  readonly models: readonly string[];
}

/** In ambient at or above the change the mode of thick air, below it that of thin air. */
export function changingNozzle(nozzle: ChangingNozzle, expansion: Expansion): NozzleModel {
  const { spec, whole } = nozzle;
  let found: ModeChange | null = null;
  const change = (): ModeChange => {
    found ??= nozzle.change();
    return found;
  };
  return {
    spec,
    expansion,
    exit: whole.exit,
    get divergenceFactor() {
      return whole.divergenceFactor;
    },
    matchedAmbient: whole.matchedAmbient,
    get dischargeCoefficient() {
      return whole.dischargeCoefficient;
    },
    ...(nozzle.contour && { contour: nozzle.contour }),
    ...(nozzle.wakeAdds && { wakeAdds: nozzle.wakeAdds }),
    wallStations: () => whole.wallStations(),
    balance: () => whole.balance(),
    leaving: (ambientPressure) => modeAt(change(), ambientPressure).leaving?.(ambientPressure) ?? null,
    get change() {
      return change();
    },
    omitted: nozzle.omitted,
    models: nozzle.models,
    at(ambientPressure: number): ThrustAt {
      requireAmbientPressure(ambientPressure);
      return modeAt(change(), ambientPressure).at(ambientPressure);
    },
  };
}

/** The mode in use at an ambient pressure [Pa] on the way up. */
export function modeAt(change: ModeChange, ambientPressure: number): NozzleMode {
  return ambientPressure >= change.ambientPressure ? change.thick : change.thin;
}

/** A mode that is a nozzle of its own. */
export function modeOf(
  name: string,
  model: Pick<NozzleModel, 'at' | 'wallStations' | 'leaving' | 'separation'>,
  contour?: (throatRadius: number, chamber: ChamberShape) => Contour,
): NozzleMode {
  return {
    name,
    at: (ambientPressure) => ({ ...model.at(ambientPressure), mode: name }),
    wallStations: () => model.wallStations(),
    leaving: (ambientPressure) => model.leaving?.(ambientPressure) ?? null,
    separation: () => model.separation?.() ?? null,
    ...(contour && { contour }),
  };
}
