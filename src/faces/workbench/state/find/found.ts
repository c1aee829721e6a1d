/** One thing the find box offers. */

export type FoundGroup =
  | 'Numbers'
  | 'In this study'
  | 'Do'
  | 'Copy a command'
  | 'Numbers of studies beside this one'
  | 'Studies beside this one'
  | 'Starters';

export interface Found {
  /** Of its own in the list. */ readonly key: string;
  readonly group: FoundGroup;
  readonly label: string;
  /** At the right end: a number, or what it is. */ readonly detail: string;
  readonly choose: () => void;
  /** What it shows on the full screen; null where there is nothing to show. */ readonly live: string | null;
}
