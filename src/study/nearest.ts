/** Number of single-character insertions, deletions and replacements that turn `a` into `b` (Levenshtein 1966). */
export function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}

/** The known name nearest to `found`, upper and lower case counted as one; null where none is near. */
export function nearestName(found: string, known: Iterable<string>): string | null {
  const wanted = found.toLowerCase().slice(0, 80);
  let best: string | null = null;
  let bestDistance = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const name of known) {
    if (Math.abs(name.length - wanted.length) >= bestDistance) continue;
    const distance = editDistance(wanted, name.toLowerCase());
    if (distance < bestDistance) {
      best = name;
      bestDistance = distance;
    }
  }
  return best;
}
