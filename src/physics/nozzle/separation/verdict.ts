import type { FlowRegime, FlowVerdict } from '../model.ts';
import type { FlowCase, SeparationAt, WallSeparation } from './model.ts';

const STATES: Readonly<Record<FlowCase, FlowRegime>> = {
  underexpanded: 'full',
  matched: 'full',
  overexpanded: 'full',
  'near the limit': 'near the limit',
  separated: 'separated',
  'shock in the throat': 'separated',
  unchoked: 'unchoked',
  'subsonic jet': 'unchoked',
  'no outflow': 'unchoked',
};

/**
 * Whether the gas fills the nozzle, in short.
 *
 *   full            no criterion that counts lets it go before the lip
 *   near the limit  some do, the deciding one doesn't
 *   separated       the deciding one does
 *   unchoked        p_a > p_t: the throat can't be relied on to choke
 */
export function flowVerdict(
  wall: WallSeparation,
  separation: SeparationAt,
  ambientPressure: number,
): FlowVerdict {
  return {
    state: STATES[separation.case],
    criterion: wall.deciding(ambientPressure),
    lipPressure: wall.lipPressure,
    separationPressure: wall.separationPressure(ambientPressure),
  };
}
