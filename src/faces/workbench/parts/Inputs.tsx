import { type InputRow, inputRows } from '../state/inputRows.ts';
import { choosePair, engineInputs, type ShownEngine, shownEngines } from '../state/pair.ts';
import { openCard } from '../state/view.ts';
import { EngineMark } from './EngineMark.tsx';
import { Field } from './Field.tsx';

/** The inputs of the engines shown, line by line side by side; written to the study file when committed. */
export function Inputs() {
  const engines = shownEngines.value;
  const columns = engines.map((engine) => new Map(inputRows(engine.input).map((row) => [row.key, row])));
  const lines = mergedKeys(columns).map((key) => columns.map((column) => column.get(key)));
  return (
    <div class="inputs">
      {engineInputs.value.length > 2 && <PairPicker engines={engines} />}
      <table>
        <caption class="unseen">Inputs of the engines shown</caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">Input</span>
            </th>
            {engines.map(({ id, order, input }) => (
              <th key={id} scope="col" class={`text-${order}`}>
                <EngineMark order={order} /> {input.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Line key={line.find((row) => row !== undefined)?.key} line={line} engines={engines} />
          ))}
        </tbody>
      </table>
      {engines.map((engine) => (
        <FailedElsewhere key={engine.id} engine={engine} />
      ))}
      <p class="hint">
        Enter or leave a field to write it to study.yaml; arrow keys step, Escape takes back. Any unit will
        do.
      </p>
    </div>
  );
}

/** Keys of all columns, each column's order kept. */
function mergedKeys(columns: readonly ReadonlyMap<string, InputRow>[]): readonly string[] {
  const keys: string[] = [];
  for (const column of columns) {
    let after = -1;
    for (const key of column.keys()) {
      const known = keys.indexOf(key);
      if (known >= 0) after = known;
      else keys.splice(++after, 0, key);
    }
  }
  return keys;
}

interface LineProps {
  /** The input in each engine; undefined where an engine has none. */
  readonly line: readonly (InputRow | undefined)[];
  readonly engines: readonly ShownEngine[];
}

function Line({ line, engines }: LineProps) {
  const named = line.find((row) => row !== undefined);
  if (named === undefined) return null;
  return (
    <tr>
      <th scope="row">
        {named.quantity === null ? named.label : <LabelButton row={named} quantity={named.quantity} />}
      </th>
      {line.map((row, index) => {
        const engine = engines[index];
        if (engine === undefined) return null;
        return (
          <td key={engine.id}>
            {row === undefined ? (
              <span class="none">none</span>
            ) : row.fixed ? (
              <span class="fixed">{row.text}</span>
            ) : (
              <Field row={row} label={`${engine.input.name}, ${named.label}`} fault={faultOf(engine, row)} />
            )}
          </td>
        );
      })}
    </tr>
  );
}

function LabelButton({ row, quantity }: { readonly row: InputRow; readonly quantity: string }) {
  return (
    <button
      type="button"
      class="label"
      onClick={() => {
        openCard.value = { quantity, engine: null, shown: row.text, condition: 'as set in the study' };
      }}
    >
      {row.label}
    </button>
  );
}

/** Why the engine failed, if this input is the cause. */
function faultOf({ result }: ShownEngine, row: InputRow): string | null {
  if (result.ok || !isCause(result.problem.where, row.path)) return null;
  return `${result.problem.what} ${result.problem.mend}`;
}

function isCause(where: string | undefined, path: string): boolean {
  return where !== undefined && (where === path || path.endsWith(`.${where}`));
}

/** Why an engine failed, where no line of the form is the cause. */
function FailedElsewhere({ engine }: { readonly engine: ShownEngine }) {
  const { result, input } = engine;
  if (result.ok) return null;
  if (inputRows(input).some((row) => !row.fixed && isCause(result.problem.where, row.path))) return null;
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
