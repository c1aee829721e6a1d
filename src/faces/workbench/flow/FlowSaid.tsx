import { formatAltitude, formatPressure } from '../../../telling/numbers/formatNumber.ts';
import type { ShownFlow } from './shownFlows.ts';

interface FlowSaidProps {
  readonly name: string;
  readonly shown: ShownFlow;
}

/** Which field it is, and what it leaves out. */
export function FlowSaid({ name, shown: { field, longer, box } }: FlowSaidProps) {
  const { altitude, ambientPressure, thinnest, leaves, steady, fineness } = field;
  const air = thinnest
    ? `the thinnest air computed, ${formatPressure(ambientPressure)}`
    : `air of ${formatPressure(ambientPressure)}${altitude === null ? '' : altitude === 0 ? ' (the pad)' : ` (${formatAltitude(altitude)})`}`;
  return (
    <p
      class="flow-said"
      style={{ left: `${box.x}px`, width: `${box.width}px`, top: `${box.y + box.height}px` }}
    >
      <b>
        {name}: computed in {air}
      </b>
      {fineness === 'coarse' && ', coarse so far'}
      {longer !== 1 && ', its jet drawn to where the shock stands here'}
      {leaves !== null && `; made to leave the wall by ${leaves.by}`}
      {!steady && '; a mean, the jet flaps'}. No turbulence: it does not mix with the air.
    </p>
  );
}
