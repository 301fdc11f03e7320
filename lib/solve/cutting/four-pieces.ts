/**
 * The bounded knapsack where no more than four pieces fit into a bin, as long pieces do: the best pair is looked up for
 * every pair. Exact, and with fine units a hundred times quicker than a table over all capacities.
 */

/** One piece of its own, though others are like it. */
interface Piece {
  readonly item: number;
  readonly width: number;
  readonly worth: number;
}

export interface FourPieces {
  readonly worth: number;
  readonly items: readonly number[];
  readonly counts: readonly number[];
}

/** Pieces worth taking; null where five of them fit together, or where there are too many for pairs. */
export const piecesForPairs = (
  widths: readonly number[],
  worths: ArrayLike<number>,
  counts: ArrayLike<number>,
  capacity: number,
): readonly Piece[] | null => {
  const pieces: Piece[] = [];
  for (const [item, width] of widths.entries()) {
    const worth = worths[item] ?? 0;
    if (worth <= 0 || width > capacity) continue;
    const copies = Math.min(5, counts[item] ?? 0);
    for (let copy = 0; copy < copies; copy += 1) pieces.push({ item, width, worth });
    if (pieces.length > MOST_PIECES) return null;
  }
  const fiveSmallest = pieces
    .map(({ width }) => width)
    .sort((a, b) => a - b)
    .slice(0, 5);
  const doFiveFit =
    fiveSmallest.length === 5 && fiveSmallest.reduce((sum, width) => sum + width, 0) <= capacity;
  return doFiveFit ? null : pieces;
};

const MOST_PIECES = 700;

/** A tree of prefix maxima (Fenwick) over capacities: the best pair so far that is no wider than asked. */
let values = new Float64Array(0);
let pairs = new Int32Array(0);

const raise = (width: number, value: number, pair: number, size: number): void => {
  for (let at = width; at <= size; at += at & -at) {
    if (value > (values[at] ?? 0)) {
      values[at] = value;
      pairs[at] = pair;
    }
  }
};

const bestUpTo = (room: number): number => {
  let found = 0;
  for (let at = room; at > 0; at -= at & -at) if ((values[at] ?? 0) > (values[found] ?? 0)) found = at;
  return found;
};

export const bestOfFour = (pieces: readonly Piece[], capacity: number): FourPieces => {
  if (values.length <= capacity) {
    values = new Float64Array(capacity + 1);
    pairs = new Int32Array(capacity + 1);
  }
  values.fill(0, 0, capacity + 1);
  let worth = 0;
  let chosen: readonly number[] = [];
  const none = pieces.length;
  const base = none + 1;
  // Pieces in their order; a pair in the tree holds only pieces before the third, so that nothing is taken twice.
  for (const [third, { width, worth: own }] of pieces.entries()) {
    for (let fourth = third; fourth <= none; fourth += 1) {
      if (fourth === third) continue;
      const other = pieces[fourth];
      const room = capacity - width - (other?.width ?? 0);
      if (room < 0) continue;
      const found = bestUpTo(room);
      const sum = own + (other?.worth ?? 0) + (values[found] ?? 0);
      if (sum <= worth) continue;
      worth = sum;
      const pair = found === 0 ? -1 : (pairs[found] ?? -1);
      chosen = pair < 0 ? [third, fourth] : [third, fourth, Math.floor(pair / base), pair % base];
    }
    raise(width, own, third * base + none, capacity);
    for (let first = 0; first < third; first += 1) {
      const other = pieces[first];
      if (other !== undefined && other.width + width <= capacity)
        raise(other.width + width, other.worth + own, first * base + third, capacity);
    }
  }
  return { worth, ...counted(chosen.flatMap((index) => pieces[index]?.item ?? [])) };
};

const counted = (chosen: readonly number[]) => {
  const found = new Map<number, number>();
  for (const item of chosen) found.set(item, (found.get(item) ?? 0) + 1);
  const items = [...found.keys()].sort((a, b) => a - b);
  return { items, counts: items.map((item) => found.get(item) ?? 0) };
};
