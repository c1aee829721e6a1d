/** Values found by key, the ones used last kept. */

export interface KeptLately<Value> {
  /** The value of a key: kept, or found now. */ (key: string, find: () => Value): Value;
  /** The kept value of a key, if there is one. */ peek(key: string): Value | undefined;
}

export function keptLately<Value>(most: number): KeptLately<Value> {
  const kept = new Map<string, Value>();

  function keep(key: string, value: Value): Value {
    kept.delete(key);
    kept.set(key, value);
    if (kept.size > most) kept.delete(kept.keys().next().value!);
    return value;
  }

  const peek = (key: string): Value | undefined => {
    const value = kept.get(key);
    return value === undefined ? undefined : keep(key, value);
  };
  return Object.assign((key: string, find: () => Value) => peek(key) ?? keep(key, find()), { peek });
}
