import { useEffect, useRef } from 'preact/hooks';
import { readingView } from '../../../telling/script/readingView.ts';
import type { ScriptAnswer } from '../../../telling/script/scriptAnswer.ts';

type Start = (root: HTMLElement) => () => void;

/** The same script that a page on disk has inside; it comes from the server once. */
async function readingStart(): Promise<Start> {
  const there = (): Start | undefined =>
    (globalThis as unknown as { readonly plumelineReading?: Start }).plumelineReading;
  const known = there();
  if (known !== undefined) return known;
  const link = document.createElement('link');
  link.rel = 'stylesheet';
  link.href = '/reading/reading.css';
  const script = document.createElement('script');
  script.src = '/reading/reading.js';
  await Promise.all(
    [link, script].map(
      (part) =>
        new Promise((resolve, reject) => {
          part.addEventListener('load', resolve);
          part.addEventListener('error', () => reject(new Error('The reading view did not load.')));
          document.head.append(part);
        }),
    ),
  );
  return there()!;
}

/** Large words over the whole screen, scrolling at the pace; numbers stand as they are when it opens. */
export function ReadingView({
  answer,
  onClose,
}: {
  readonly answer: ScriptAnswer;
  readonly onClose: () => void;
}) {
  const place = useRef<HTMLDialogElement>(null);
  const first = useRef(readingView(answer, true));
  useEffect(() => {
    const root = place.current;
    if (root === null) return;
    let stop: (() => void) | null = null;
    let isOpen = true;
    root.showModal();
    root.addEventListener('reading-closed', onClose);
    root.addEventListener('cancel', onClose);
    readingStart()
      .then((start) => {
        if (isOpen) stop = start(root);
      })
      .catch(reportError);
    return () => {
      isOpen = false;
      stop?.();
      root.close();
    };
  }, []);
  return (
    <dialog
      ref={place}
      class="reading"
      aria-label="Reading view"
      dangerouslySetInnerHTML={{ __html: first.current }}
    />
  );
}
