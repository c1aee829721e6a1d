/** Whether a worker has a study in hand, as the page knows it: what is asked while it has none waits for the next one. */

export interface StudyInHand {
  /** Ends at once where there is one, else when one has come. */ come(): Promise<void>;
  /** There is one now. */ take(): void;
  /** There is none any more. */ drop(): void;
}

export function studyInHand(): StudyInHand {
  let isThere = false;
  let tell: () => void = () => undefined;
  const toCome = (): Promise<void> =>
    new Promise((resolve) => {
      tell = resolve;
    });
  let coming = toCome();
  return {
    come: () => coming,
    take() {
      isThere = true;
      tell();
    },
    drop() {
      // Who waits already waits on.
      if (isThere) coming = toCome();
      isThere = false;
    },
  };
}
