import type { ComponentChildren } from 'preact';

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly choose: (value: string) => void;
  readonly children: ComponentChildren;
}

/** One of several, with its name before it. */
export function Choice({ label, value, choose, children }: ChoiceProps) {
  return (
    <label class="sweep-choice">
      <span>{label}</span>
      <select value={value} onChange={(event) => choose(event.currentTarget.value)}>
        {children}
      </select>
    </label>
  );
}
