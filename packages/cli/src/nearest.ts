/** Levenshtein distance, small words only. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min((row[j] as number) + 1, (next[j - 1] as number) + 1, (row[j - 1] as number) + same));
    }
    row = next;
  }
  return row[b.length] as number;
}

/** Up to three names close to what was typed: a few letters off, or holding it as a part. */
export function nearest(typed: string, names: readonly string[]): readonly string[] {
  const word = typed.toLowerCase();
  return names
    .map((name) => {
      const low = name.toLowerCase();
      const apart = low.includes(word)
        ? 0
        : Math.min(distance(word, low), distance(word, low.split('/').at(-1) ?? low) + 1);
      return { name, apart };
    })
    .filter(({ apart }) => apart <= Math.max(2, word.length / 3))
    .sort((a, b) => a.apart - b.apart || a.name.localeCompare(b.name))
    .slice(0, 3)
    .map(({ name }) => name);
}
