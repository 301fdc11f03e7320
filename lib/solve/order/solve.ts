/**
 * The week's order, solved: fewest late car-days, then least money. The rulebook’s own evaluation says what the answer
 * costs; HiGHS only says below what no answer can be.
 */
import type { OrderAnswer, OrderProblem } from '@/lib/domain/shop/order';
import { orderScore } from '@/lib/domain/shop/order-score';
import type { OrderScore } from '@/lib/domain/shop/order-score';
import type { Highs } from 'highs';
import { highs } from '../highs';
import { solveProgram } from '../program';
import { handOut } from './hand-out';
import { goodsModel, orderModel } from './model';
import type { PackColumn } from './model';
import { asRows, narrow } from './narrow';
import type { Bought, Cluster, Narrowing } from './narrow';
import { wantsOf } from './wants';
import type { Want } from './wants';

export interface OrderSolution {
  /** Null where none was found in time. */
  readonly answer: OrderAnswer | null;
  readonly score: OrderScore | null;
  /** No answer has fewer late car-days; none that has as few costs less money. */
  readonly bound: { readonly lateCarDays: number; readonly money: number };
  /** Money above the bound; 0 where the answer is proved, null where there is none. */
  readonly gap: number | null;
  readonly proved: boolean;
  /** Lines that nobody can bring: they are in no answer. */
  readonly unserved: readonly string[];
  readonly seconds: number;
}

/** Directly, in this thread: nothing else runs meanwhile. `solve-in-worker.ts` is for servers. */
export const solveOrder = async (problem: OrderProblem, seconds: number): Promise<OrderSolution> => {
  const begin = performance.now();
  const { wants, lateCarDays, unserved } = wantsOf(problem);
  const took = (): number => (performance.now() - begin) / 1000;
  const narrowing = await narrow(problem, wants, async (cluster) =>
    goodsOf(await highs(), problem, cluster, seconds - took()),
  );
  const { bought, least } =
    narrowing.known?.money === narrowing.least
      ? { bought: narrowing.known.bought, least: narrowing.least }
      : fromProgram(await highs(), problem, wants, narrowing, seconds - took());
  const bound = { lateCarDays, money: least };
  const given = bought === null ? null : handOut(wants, bought);
  if (bought === null || given === null)
    return { answer: null, score: null, bound, gap: null, proved: false, unserved, seconds: took() };
  const answer: OrderAnswer = { packs: asRows(bought), given };
  const score = orderScore(problem, answer);
  const missing = score.faults.filter(
    (fault) => fault.code !== 'line-short' || !unserved.includes(fault.line),
  );
  if (missing.length > 0) throw new Error(`The solver’s order can’t be sent: ${JSON.stringify(missing)}`);
  const gap = Math.max(0, score.money - least);
  return {
    answer,
    score,
    bound,
    gap,
    proved: gap === 0 && score.lateCarDays === lateCarDays,
    unserved,
    seconds: took(),
  };
};

interface Found {
  readonly bought: Bought | null;
  readonly least: number;
}

const fromProgram = (
  solver: Highs,
  problem: OrderProblem,
  wants: readonly Want[],
  narrowing: Narrowing,
  seconds: number,
): Found => {
  const { program, packs } = orderModel(problem, wants, narrowing);
  const { values, bound, isInfeasible } = solveProgram(solver, program, seconds);
  const { known } = narrowing;
  // Only what is better than the known order was looked for.
  if (isInfeasible && known !== null) return { bought: known.bought, least: known.money };
  const least = Math.max(narrowing.least, wholeBound(bound));
  if (values !== null) return { bought: boughtOf(packs, values), least };
  // The program holds the known order too: where it found nothing, time was up.
  return {
    bought: narrowing.known?.bought ?? null,
    least: Math.min(least, narrowing.known?.money ?? Infinity),
  };
};

const goodsOf = (solver: Highs, problem: OrderProblem, wants: readonly Want[], seconds: number): Cluster => {
  const { program, packs } = goodsModel(problem, wants, false);
  const { values, bound } = solveProgram(solver, program, seconds);
  return { wants, least: wholeBound(bound), bought: values === null ? null : boughtOf(packs, values) };
};

/** Steps of one offer are columns of their own, of which one is taken. */
const boughtOf = (packs: readonly PackColumn[], values: Float64Array): Bought =>
  packs.flatMap((pack) => {
    const count = Math.round(values[pack.column] ?? 0);
    return count > 0 ? [{ ...pack, packs: count }] : [];
  });

/** Money is whole: a bound this little above a whole number means that number. */
const NOISE = 1e-4;

const wholeBound = (bound: number): number =>
  Number.isFinite(bound) ? Math.max(0, Math.ceil(bound - NOISE)) : 0;
