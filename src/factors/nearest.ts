/**
 * The word a slip of the pen was meant for.
 */

/**
 * Nearest spelling among known words, by the fewest letters to add, leave out, change or swap.
 *
 * @param word - as it was written
 * @param known - words that would have been right
 * @returns the nearest, the first of several; undefined when none is within a third of the word's length
 */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let fewest = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - word.length) >= fewest) continue;
    const slips = slipsBetween(word, candidate);
    if (slips < fewest) {
      fewest = slips;
      best = candidate;
    }
  }
  return best;
}

// Optimal string alignment distance, row by row.
function slipsBetween(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let slips = Math.min(changed, (last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        slips = Math.min(slips, (beforeLast[j - 2] ?? 0) + 1);
      }
      row.push(slips);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
