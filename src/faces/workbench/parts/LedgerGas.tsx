import { show } from '../../../answer/display.ts';
import type { ConditionRow } from '../../../answer/model.ts';
import { separationPlaceWords } from '../../../answer/separationWords.ts';
import { formatPressure } from '../../../telling/numbers/formatNumber.ts';
import { altitude } from '../state/altitude.ts';
import type { ShownEngine } from '../state/pair.ts';
import { rowOfLadder } from '../state/shown.ts';
import { aboutOf, classOf, noNumberWords, placeHere } from './ledgerWords.ts';
import { TracedNumber } from './TracedNumber.tsx';

/** The row that tells what the gas does in each engine. */
export function LedgerGas({ engines }: { readonly engines: readonly ShownEngine[] }) {
  const [first, second] = engines;
  const criteria = new Set(
    engines.flatMap(({ result }) =>
      result.ok ? [rowOfLadder(result.ladder, altitude.value).flow.criterion] : [],
    ),
  );
  // A bound that never lets go has no criterion to name.
  const named = [...criteria].filter((criterion) => !criterion.startsWith('none'));
  return (
    <tr>
      <th scope="row">The gas</th>
      {first !== undefined && <FlowCell engine={first} />}
      <td class="shared-axis" aria-hidden="true" />
      {second === undefined ? <td /> : <FlowCell engine={second} />}
      <td class="difference">{named.join('; ')}</td>
    </tr>
  );
}

/** `leaves the wall at ε 21` */
function whereWords({ place }: NonNullable<ConditionRow['separation']>): string {
  return `leaves the wall at area ratio ${show('separation.place.areaRatio', place.areaRatio).text}`;
}

function FlowCell({ engine }: { readonly engine: ShownEngine }) {
  const { result } = engine;
  if (!result.ok) return <td class={`value ${engine.side} absent`}>{noNumberWords(engine)}</td>;
  const row = rowOfLadder(result.ladder, altitude.value);
  const { flow, separation } = row;
  const where = separation === undefined ? null : separationPlaceWords(separation);
  const words =
    flow.state === 'separated' && separation !== undefined
      ? whereWords(separation)
      : wordsOf(row, engine.input);
  const warned = separation?.sideLoads === undefined ? '' : ` ${separation.sideLoads}`;
  return (
    <td class={`words ${classOf(engine)}`}>
      <TracedNumber
        quantity="flow.separationPressure"
        engine={engine.id}
        shown={`${aboutOf(engine)}${words}`}
        condition={`lets go below ${formatPressure(flow.separationPressure)} at the lip; there are ${formatPressure(flow.lipPressure)}${where === null ? '' : `; ${where}.${warned}`}`}
        label={`${engine.input.name}, the gas`}
        expression={`${engine.id}.flow.separationPressure${placeHere()}`}
      />
    </td>
  );
}

/** A plug is not filled: the gas runs along it. A dual bell in thick air is filled up to its bend alone. */
function wordsOf({ flow, plug, mode }: ConditionRow, input: ShownEngine['input']): string {
  if (flow.state !== 'full') return flowWords[flow.state];
  if (plug !== undefined) return 'stays on the plug';
  const inBase = input.nozzle.kind === 'dualBell' && mode === 'sea-level mode';
  return inBase ? 'fills the base bell' : flowWords.full;
}

const flowWords: Readonly<Record<ConditionRow['flow']['state'], string>> = {
  full: 'fills the nozzle',
  'near the limit': 'near letting go',
  separated: 'leaves the wall',
  unchoked: 'not choked',
};
