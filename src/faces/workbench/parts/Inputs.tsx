import { useId, useState } from 'preact/hooks';
import { type InputRow, inputRows, lineKeys } from '../state/inputRows.ts';
import { choosePair, engineInputs, type ShownEngine, shownEngines } from '../state/pair.ts';
import { showCard } from '../state/view.ts';
import { EngineMark } from './EngineMark.tsx';
import { Field } from './Field.tsx';

/** The inputs of the engines shown, line by line side by side; written to the study file when committed. */
export function Inputs() {
  const engines = shownEngines.value;
  const columns = engines.map((engine) => inputRows(engine.input));
  const lines = lineKeys(columns).map((key) => columns.map((rows) => rows.find((row) => row.key === key)));
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
            {engines.map(({ id, style, input }) => (
              <th key={id} scope="col" class={`text-${style.order}`}>
                <EngineMark style={style} /> {input.name}
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
        Enter, or leaving a field, writes it to study.yaml; arrow keys step, Escape takes back; any unit will
        do. Paler values come from the engine that this one is like, or are defaults.
      </p>
    </div>
  );
}

interface LineProps {
  /** The input in each engine; undefined where an engine has none. */
  readonly line: readonly (InputRow | undefined)[];
  readonly engines: readonly ShownEngine[];
}

function Line({ line, engines }: LineProps) {
  const [refusals, setRefusals] = useState<Readonly<Record<string, string | null>>>({});
  const id = useId();
  const named = line.find((row) => row !== undefined);
  if (named === undefined) return null;
  const first = engines[line.indexOf(named)];
  const cells = line.flatMap((row, index) => {
    const engine = engines[index];
    if (engine === undefined) return [];
    const fault = row === undefined ? null : (refusals[engine.id] ?? faultOf(engine, row));
    return [{ engine, row, fault, faultId: fault === null ? null : `${id}-${engine.id}` }];
  });
  return (
    <>
      <tr>
        <th scope="row">
          {named.quantity === null ? (
            named.label
          ) : (
            <LabelButton row={named} quantity={named.quantity} engine={first?.id ?? null} />
          )}
        </th>
        {cells.map(({ engine, row, faultId }) => (
          <td key={engine.id}>
            {row === undefined ? (
              <span class="none">none</span>
            ) : row.fixed ? (
              <span class="fixed">{row.text}</span>
            ) : (
              <Field
                row={row}
                label={`${engine.input.name}, ${named.label}`}
                faultId={faultId}
                onRefusal={(words) =>
                  setRefusals((before) =>
                    (before[engine.id] ?? null) === words ? before : { ...before, [engine.id]: words },
                  )
                }
              />
            )}
          </td>
        ))}
      </tr>
      {cells.map(({ engine, fault, faultId }) =>
        faultId === null ? null : (
          <tr key={engine.id} class="fault-line">
            <td colSpan={1 + engines.length}>
              <p class="fault" id={faultId} role="alert">
                {engine.input.name}: {fault}
              </p>
            </td>
          </tr>
        ),
      )}
    </>
  );
}

interface LabelButtonProps {
  readonly row: InputRow;
  readonly quantity: string;
  readonly engine: string | null;
}

function LabelButton({ row, quantity, engine }: LabelButtonProps) {
  return (
    <button
      type="button"
      class="label"
      onClick={() => {
        showCard({
          quantity,
          engine,
          shown: row.text,
          condition: 'as set in the study',
          expression: engine === null ? null : `${engine}.${quantity}`,
        });
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
