import { useEffect, useRef } from 'preact/hooks';
import { conflict } from '../state/studyEdits.ts';

/** An edit made here and one made elsewhere say different things: which of them holds is asked. */
export function ConflictAsked() {
  const asked = conflict.value;
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), [asked]);
  if (asked === null) return null;
  return (
    <section
      class="faults"
      role="alertdialog"
      aria-labelledby="conflict-heading"
      aria-describedby="conflict-words"
    >
      <h2 id="conflict-heading">Changed in two places at once</h2>
      <p id="conflict-words">
        You wrote {asked.words}. Meanwhile the same place of study.yaml was changed by another window or
        program; that is what you see now.
      </p>
      {asked.refused.map(({ what, mend }) => (
        <p key={what} class="fault">
          Yours cannot be written: {what} {mend}
        </p>
      ))}
      <p class="actions">
        <button type="button" class="plain-button" ref={first} onClick={() => void asked.keepMine()}>
          Write mine
        </button>
        <button type="button" class="plain-button" onClick={asked.keepTheirs}>
          Keep theirs
        </button>
      </p>
    </section>
  );
}
