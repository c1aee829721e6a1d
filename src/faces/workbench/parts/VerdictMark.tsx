import type { CheckedSentence, Verdict } from '../../../answer/sentences/model.ts';

/** A verdict, or that there is none because the test cannot be read. */
type Marked = Verdict | 'unreadable';

export const markOf = (checked: Pick<CheckedSentence, 'verdict' | 'problem'> | null): Marked => {
  if (checked === null) return 'not checked';
  return checked.problem !== null && checked.verdict === 'can’t tell' ? 'unreadable' : checked.verdict;
};

/** Told apart by silhouette and by fill, so also in grey and upside down; the words stand beside it. */
export function VerdictMark({ verdict, size = 20 }: { readonly verdict: Marked; readonly size?: number }) {
  return (
    <svg class="verdict-mark" width={size} height={size} viewBox="0 0 20 20" aria-hidden="true">
      {drawings[verdict]()}
    </svg>
  );
}

const drawings: Readonly<Record<Marked, () => preact.JSX.Element>> = {
  'safe to say': () => (
    <>
      <circle class="solid" cx="10" cy="10" r="9" />
      <path class="cut" d="M5.6 10.4l3 3 5.8-6.4" />
    </>
  ),
  'say with care': () => (
    <>
      <path class="line" d="M10 2.4L18.6 17.6H1.4Z" />
      <path class="line" d="M10 8v4.2" />
      <circle class="solid" cx="10" cy="14.8" r="1.15" />
    </>
  ),
  'don’t say': () => (
    <>
      <rect class="solid" x="1.5" y="1.5" width="17" height="17" rx="1.5" />
      <path class="cut" d="M6.3 6.3l7.4 7.4M13.7 6.3l-7.4 7.4" />
    </>
  ),
  'can’t tell': () => (
    <>
      <circle class="line broken" cx="10" cy="10" r="8.6" />
      <path class="line" d="M7.6 8.2c0-3.4 5-3.2 5 -.2c0 1.9-2.4 2-2.4 4" />
      <circle class="solid" cx="10.2" cy="14.6" r="1.1" />
    </>
  ),
  unreadable: () => (
    <>
      <path class="line" d="M3.4 1.6h9.6l3.6 3.6v13.2H3.4Z" />
      <path class="line" d="M6.6 8.4h2M11.4 8.4h2M6.6 11.6h1M10.2 11.6h3.2M6.6 14.8h3.4" />
    </>
  ),
  reported: () => (
    <path
      class="line"
      d="M10 5.2C8 3.6 5 3.2 1.6 3.4V15.6C5 15.4 8 15.8 10 17.4C12 15.8 15 15.4 18.4 15.6V3.4C15 3.2 12 3.6 10 5.2ZM10 5.2V17.2"
    />
  ),
  'not checked': () => <circle class="line faint" cx="10" cy="10" r="8.4" />,
};
