import { deliveredText, idealText, lossLines } from '../../../answer/lossWords.ts';
import type { LossBudget } from '../../../answer/model.ts';
import type { ShownEngine } from '../state/pair.ts';
import { TracedNumber } from './TracedNumber.tsx';

/** From ideal to delivered, line by line. */
export function Losses({ budget, engine }: { readonly budget: LossBudget; readonly engine: ShownEngine }) {
  const traced = (quantity: string, shown: string, what: string, part = '') => (
    <TracedNumber
      quantity={quantity}
      engine={engine.id}
      shown={shown}
      condition="in vacuum"
      label={`${engine.input.name}, ${what}`}
      expression={`${engine.id}.${quantity}${part}`}
    />
  );
  return (
    <table class="losses">
      <caption>What is lost, specific impulse in vacuum</caption>
      <tbody>
        <tr>
          <th scope="row">ideal</th>
          <td>{traced('losses.ideal', idealText(budget), 'ideal specific impulse')}</td>
          <td />
        </tr>
        {lossLines(budget).map(({ name, impulse, share, band, source }) => (
          <tr key={name} title={source}>
            <th scope="row">{name}</th>
            <td>{traced('losses.items.specificImpulse', impulse, name, `(item ${name})`)}</td>
            <td>
              {share}
              {band !== '' && <span class="band"> {band}</span>}
            </td>
          </tr>
        ))}
        <tr>
          <th scope="row">delivered</th>
          <td>{traced('losses.delivered', deliveredText(budget), 'delivered specific impulse')}</td>
          <td />
        </tr>
      </tbody>
    </table>
  );
}
