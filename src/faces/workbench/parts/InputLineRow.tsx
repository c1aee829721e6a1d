import { useId, useMemo, useState } from 'preact/hooks';
import { editsOf } from '../state/inputEdits.ts';
import type { InputCell, InputLine } from '../state/inputLines.ts';
import type { InputRow } from '../state/inputRows.ts';
import { slidersOf } from '../state/inputSliders.ts';
import type { ShownEngine } from '../state/pair.ts';
import { faults as faultsOfFile } from '../state/studyStore.ts';
import { Field } from './Field.tsx';
import { InputTools } from './InputTools.tsx';
import { LabelButton } from './LabelButton.tsx';

/** One input of the engines shown: its name and tools, then a field and a slider for each. */
export function InputLineRow({ line }: { readonly line: InputLine }) {
  const [refusals, setRefusals] = useState<Readonly<Record<string, string | null>>>({});
  const id = useId();
  const { cells, label, quantity, stands } = line;
  const sliders = useMemo(
    () => slidersOf(cells.map(({ engine, row }) => ({ owner: engine.input, row }))),
    cells.flatMap(({ engine, row }) => [engine.input, row?.text]),
  );
  const refuse = (of: string, words: string | null): void =>
    setRefusals((before) => ((before[of] ?? null) === words ? before : { ...before, [of]: words }));
  const faults = cells.map(({ engine, row }) =>
    row === undefined ? null : (refusals[engine.id] ?? faultOf(engine, row) ?? faultInFile(row)),
  );
  const isOpen = cells.some(({ row }) => row !== undefined && !row.fixed);
  const first = cells.find(({ row }) => row !== undefined);
  const faultId = (of: InputCell): string => `${id}-${of.engine.id}`;
  return (
    <>
      <tr class={stands}>
        <th scope="row">
          {quantity === null || first?.row === undefined ? (
            <span class="label-words">{label}</span>
          ) : (
            <LabelButton row={first.row} owner={first.engine.input} />
          )}
          {isOpen && <InputTools line={line} onRefusal={(words) => refuse(first?.engine.id ?? '', words)} />}
        </th>
        {cells.map((cell, i) => (
          <td key={cell.engine.id} class={`of-${cell.engine.style.order}`}>
            {cell.row === undefined ? (
              <span class="none">none</span>
            ) : cell.row.fixed ? (
              <span class="fixed">{cell.row.text}</span>
            ) : (
              <Field
                row={cell.row}
                label={`${cell.engine.input.name}, ${label}`}
                slider={sliders[i] ?? null}
                editsOf={(text) => editsOf(line, cell, text)}
                faultId={faults[i] == null ? null : faultId(cell)}
                onRefusal={(words) => refuse(cell.engine.id, words)}
              />
            )}
          </td>
        ))}
      </tr>
      {cells.map((cell, i) =>
        faults[i] == null ? null : (
          <tr key={cell.engine.id} class="fault-line">
            <td colSpan={1 + cells.length}>
              <p class="fault" id={faultId(cell)} role="alert">
                {cell.engine.input.name}: {faults[i]}
              </p>
            </td>
          </tr>
        ),
      )}
    </>
  );
}

/** Why the engine failed, if this input is the cause. */
export function faultOf({ result }: ShownEngine, row: InputRow): string | null {
  if (result.ok || !isCause(result.problem.where, row.path)) return null;
  return `${result.problem.what} ${result.problem.mend}`;
}

/** What is wrong with it as the file has it now; the field shows what it was before. */
function faultInFile({ path }: InputRow): string | null {
  const fault = faultsOfFile.value.find((one) => one.path === path);
  return fault === undefined ? null : `in study.yaml, ${fault.what} ${fault.mend}`;
}

function isCause(where: string | undefined, path: string): boolean {
  return where !== undefined && (where === path || path.endsWith(`.${where}`));
}
