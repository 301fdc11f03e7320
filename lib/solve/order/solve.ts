/**
 * The week's order, solved: fewest late car-days, then least money. The rulebook’s own evaluation says what the answer
 * costs; HiGHS only says below what no answer can be.
 */
import type { OrderAnswer, OrderProblem } from '@/lib/domain/shop/order';
import { orderScore } from '@/lib/domain/shop/order-score';
import type { OrderScore } from '@/lib/domain/shop/order-score';
import { highs } from '../highs';
import { solveProgram } from '../program';
import { handOut } from './hand-out';
import { orderModel } from './model';
import { wantsOf } from './wants';

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
  const solver = await highs();
  const { wants, lateCarDays, unserved } = wantsOf(problem);
  const { program, packs } = orderModel(problem, wants);
  const took = (): number => (performance.now() - begin) / 1000;
  const { values, bound: reached } = solveProgram(solver, program, seconds - took());
  const money = Number.isFinite(reached) ? Math.max(0, Math.ceil(reached - NOISE)) : 0;
  const bound = { lateCarDays, money };
  const bought = packs.flatMap((pack) => {
    const count = Math.round(values?.[pack.column] ?? 0);
    return count > 0 ? [{ pack, packs: count }] : [];
  });
  const given = values === null ? null : handOut(wants, bought);
  if (given === null)
    return { answer: null, score: null, bound, gap: null, proved: false, unserved, seconds: took() };
  const answer: OrderAnswer = {
    packs: bought.map(({ pack, packs: count }) => ({
      shipment: pack.shipment.key,
      offer: pack.offer.key,
      packs: count,
    })),
    given,
  };
  const score = orderScore(problem, answer);
  const missing = score.faults.filter(
    (fault) => fault.code !== 'line-short' || !unserved.includes(fault.line),
  );
  if (missing.length > 0) throw new Error(`The solver’s order can’t be sent: ${JSON.stringify(missing)}`);
  const gap = Math.max(0, score.money - money);
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

/** Money is whole: a bound this little above a whole number means that number. */
const NOISE = 1e-4;
