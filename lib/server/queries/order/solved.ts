/** The solved order of a problem, worked out once: whoever looks at the same week again gets the same answer at once. */
import 'server-only';
import { createHash } from 'node:crypto';
import type { OrderProblem } from '@/lib/domain/shop/order';
import { solveInWorker } from '@/lib/solve/in-worker';
import type { PinCost } from '@/lib/solve/order/pin-costs';
import type { OrderSolution } from '@/lib/solve/order/solve';

export interface Solved {
  readonly solution: OrderSolution;
  readonly costs: readonly PinCost[];
}

/** Nearly every week is proved in one; more than this nobody waits for. */
const SECONDS = 10;
const SECONDS_A_PIN = 4;
/** A few people with a few pins each. */
const MOST_KEPT = 8;

const kept = new Map<string, Promise<Solved>>();

export const solved = (problem: OrderProblem): Promise<Solved> => {
  const key = createHash('sha256').update(JSON.stringify(problem)).digest('hex');
  const known = kept.get(key);
  if (known !== undefined) return known;
  const asked = work(problem);
  kept.set(key, asked);
  // What failed is asked anew.
  asked.catch(() => kept.delete(key));
  const [oldest = key] = kept.keys();
  if (kept.size > MOST_KEPT) kept.delete(oldest);
  return asked;
};

const work = async (problem: OrderProblem): Promise<Solved> => {
  const solution = await solveInWorker({ kind: 'order', problem, seconds: SECONDS });
  const costs =
    problem.pins.length === 0
      ? []
      : await solveInWorker({ kind: 'pins', problem, withPins: solution, seconds: SECONDS_A_PIN });
  return { solution, costs };
};
