/** The two answers that the rules of the shop's books give. */
import type { Refusal } from '@/lib/domain/base/refusals';
import type { ShopPayload } from '@/lib/domain/shop-payload';

export interface ShopDecision {
  readonly refusals: readonly Refusal[];
  readonly events: readonly ShopPayload[];
}

export const accepted = (...events: readonly ShopPayload[]): ShopDecision => ({ refusals: [], events });
export const denied = (refusals: readonly Refusal[]): ShopDecision => ({ refusals, events: [] });
