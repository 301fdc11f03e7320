/** Which streams and rows a command must hold while it is judged, sorted, so that no two commands wait for each other. */
import { COMMANDS } from './authority';
import type { PersonId } from './base/vocabulary';
import { STARTS_CLOCK } from './clocks';
import type { Claim, Command } from './commands';
import type { PlanDocument } from './plan/document';
import type { Shop } from './shop/rows';
import type { OfStock } from './stock-claims';

/** `car:012`, `shop`, `stage:<plan>/<stage>`, `clock:<person>`; a car before anything else (its row is the lock of all that is on it). */
export type Lock = string;

/** The car's plan, for the room of the stage that it would enter. */
export interface TouchedPlan {
  readonly hash: string;
  readonly stages: PlanDocument['stages'];
}

/** The locks of a command. Stages that share a room share its lock; a person's one clock is asked on all cars. */
export const touches = (command: Command, plan: TouchedPlan | null, actor: PersonId): readonly Lock[] => {
  const { claim } = command;
  if (COMMANDS[claim.type].stream === 'shop' || !('car' in claim)) return ['shop'];
  const car: Lock = `car:${claim.car}`;
  // Two cars may want the same bay: its room is locked as well (D29).
  if (claim.type === 'advance-car')
    return [car, `stage:${plan?.hash ?? ''}/${plan?.stages[claim.to]?.sharesRoomWith ?? claim.to}`];
  return STARTS_CLOCK.has(claim.type) ? [car, `clock:${actor}`] : [car];
};

/** The places whose balance the judgement of this claim asks for; none where what the books say does not matter. */
export const stockAsked = (
  claim: Claim,
  { orders, lots }: Pick<Shop, 'orders' | 'lots'>,
): readonly OfStock[] => {
  switch (claim.type) {
    case 'receive-stock':
      return claim.goods;
    case 'count-stock':
      return claim.counts;
    case 'put-back':
      return [claim];
    case 'pick-kit':
      return (claim.emptied ?? []).flatMap((item) => [
        { item },
        ...Object.values(lots).flatMap((lot) => (lot.item === item ? [{ item, lot: lot.id }] : [])),
      ]);
    case 'receive-order':
      return (orders[claim.order]?.lines ?? []).map(({ item }) => ({ item }));
    default:
      return [];
  }
};
