/** The value of `find`, found when first asked for and kept. */
export function once<T>(find: () => T): () => T {
  let found: { readonly value: T } | null = null;
  return () => {
    found ??= { value: find() };
    return found.value;
  };
}
