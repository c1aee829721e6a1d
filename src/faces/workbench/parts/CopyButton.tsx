import { useState } from 'preact/hooks';

/** Puts words on the clipboard, and says whether that worked. */
export function CopyButton({ text, what }: { readonly text: string; readonly what: string }) {
  const [said, setSaid] = useState('');
  const say = (words: string) => {
    setSaid(words);
    setTimeout(() => setSaid(''), 4000);
  };
  return (
    <>
      <button
        type="button"
        class="plain-button"
        aria-label={`Copy ${what}`}
        onClick={() => {
          navigator.clipboard.writeText(text).then(
            () => say('copied'),
            () => say('The browser did not allow it; select the words instead.'),
          );
        }}
      >
        Copy
      </button>
      <span class="hint" role="status">
        {said}
      </span>
    </>
  );
}
