/**
 * The bounded knapsack, exactly: of each width at most `counts`, the most worth for every capacity at once. Worths are
 * whole numbers, so that what it finds is a proof: no pattern is worth more.
 */

import { bestOfFour, piecesForPairs } from './four-pieces';
import type { FourPieces } from './four-pieces';

/** One choice of the table: `times` pieces of a width, taken together or not. */
interface Step {
  readonly item: number;
  readonly times: number;
  readonly width: number;
  readonly worth: number;
}

export interface Knapsack {
  /** The most that fits into a capacity is worth. */
  readonly worthAt: (capacity: number) => number;
  /** One best filling of a capacity. */
  readonly fillingOf: (capacity: number) => {
    readonly items: readonly number[];
    readonly counts: readonly number[];
  };
}

/** Tables are kept between questions: the solver asks some thousand times, with the same sizes. */
let best = new Float64Array(0);
let taken = new Uint8Array(0);

/** The answer is good until the next question. */
export const knapsack = (
  widths: readonly number[],
  worths: ArrayLike<number>,
  counts: ArrayLike<number>,
  capacity: number,
): Knapsack => {
  const steps = stepsOf(widths, worths, counts, capacity);
  const size = capacity + 1;
  if (size * steps.length > FINE) {
    const pieces = piecesForPairs(widths, worths, counts, capacity);
    if (pieces !== null) return byPairs((room) => bestOfFour(pieces, room));
  }
  if (best.length < size) best = new Float64Array(size);
  if (taken.length < size * steps.length) taken = new Uint8Array(size * steps.length);
  best.fill(0, 0, size);
  taken.fill(0, 0, size * steps.length);
  for (const [row, step] of steps.entries())
    takeStep(best, taken, row * size, step.width, step.worth, capacity);
  return {
    worthAt: (room) => best[room] ?? 0,
    fillingOf: (room) => filling(steps, room, size),
  };
};

/** From so many cells on, pairs are quicker than the table. */
const FINE = 1_000_000;

const byPairs = (ask: (capacity: number) => FourPieces): Knapsack => {
  const asked = new Map<number, FourPieces>();
  const at = (capacity: number): FourPieces => {
    const known = asked.get(capacity) ?? ask(capacity);
    asked.set(capacity, known);
    return known;
  };
  return { worthAt: (capacity) => at(capacity).worth, fillingOf: at };
};

/** Apart, so that the compiler of the engine sees a small loop over typed arrays and nothing else. */
const takeStep = (
  table: Float64Array,
  marks: Uint8Array,
  offset: number,
  width: number,
  worth: number,
  capacity: number,
): void => {
  for (let room = capacity, before = capacity - width; before >= 0; room -= 1, before -= 1) {
    // Inside the table both are there; asking whether they are took a third of the whole time.
    const value = (table[before] as number) + worth;
    if (value > (table[room] as number)) {
      table[room] = value;
      marks[offset + room] = 1;
    }
  }
};

/** 1, 2, 4 … and the rest: every number up to the count is a sum of some of them. */
const stepsOf = (
  widths: readonly number[],
  worths: ArrayLike<number>,
  counts: ArrayLike<number>,
  capacity: number,
): readonly Step[] => {
  const steps: Step[] = [];
  for (const [item, width] of widths.entries()) {
    const worth = worths[item] ?? 0;
    let left = Math.min(counts[item] ?? 0, Math.floor(capacity / width));
    if (worth <= 0) continue;
    for (let times = 1; left > 0; times *= 2) {
      const part = Math.min(times, left);
      steps.push({ item, times: part, width: width * part, worth: worth * part });
      left -= part;
    }
  }
  return steps;
};

const filling = (steps: readonly Step[], capacity: number, size: number) => {
  const found = new Map<number, number>();
  let room = capacity;
  for (let row = steps.length - 1; row >= 0; row -= 1) {
    const step = steps[row];
    if (step === undefined || taken[row * size + room] !== 1) continue;
    found.set(step.item, (found.get(step.item) ?? 0) + step.times);
    room -= step.width;
  }
  const items = [...found.keys()].sort((a, b) => a - b);
  return { items, counts: items.map((item) => found.get(item) ?? 0) };
};
