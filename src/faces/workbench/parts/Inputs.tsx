import { inputLines } from '../state/inputLines.ts';
import { inputRows } from '../state/inputRows.ts';
import { choosePair, engineInputs, type ShownEngine, shownInputs } from '../state/pair.ts';
import { onlyDiffering } from '../state/view.ts';
import { EngineMark } from './EngineMark.tsx';
import { faultOf, InputLineRow } from './InputLineRow.tsx';

/** The inputs of the engines shown, line by line side by side; written to the study file when committed. */
export function Inputs() {
  const engines = shownInputs.value;
  const lines = inputLines.value.filter(({ stands }) => !onlyDiffering.value || stands !== 'same');
  return (
    <div class="inputs">
      {engineInputs.value.length > 2 && <PairPicker engines={engines} />}
      {engines.length > 1 && <DifferingOnly />}
      <table>
        <caption class="unseen">Inputs of the engines shown</caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">Input</span>
            </th>
            {engines.map(({ id, style, input }) => (
              <th key={id} scope="col" class={`text-${style.order}`}>
                <EngineMark style={style} /> {input.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <InputLineRow key={line.key} line={line} />
          ))}
        </tbody>
      </table>
      {engines.map((engine) => (
        <FailedElsewhere key={engine.id} engine={engine} />
      ))}
      <p class="hint">
        What differs stands out. Enter, leaving a field or letting a slider go writes it to study.yaml; arrow
        keys step, Escape takes back; any unit will do. Under a name: the padlock locks both engines together,
        so that a change goes to both; the arrows copy one’s value to the other; the turned arrow goes back to
        what the file said when this page opened it. On a dotted line: from the engine that this one is like,
        or a default.
      </p>
    </div>
  );
}

function DifferingOnly() {
  const same = inputLines.value.filter(({ stands }) => stands === 'same').length;
  if (same === 0) return null;
  return (
    <p class="differing">
      <button
        type="button"
        class="plain-button"
        aria-pressed={onlyDiffering.value}
        onClick={() => {
          onlyDiffering.value = !onlyDiffering.value;
        }}
      >
        Only what differs
      </button>
      <span class="hint">{`${same} ${same === 1 ? 'is' : 'are'} the same`}</span>
    </p>
  );
}

/** Why an engine failed, where no line of the form is the cause. */
function FailedElsewhere({ engine }: { readonly engine: ShownEngine }) {
  const { result, input } = engine;
  if (result.ok || result.isAwaited) return null;
  if (inputRows(input).some((row) => !row.fixed && faultOf(engine, row) !== null)) return null;
  return (
    <p class="fault">
      {input.name}: {result.problem.what} {result.problem.mend}
    </p>
  );
}

function PairPicker({ engines }: { readonly engines: readonly ShownEngine[] }) {
  const [first, second] = engines.map(({ id }) => id);
  const select = (value: string | undefined, label: string, choose: (id: string) => void) => (
    <label class="choice">
      <span class="unseen">{label}</span>
      <select value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {engineInputs.value.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
  if (first === undefined || second === undefined) return null;
  // Choosing the engine that stands on the other side swaps the two.
  return (
    <div class="picker">
      Side by side {select(first, 'First engine', (id) => choosePair(id, id === second ? first : second))}
      {select(second, 'Second engine', (id) => choosePair(id === first ? second : first, id))}
    </div>
  );
}
