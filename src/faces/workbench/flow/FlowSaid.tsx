import { chieflyAgainstWords } from '../../../telling/figures/flowAgainst.ts';
import { formatAltitude, formatPressure } from '../../../telling/numbers/formatNumber.ts';
import { flowView } from './flows.ts';
import type { ShownFlow } from './shownFlows.ts';

/** Free beside the words, of the width: what the scale marks reaches in there. */
const EDGE = 0.07;

/** [px] Below it more words would hide the jet. */
const NARROW = 240;

interface FlowSaidProps {
  readonly name: string;
  readonly shown: ShownFlow;
}

/** Which field it is, and what it leaves out. */
export function FlowSaid({ name, shown }: FlowSaidProps) {
  const { field, box } = shown;
  const { altitude, ambientPressure, thinnest, fineness, leaves, insideBell, kernel } = field;
  const isNarrow = box.width < NARROW;
  const air = thinnest
    ? `the thinnest air computed, ${formatPressure(ambientPressure)}`
    : `air of ${formatPressure(ambientPressure)}${altitude === null ? '' : altitude === 0 ? ' (the pad)' : ` (${formatAltitude(altitude)})`}`;
  return (
    <p
      class="flow-said"
      style={{
        left: `${box.x + EDGE * box.width}px`,
        width: `${(1 - 2 * EDGE) * box.width}px`,
        top: `${box.y + box.height}px`,
      }}
    >
      <b>
        {name}: inviscid, computed in {air}
      </b>
      {isNarrow &&
        `${fineness === 'coarse' ? ', coarse' : ''}${kernel === 'graphics processor' ? ', finer, by the graphics processor' : ''}${leaves === null ? '' : `; made to leave the wall by ${leaves.by}`}${insideBell ? '; without the bell round the jet' : ''}. No turbulence.`}
      {isNarrow || <Rest shown={shown} />}
    </p>
  );
}

/** What else is to be known of the picture. */
function Rest({ shown: { field, longer } }: Pick<FlowSaidProps, 'shown'>) {
  const chiefly = chieflyAgainstWords(field);
  const { leaves, insideBell, steady, fineness, kernel } = field;
  return (
    <>
      {flowView.value === 'density' && ', by density'}
      {flowView.value === 'density gradient' && ', by change of density'}
      {fineness === 'coarse' && ', coarse so far'}
      {kernel === 'graphics processor' && ', finer, by the graphics processor of this machine'}
      {longer !== 1 && ', its jet drawn to where the shock stands here'}
      {leaves !== null && `; made to leave the wall by ${leaves.by}`}
      {insideBell && '; without the bell round the jet'}
      {!steady && '; a mean, the jet flaps'}. No turbulence: it does not mix with the air.
      {chiefly !== '' && ` ${chiefly}`}
    </>
  );
}
