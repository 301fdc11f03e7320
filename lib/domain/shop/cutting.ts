/**
 * Cutting tube, strap and bar from stock lengths and remnants: what is asked, what a plan is, and whether a plan can be
 * sawn. Pure and exact; who made the plan doesn't matter here.
 *
 * All lengths of a problem are whole numbers of one unit, fine enough for every length in it (`wholeUnits`). Floating
 * numbers judge nothing.
 */
import type { Exact } from '../base/exact';

/** Lengths of one kind: bars of the catalogue, or one remnant (or several alike) from the rack. */
export interface StockLength {
  readonly key: string;
  readonly length: number;
  /** How many are there; null where as many as wanted can be had. */
  readonly count: number | null;
  /** A remnant is there already: it is no new length, and costs nothing. */
  readonly isRemnant: boolean;
  /** Of one length, in the smallest unit of money. */
  readonly price: number;
  /** What is cut away at its ends, both together, before it is good. */
  readonly ends: number;
}

export interface WantedPiece {
  readonly key: string;
  readonly length: number;
  readonly count: number;
  /** For which car, and for what; empty where nobody said. */
  readonly wantedFor: string;
}

export interface CuttingProblem {
  readonly name: string;
  /** So many units make one millimetre, or one inch: whatever the lengths were given in. */
  readonly scale: number;
  readonly stock: readonly StockLength[];
  readonly pieces: readonly WantedPiece[];
  /** What each cut takes away. */
  readonly kerf: number;
  /** The shortest rest that goes back into the rack; null where none does. */
  readonly worthKeeping: number | null;
}

/** One way of cutting a length, and how many lengths are cut that way. */
export interface CutBar {
  readonly stock: string;
  readonly times: number;
  readonly pieces: readonly { readonly piece: string; readonly count: number }[];
}

export type CuttingPlan = readonly CutBar[];

export type CuttingFault =
  | { readonly code: 'unknown-stock'; readonly stock: string }
  | { readonly code: 'unknown-piece'; readonly piece: string }
  | { readonly code: 'not-a-count'; readonly stock: string }
  | { readonly code: 'too-much-on-a-bar'; readonly stock: string; readonly over: number }
  | {
      readonly code: 'more-than-there-are';
      readonly stock: string;
      readonly used: number;
      readonly there: number;
    }
  | { readonly code: 'wrong-number'; readonly piece: string; readonly cut: number; readonly wanted: number };

/**
 * The length a bar still has after its pieces; below zero where they don't fit. The last piece needs no cut behind it
 * where what is left is less than a cut.
 */
export const restOf = (kerf: number, stock: StockLength, lengths: readonly number[]): number => {
  const good = stock.length - stock.ends - lengths.reduce((sum, length) => sum + length, 0);
  const rest = good - lengths.length * kerf;
  return rest < 0 && rest + kerf >= 0 && lengths.length > 0 ? 0 : rest;
};

/** Every reason why the plan can't be sawn or is not what was asked for; empty where it is sound. */
export const cuttingFaults = (problem: CuttingProblem, plan: CuttingPlan): readonly CuttingFault[] => {
  const faults: CuttingFault[] = [];
  const stocks = new Map(problem.stock.map((stock) => [stock.key, stock]));
  const pieces = new Map(problem.pieces.map((piece) => [piece.key, piece]));
  const used = new Map<string, number>();
  const cut = new Map<string, number>();
  for (const bar of plan) {
    const stock = stocks.get(bar.stock);
    if (stock === undefined) {
      faults.push({ code: 'unknown-stock', stock: bar.stock });
      continue;
    }
    if (!isCount(bar.times) || !bar.pieces.every(({ count }) => isCount(count))) {
      faults.push({ code: 'not-a-count', stock: bar.stock });
      continue;
    }
    used.set(bar.stock, (used.get(bar.stock) ?? 0) + bar.times);
    for (const { piece, count } of bar.pieces) {
      if (!pieces.has(piece)) faults.push({ code: 'unknown-piece', piece });
      cut.set(piece, (cut.get(piece) ?? 0) + count * bar.times);
    }
    const rest = restOf(problem.kerf, stock, lengthsOn(bar, pieces));
    if (rest < 0) faults.push({ code: 'too-much-on-a-bar', stock: bar.stock, over: -rest });
  }
  for (const { key, count } of problem.stock) {
    const times = used.get(key) ?? 0;
    if (count !== null && times > count)
      faults.push({ code: 'more-than-there-are', stock: key, used: times, there: count });
  }
  for (const { key, count } of problem.pieces) {
    const times = cut.get(key) ?? 0;
    if (times !== count) faults.push({ code: 'wrong-number', piece: key, cut: times, wanted: count });
  }
  return faults;
};

const isCount = (count: number): boolean => Number.isSafeInteger(count) && count > 0;

const lengthsOn = (bar: CutBar, pieces: ReadonlyMap<string, WantedPiece>): readonly number[] =>
  bar.pieces.flatMap(({ piece, count }) =>
    Array.from({ length: count }, () => pieces.get(piece)?.length ?? 0),
  );

/** What a plan comes to. Fewer new lengths are better; of as many, whatever takes less. */
export interface CuttingScore {
  readonly newLengths: number;
  /** Length of all bars and remnants that are cut into; what of it is in no piece is waste or a new remnant. */
  readonly taken: number;
  readonly price: number;
  /** `taken` less the pieces: cuts, ends and rests. */
  readonly waste: number;
  /** Of the waste, what goes back into the rack: each rest that is worth keeping, longest first. */
  readonly kept: readonly number[];
}

/** Of a sound plan. */
export const cuttingScore = (problem: CuttingProblem, plan: CuttingPlan): CuttingScore => {
  const stocks = new Map(problem.stock.map((stock) => [stock.key, stock]));
  const pieces = new Map(problem.pieces.map((piece) => [piece.key, piece]));
  const score = { newLengths: 0, taken: 0, price: 0, waste: 0 };
  const kept: number[] = [];
  for (const bar of plan) {
    const stock = stocks.get(bar.stock);
    if (stock === undefined) continue;
    const lengths = lengthsOn(bar, pieces);
    score.taken += stock.length * bar.times;
    score.waste += (stock.length - lengths.reduce((sum, length) => sum + length, 0)) * bar.times;
    if (!stock.isRemnant) {
      score.newLengths += bar.times;
      score.price += stock.price * bar.times;
    }
    const rest = restOf(problem.kerf, stock, lengths);
    if (problem.worthKeeping !== null && rest >= problem.worthKeeping)
      kept.push(...Array.from({ length: bar.times }, () => rest));
  }
  return { ...score, kept: kept.sort((a, b) => b - a) };
};

/** Below zero where `a` is the better of two: fewer new lengths, then less taken. */
export const compareCutting = (a: CuttingScore, b: CuttingScore): number =>
  a.newLengths - b.newLengths || a.taken - b.taken;

/** Pieces that no stock is long enough for: nothing can be planned before that is cleared. */
export const tooLong = ({ stock, pieces, kerf }: CuttingProblem): readonly WantedPiece[] =>
  pieces.filter(({ length }) => !stock.some((bar) => bar.count !== 0 && restOf(kerf, bar, [length]) >= 0));

/**
 * No plan needs fewer new lengths than this: all pieces with their cuts, less what the remnants could hold, over what the
 * longest new length holds. A pencil can check it.
 */
export const fewestByMaterial = ({ stock, pieces, kerf }: CuttingProblem): number => {
  const needed = pieces.reduce((sum, { length, count }) => sum + (length + kerf) * count, 0);
  const rooms = stock.map((bar) => ({ ...bar, room: Math.max(0, bar.length - bar.ends + kerf) }));
  const inRemnants = rooms
    .filter(({ isRemnant }) => isRemnant)
    .reduce((sum, { room, count }) => sum + room * (count ?? 0), 0);
  const longest = Math.max(0, ...rooms.filter(({ isRemnant }) => !isRemnant).map(({ room }) => room));
  return needed <= inRemnants || longest === 0 ? 0 : Math.ceil((needed - inRemnants) / longest);
};

/** Lengths as whole numbers of their largest common unit that divides 1; null where that takes numbers beyond 10^9. */
export const wholeUnits = (
  lengths: readonly Exact[],
): { readonly scale: number; readonly whole: readonly number[] } | null => {
  const scale = lengths.reduce((least, { den }) => (least * den) / divisorOf(least, den), 1n);
  const whole = lengths.map(({ num, den }) => (num * scale) / den);
  const isSmall = [scale, ...whole].every((number) => number < LONGEST && number > -LONGEST);
  return isSmall ? { scale: Number(scale), whole: whole.map(Number) } : null;
};

/** Sums over all pieces of a list stay exact numbers below it. */
const LONGEST = 1_000_000_000n;

const divisorOf = (a: bigint, b: bigint): bigint => (b === 0n ? a : divisorOf(b, a % b));
