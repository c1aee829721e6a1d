/** The last few results of a costly function of plain values, which gives the same for the same values every time. */
export function remembered<Args extends readonly (number | string | boolean)[], Result>(
  work: (...args: Args) => Result,
  most = 4,
): (...args: Args) => Result {
  const known = new Map<string, Result>();
  return (...args) => {
    const key = args.join(' ');
    const found = known.get(key);
    if (found !== undefined) return found;
    const result = work(...args);
    const [oldest] = known.keys();
    if (known.size >= most && oldest !== undefined) known.delete(oldest);
    known.set(key, result);
    return result;
  };
}
