import { quantity } from '../../../answer/catalogue.ts';
import { cycleRows, cycleVerdict } from '../../../answer/cycle/cycleWords.ts';
import { show } from '../../../answer/display.ts';
import type { EngineAnswer } from '../../../answer/model.ts';
import { CAUTION_SHORT } from '../../../telling/caution.ts';
import type { ShownEngine } from '../state/pair.ts';
import { TracedNumber } from './TracedNumber.tsx';

/** How the propellants are pumped and what that costs, where the study says how. */
export function Cycle({ answer, engine }: { readonly answer: EngineAnswer; readonly engine: ShownEngine }) {
  if (answer.cycle === undefined) return null;
  return (
    <>
      <p>{cycleVerdict(answer)}</p>
      <table class="losses">
        <caption>Pumps and tanks</caption>
        <tbody>
          {cycleRows(answer).map(({ quantity: name, label, value, place }) => (
            <tr key={name} title={quantity(name).meaning}>
              <th scope="row">{label}</th>
              <td>
                <TracedNumber
                  quantity={name}
                  engine={engine.id}
                  shown={show(name, value!).text}
                  condition={place === '' ? 'at full thrust' : 'in vacuum'}
                  label={`${engine.input.name}, ${quantity(name).label}`}
                  expression={`${engine.id}.${name}${place}`}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="caution">{CAUTION_SHORT}</p>
    </>
  );
}
