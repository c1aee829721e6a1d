import { useSignal } from '@preact/signals';
import { inputRows, steppedText } from '../state/inputRows.ts';
import { shownEngines } from '../state/pair.ts';
import { tried } from '../state/studyStore.ts';
import { endTrial, tryValue } from '../state/studyTrial.ts';

/** One input to try another value of, while answering; the study stays as it is. */
export function LiveTrial() {
  const chosen = useSignal('');
  const draft = useSignal<string | null>(null);
  const refusal = useSignal<string | null>(null);
  const rows = shownEngines.value.flatMap(({ input }) =>
    inputRows(input)
      .filter(({ fixed, choices, origin }) => !fixed && choices === undefined && origin !== 'shared')
      .map((row) => ({ ...row, label: `${input.name}, ${row.label.toLowerCase()}` })),
  );
  const row = rows.find(({ path }) => path === chosen.value);
  const send = (text: string) => {
    draft.value = text;
    tryValue(row?.path ?? '', text.trim()).then((problems) => {
      refusal.value = problems[0] === undefined ? null : `${problems[0].what} ${problems[0].mend}`;
    }, reportError);
  };
  return (
    <span class="live-trial">
      <select
        aria-label="Input to try"
        value={chosen.value}
        onChange={(event) => {
          chosen.value = event.currentTarget.value;
          draft.value = null;
        }}
      >
        <option value="">Try an input …</option>
        {rows.map(({ path, label }) => (
          <option key={path} value={path}>
            {label}
          </option>
        ))}
      </select>
      {row !== undefined && (
        <input
          type="text"
          aria-label={`${row.label}, tried value`}
          aria-invalid={refusal.value !== null}
          autocomplete="off"
          value={draft.value ?? row.text}
          onInput={(event) => {
            draft.value = event.currentTarget.value;
          }}
          onKeyDown={(event) => {
            const text = draft.value ?? row.text;
            const direction = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : null;
            if (event.key === 'Enter') send(text);
            if (direction === null) return;
            event.preventDefault();
            const next = steppedText(text, direction, event.shiftKey);
            if (next !== null) send(next);
          }}
        />
      )}
      {tried.value !== null && (
        <button
          type="button"
          onClick={() => {
            draft.value = null;
            endTrial().catch(reportError);
          }}
        >
          As in the study
        </button>
      )}
      {refusal.value !== null && (
        <span class="fault" role="alert">
          {refusal.value}
        </span>
      )}
    </span>
  );
}
