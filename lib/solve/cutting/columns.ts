/**
 * Column generation (Gilmore and Gomory): solve the master, ask the knapsack for patterns that would help, until there
 * are none; and the bound that this proves.
 *
 * The bound is safe. The linear program’s prices are floating numbers and only a hint: they are rounded to whole numbers,
 * the knapsack finds the best pattern for exactly those, and what the bound claims is worked out from these two in whole
 * numbers. Bad prices make it weak, never wrong.
 */
import type { Deadline, Instance, Pattern, Question } from './instance';
import { knapsack } from './knapsack';
import type { Master, MasterAnswer } from './master';

export interface Generated {
  readonly answer: MasterAnswer;
  /** No cutting of this question costs less; in whole numbers of cost. */
  readonly bound: number;
  /** False where time was up before the last pattern was found. */
  readonly isComplete: boolean;
}

/** Below this a pattern helps only by the noise of floating numbers. */
const HELPS = 1e-7;
/** Patterns with nothing in common that are taken from one set of prices: few where there are few widths. */
const atOnce = ({ widths }: Instance): number => Math.min(12, Math.ceil(widths.length / 8));
/** A table of more cells than this is first asked in a coarser unit; what a cell takes is a nanosecond or two. */
const MANY_CELLS = 3_000_000;
const COARSE_CELLS = 600_000;

/** Asks for no bound where `isGoodEnough` is null; costs may then be any numbers, else they are whole. */
export const generate = (
  instance: Instance,
  master: Master,
  question: Question,
  deadline: Deadline,
  isGoodEnough: ((bound: number) => boolean) | null,
): Generated => {
  const rough = coarser(instance);
  let bound = 0;
  for (;;) {
    const answer = master.solve();
    const prices = wholePrices(instance, master, answer);
    const isLate = performance.now() > deadline;
    if (!isLate && rough !== null) {
      if (master.add(priced(rough, master, question, answer, prices, atOnce(instance)).patterns) > 0)
        continue;
    }
    const offers = priced(instance, master, question, answer, prices, rough === null ? atOnce(instance) : 3);
    if (isGoodEnough !== null) {
      bound = Math.max(bound, boundOf(instance, master, question, prices, offers.worths));
      if (isGoodEnough(bound)) return { answer, bound, isComplete: false };
    }
    if (master.add(offers.patterns) === 0) return { answer, bound, isComplete: true };
    if (isLate) return { answer, bound, isComplete: false };
  }
};

/**
 * The same bins in a larger unit, pieces rounded up and bins down: whatever fits there fits. Null where the exact table
 * is small enough.
 */
const coarser = ({ widths, demand, kinds }: Instance): Instance | null => {
  const largest = Math.max(...kinds.map(({ capacity }) => capacity));
  if (largest * widths.length < MANY_CELLS) return null;
  const unit = Math.ceil((largest * widths.length) / COARSE_CELLS);
  return {
    widths: widths.map((width) => Math.ceil(width / unit)),
    demand,
    kinds: kinds.map(({ capacity, most }) => ({ capacity: Math.floor(capacity / unit), most })),
  };
};

interface Prices {
  readonly scale: number;
  readonly pieces: Float64Array;
  readonly limits: readonly number[];
}

/** Sums over one bin stay below 2^53, so that adding them up as numbers is exact. */
const wholePrices = (instance: Instance, { setup }: Master, answer: MasterAnswer): Prices => {
  const smallest = instance.widths.at(-1) ?? 1;
  const mostPieces = Math.max(...instance.kinds.map(({ capacity }) => capacity / smallest), 1);
  const highest = Math.max(setup.leftOut, ...setup.costs, ...answer.pieceDuals, 1);
  const scale = 2 ** Math.min(36, Math.floor(50 - Math.log2(highest * mostPieces)));
  return {
    scale,
    pieces: answer.pieceDuals.map((dual) => Math.max(0, Math.floor(dual * scale))),
    limits: [...answer.limitDuals].map((dual) => Math.min(0, Math.ceil(dual * scale))),
  };
};

interface Offers {
  readonly patterns: readonly Pattern[];
  /** What the best filling of each kind is worth, in whole prices. */
  readonly worths: readonly number[];
}

const priced = (
  instance: Instance,
  master: Master,
  { demand, most }: Question,
  answer: MasterAnswer,
  { pieces, scale }: Prices,
  number: number,
): Offers => {
  const largest = Math.max(...instance.kinds.map(({ capacity }) => capacity));
  const sack = knapsack(instance.widths, pieces, demand, largest);
  const worths = instance.kinds.map(({ capacity }) => sack.worthAt(capacity));
  const asking = instance.kinds.map((_, kind) => askedOf(master, answer, kind));
  const helping = [...instance.kinds.keys()].filter(
    (kind) => (most[kind] ?? 0) > 0 && (worths[kind] ?? 0) / scale - (asking[kind] ?? 0) > helpsFrom(master),
  );
  const patterns = helping.map((kind): Pattern => ({
    kind,
    ...sack.fillingOf(instance.kinds[kind]?.capacity ?? 0),
  }));
  const [kind] = helping.sort(
    (a, b) => (worths[b] ?? 0) - (asking[b] ?? 0) * scale - ((worths[a] ?? 0) - (asking[a] ?? 0) * scale),
  );
  if (kind === undefined) return { patterns, worths };
  return {
    patterns: [
      ...patterns,
      ...apart(
        instance,
        pieces,
        demand,
        patterns,
        number,
        scale,
        kind,
        (asking[kind] ?? 0) + helpsFrom(master),
      ),
    ],
    worths,
  };
};

const helpsFrom = ({ setup }: Master): number =>
  HELPS * Math.max(1, ...setup.costs.map((cost) => cost / 100));

/** What a bin of this kind costs after all prices but those of its pieces. */
const askedOf = ({ setup }: Master, answer: MasterAnswer, kind: number): number =>
  (setup.costs[kind] ?? 0) -
  (answer.kindDuals[kind] ?? 0) -
  setup.limits.reduce((sum, limit, j) => sum + (limit[kind] ?? 0) * (answer.limitDuals[j] ?? 0), 0);

/** Further patterns from what the first left: a plan needs patterns that go together. */
const apart = (
  instance: Instance,
  pieces: Float64Array,
  demand: readonly number[],
  begun: readonly Pattern[],
  number: number,
  scale: number,
  kind: number,
  asking: number,
): readonly Pattern[] => {
  const capacity = instance.kinds[kind]?.capacity ?? 0;
  const left = [...demand];
  let last = begun.find((pattern) => pattern.kind === kind);
  const more: Pattern[] = [];
  while (last !== undefined && more.length < number) {
    const { items, counts } = last;
    items.forEach((item, k) => {
      const times = Math.max(1, Math.floor((demand[item] ?? 0) / Math.max(1, counts[k] ?? 1)));
      left[item] = Math.max(0, (left[item] ?? 0) - times * (counts[k] ?? 0));
    });
    const sack = knapsack(instance.widths, pieces, left, capacity);
    if (sack.worthAt(capacity) / scale <= asking) break;
    last = { kind, ...sack.fillingOf(capacity) };
    more.push(last);
  }
  return more;
};

/**
 * Weak duality in whole numbers: every plan costs at least what its pieces and limits are priced at, plus for each bin
 * what its kind costs beyond the best filling; of how many bins that is, the cheapest allowed number counts.
 */
const boundOf = (
  instance: Instance,
  { setup }: Master,
  { demand, least, most, limits: spendable }: Question,
  { scale, pieces, limits }: Prices,
  worths: readonly number[],
): number => {
  let total = 0n;
  pieces.forEach((price, item) => (total += BigInt(price) * BigInt(demand[item] ?? 0)));
  limits.forEach((price, j) => (total += BigInt(price) * BigInt(spendable[j] ?? 0)));
  for (const kind of instance.kinds.keys()) {
    let rest = BigInt(setup.costs[kind] ?? 0) * BigInt(scale) - BigInt(worths[kind] ?? 0);
    limits.forEach((price, j) => (rest -= BigInt(price) * BigInt(setup.limits[j]?.[kind] ?? 0)));
    total += rest * BigInt((rest > 0n ? least[kind] : most[kind]) ?? 0);
  }
  return total <= 0n ? 0 : Number((total + BigInt(scale) - 1n) / BigInt(scale));
};
