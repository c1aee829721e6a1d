import { deliveredText, idealText, lossLines } from '../../../answer/lossWords.ts';
import type { LossBudget } from '../../../answer/model.ts';

/** From ideal to delivered, line by line. */
export function Losses({ budget }: { readonly budget: LossBudget }) {
  return (
    <table class="losses">
      <caption>What is lost, specific impulse in vacuum</caption>
      <tbody>
        <tr>
          <th scope="row">ideal</th>
          <td>{idealText(budget)}</td>
          <td />
        </tr>
        {lossLines(budget).map(({ name, impulse, share, band, source }) => (
          <tr key={name} title={source}>
            <th scope="row">{name}</th>
            <td>{impulse}</td>
            <td>
              {share}
              {band !== '' && <span class="band"> {band}</span>}
            </td>
          </tr>
        ))}
        <tr>
          <th scope="row">delivered</th>
          <td>{deliveredText(budget)}</td>
          <td />
        </tr>
      </tbody>
    </table>
  );
}
