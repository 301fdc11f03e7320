/** What somebody probably meant: the closest of the words that would have been right. */

/** Longer texts are no mistyped key, and comparing them costs the square of their length. */
const LONGEST = 64;

/**
 * The word of `words` nearest to `word`, upper and lower case alike, or null where none is near enough to be
 * worth saying: about one slip in three letters. Of two equally near the first is taken.
 */
export const nearestWord = (word: string, words: Iterable<string>): string | null => {
  const wanted = word.toLowerCase();
  if (wanted.length > LONGEST) return null;
  let best: string | null = null;
  let limit = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const candidate of words) {
    if (Math.abs(candidate.length - wanted.length) >= limit) continue;
    const distance = editDistance(wanted, candidate.toLowerCase());
    if (distance >= limit) continue;
    best = candidate;
    limit = distance;
    if (distance === 0) return best;
  }
  return best;
};

/** Letters put in, left out, replaced, or swapped with their neighbour. */
const editDistance = (from: string, to: string): number => {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, at) => at);
  for (let row = 1; row <= from.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const same = from[row - 1] === to[column - 1];
      let cost = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const isSwap = from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (row > 1 && column > 1 && isSwap) cost = Math.min(cost, (beforeLast[column - 2] ?? 0) + 1);
      current.push(cost);
    }
    beforeLast = last;
    last = current;
  }
  return last[to.length] ?? 0;
};
