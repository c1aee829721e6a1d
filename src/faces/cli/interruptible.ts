/**
 * Work that an interrupt of the keyboard ends in good order; null where it did.
 * @param other what else ends it
 */
export async function interruptible<T>(
  work: (signal: AbortSignal) => Promise<T>,
  other?: AbortSignal,
): Promise<T | null> {
  const ending = new AbortController();
  const end = (): void => ending.abort();
  if (other?.aborted === true) end();
  other?.addEventListener('abort', end, { once: true });
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
  try {
    return await work(ending.signal);
  } catch (error) {
    if (ending.signal.aborted) return null;
    throw error;
  } finally {
    other?.removeEventListener('abort', end);
    process.off('SIGINT', end);
    process.off('SIGTERM', end);
  }
}
