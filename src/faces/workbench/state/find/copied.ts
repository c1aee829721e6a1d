/** Commands for the command line, put on the clipboard. */

import { signal } from '@preact/signals';

/** What was put on the clipboard just now, in words; null: nothing. */
export const copied = signal<string | null>(null);

/** A folder may be called anything: pasted into a shell its name stays a name. */
export const quoted = (path: string): string =>
  /^[\w./-]+$/.test(path) ? path : `'${path.replaceAll("'", "'\\''")}'`;

export function copy(command: string): void {
  navigator.clipboard.writeText(command).then(
    () => {
      copied.value = `Copied: ${command}`;
    },
    () => {
      copied.value = `To open it: ${command}`;
    },
  );
}
