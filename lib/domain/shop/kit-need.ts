/** A kit line by line: what one run of one operation still takes, beside what lies in its box. Derived, never stored. */
import { ZERO, add, atLeastNone, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Day, Key, StateKey } from '@/lib/domain/base/vocabulary';
import { countInBox, inBox } from '@/lib/domain/shop/kit';
import type { Car } from '@/lib/domain/car/rows';
import { totalsOf } from './need';
import type { CarNeed } from './need';
import type { NeedCause } from './need-line';
import type { Supply } from './supply';

export interface KitWant {
  readonly item: Key;
  /** Still to go in, whether it is in the box already or not. */
  readonly wanted: Exact;
  readonly picked: Exact;
}

/** What is bought beside the work, not picked for it. */
const NOT_PICKED: ReadonlySet<NeedCause['kind']> = new Set<NeedCause['kind']>([
  'attrition',
  'in-box',
  'chained',
]);

/** The lines of a kit, in the plan's order; what lies in the box and is asked for no more stands at the end. */
export const kitWants = (need: CarNeed, car: Car, operation: StateKey): readonly KitWant[] => {
  const wanted = new Map<Key, Exact>();
  for (const { item, what, before, cause, quantity } of need.lines)
    if (what === 'item' && before === operation && !NOT_PICKED.has(cause.kind))
      wanted.set(item, add(wanted.get(item) ?? ZERO, quantity));
  const box = inBox(car, operation);
  for (const { item } of box) if (!wanted.has(item)) wanted.set(item, ZERO);
  return [...wanted].map(([item, quantity]) => ({
    item,
    wanted: quantity,
    picked: countInBox(box, item),
  }));
};

/** What must go anew into a joint now, outside any planned work: where it is renewed, or brought back to its level. */
export const jointWants = (need: CarNeed, joint: StateKey): readonly KitWant[] => {
  const lines = need.lines.filter(
    ({ what, at, before, cause }) =>
      what === 'item' && at === joint && before === null && !NOT_PICKED.has(cause.kind),
  );
  return [...totalsOf(lines)].map(([item, wanted]) => ({ item, wanted, picked: ZERO }));
};

/** How many more must go into the box. */
export const stillToPick = ({ wanted, picked }: Pick<KitWant, 'wanted' | 'picked'>): Exact => {
  return atLeastNone(subtract(wanted, picked));
};

/** What neither the box nor the shelf has. `good` is what lies on the shelf for anybody. */
export const lackOf = (want: Pick<KitWant, 'wanted' | 'picked'>, good: Exact): Exact => {
  return atLeastNone(subtract(stillToPick(want), good));
};

/** The next day on which some of it comes; null where none is on order. */
export const comesOn = (coming: readonly Supply[], item: Key): Day | null =>
  coming
    .flatMap((each) => (each.item === item && each.source.kind === 'order' ? [each.source.due] : []))
    .sort()[0] ?? null;
