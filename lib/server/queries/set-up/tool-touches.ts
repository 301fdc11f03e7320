/** Which joints stand by a tool, on all cars, and which of them are in doubt by it. */
import 'server-only';
import type { StateKey, ToolId } from '@/lib/domain/base/vocabulary';
import { doubtsOf, standingFinal, strongestRemedy } from '@/lib/domain/car/joint';
import type { Mark } from '@/lib/domain/car/joint-rows';
import type { Car } from '@/lib/domain/car/rows';
import type { Shop } from '@/lib/domain/shop/rows';

export interface Touch {
  readonly car: Car;
  readonly joint: StateKey;
  readonly mark: Mark;
  /** What would settle the doubt that comes from this tool; null: there is none. */
  readonly remedy: 'recheck' | 'retorque' | 'renew' | null;
}

/** Joints whose standing final was made with it: one opened or torqued since rests on another. */
export const touchesOf = (cars: readonly Car[], shop: Shop, tool: ToolId): readonly Touch[] =>
  cars.flatMap((car) =>
    Object.entries(car.joints).flatMap(([joint, row]): readonly Touch[] => {
      if (row.tool !== tool) return [];
      const mark = standingFinal(row);
      if (mark === null) return [];
      const doubts = doubtsOf(row, shop).filter(({ cause }) => cause === 'tool-suspect');
      return [{ car, joint, mark, remedy: strongestRemedy(doubts) }];
    }),
  );

/** `3 joints on 2 cars`, or null where nothing is in doubt. */
export const inDoubtWords = (touches: readonly Touch[]): string | null => {
  const doubted = touches.filter(({ remedy }) => remedy !== null);
  if (doubted.length === 0) return null;
  const cars = new Set(doubted.map(({ car }) => car.id)).size;
  return `${counted(doubted.length, 'joint')} on ${counted(cars, 'car')}`;
};

const counted = (count: number, what: string): string => `${String(count)} ${what}${count === 1 ? '' : 's'}`;
