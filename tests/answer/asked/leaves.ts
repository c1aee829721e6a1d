/** Every value inside an answer with its path, arrays as `[i]`. */
export function leaves(
  value: unknown,
  path = '',
): readonly { readonly path: string; readonly value: unknown }[] {
  if (typeof value !== 'object' || value === null) return [{ path, value }];
  return Object.entries(value).flatMap(([key, inner]) =>
    leaves(inner, Array.isArray(value) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`),
  );
}
