import { quantity } from '../../../answer/catalogue.ts';
import { show } from '../../../answer/display.ts';
import { coolingRows, coolingVerdict, type HeatRow, heatRows } from '../../../answer/heat/heatWords.ts';
import type { EngineAnswer } from '../../../answer/model.ts';
import { CAUTION_SHORT } from '../../../telling/caution.ts';
import type { ShownEngine } from '../state/pair.ts';
import { Staircase } from './Staircase.tsx';
import { TracedNumber } from './TracedNumber.tsx';

/** Heat to the walls, and the coolant behind them where the study says how the engine is cooled. */
export function Cooling({ answer, engine }: { readonly answer: EngineAnswer; readonly engine: ShownEngine }) {
  if (answer.heat === null) return null;
  const { cooling } = answer;
  const reason = answer.reasons.find(({ path }) => path === 'cooling');
  return (
    <>
      <HeatTable caption="Heat to the walls" rows={heatRows(answer)} engine={engine} />
      {cooling === null && (
        <p>
          {reason?.reason} {reason?.mend}
        </p>
      )}
      {cooling && (
        <>
          <p>{coolingVerdict(cooling)}</p>
          <HeatTable caption="Cooling" rows={coolingRows(answer)} engine={engine} />
          <p class="caution">{CAUTION_SHORT}</p>
          <Staircase cooling={cooling} style={engine.style} />
          {cooling.notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </>
      )}
    </>
  );
}

function HeatTable({
  caption,
  rows,
  engine,
}: {
  readonly caption: string;
  readonly rows: readonly HeatRow[];
  readonly engine: ShownEngine;
}) {
  return (
    <table class="losses">
      <caption>{caption}</caption>
      <tbody>
        {rows.map(({ quantity: name, value }) => (
          <tr key={name} title={quantity(name).meaning}>
            <th scope="row">{quantity(name).label}</th>
            <td>
              {value === null ? (
                'no number'
              ) : (
                <TracedNumber
                  quantity={name}
                  engine={engine.id}
                  shown={show(name, value).text}
                  condition="at full thrust"
                  label={`${engine.input.name}, ${quantity(name).label}`}
                  expression={`${engine.id}.${name}`}
                />
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
