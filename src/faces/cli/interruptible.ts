/** Work that an interrupt of the keyboard ends in good order; null where it did. */
export async function interruptible<T>(work: (signal: AbortSignal) => Promise<T>): Promise<T | null> {
  const ending = new AbortController();
  const end = (): void => ending.abort();
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
  try {
    return await work(ending.signal);
  } catch (error) {
    if (ending.signal.aborted) return null;
    throw error;
  } finally {
    process.off('SIGINT', end);
    process.off('SIGTERM', end);
  }
}
