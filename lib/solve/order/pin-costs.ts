/** What each of the owner's pins costs: the best order with all pins, against the best without this one. */
import type { OrderProblem, Pin } from '@/lib/domain/shop/order';
import { solveOrder } from './solve';
import type { OrderSolution } from './solve';

export interface PinCost {
  /** The line of the pin, or its group. */
  readonly line: string;
  /** Null where one of the two orders was not found. An excluded line may cost less than nothing. */
  readonly money: number | null;
  readonly lateCarDays: number | null;
  /** Both orders are proved, so that this is the very difference. */
  readonly proved: boolean;
}

/** `withPins` is the solution of the problem as it stands; the seconds are for each pin. */
export const pinCosts = async (
  problem: OrderProblem,
  withPins: OrderSolution,
  seconds: number,
): Promise<readonly PinCost[]> => {
  const costs: PinCost[] = [];
  const nameOf = (pin: Pin): string => pin.group ?? pin.line;
  for (const line of new Set(problem.pins.map(nameOf))) {
    const pins = problem.pins.filter((pin) => nameOf(pin) !== line);
    const without = await solveOrder({ ...problem, pins }, seconds);
    const both = withPins.score !== null && without.score !== null;
    costs.push({
      line,
      money: both ? withPins.score.money - without.score.money : null,
      lateCarDays: both ? withPins.score.lateCarDays - without.score.lateCarDays : null,
      proved: withPins.proved && without.proved,
    });
  }
  return costs;
};
