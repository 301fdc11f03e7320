/** The lots of one item, as whoever takes from them sees them. */
import { ZERO, add, compare } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Key, LotId } from '@/lib/domain/base/vocabulary';
import { lotRefusals } from '@/lib/domain/car/hardware';
import type { Case } from '@/lib/domain/decide/case';
import { lotsAtHand } from '@/lib/domain/shop/lots-to-take';
import { quantityText } from '@/lib/domain/shop/need-words';
import { binOf } from '@/lib/domain/shop/rows';
import type { Shop } from '@/lib/domain/shop/rows';
import { placeOf } from '@/lib/domain/shop/shelf';
import type { OnShelf } from '@/lib/domain/shop/shelf';
import type { Drawn } from '@/lib/domain/shop/stock';
import { refusalLine } from '@/lib/wire/views/refusal';
import type { LotChoice } from '@/lib/wire/views/sign-off';
import type { Said } from './joint-view';

/** Where things lie, and how much of them. */
export interface Stores {
  readonly bins: Shop['bins'];
  readonly shelf: readonly OnShelf[];
}

/** For pages on which nothing is taken. */
export const NO_STORES: Stores = { bins: {}, shelf: [] };

/** What may be taken stands first, in the order to take it. `box`: what lies in the kit of the work that takes it. */
export const lotChoices = (
  at: Pick<Case, 'facts' | 'car' | 'plan'>,
  { bins, shelf }: Stores,
  box: readonly Drawn[],
  item: Key,
  spoken: Said['spoken'],
): readonly LotChoice[] => {
  const hand = lotsAtHand(box, shelf, item).flatMap(({ lot }) => lot ?? []);
  const there = shelf.flatMap(({ supply }) => (supply.item === item ? (placeOf(supply) ?? []) : []));
  const all = Object.values(at.facts.lots).flatMap((lot) => (lot.item === item ? lot.id : []));
  const unit = at.plan.document.items?.[item]?.unit ?? 'pc';
  const says = (lot: LotId): string => {
    if (box.some((line) => line.item === item && line.lot === lot)) return 'in the kit';
    const lying = shelf.filter(({ supply }) => placeOf(supply) === lot);
    const open = lying.filter(({ supply }) => supply.onlyFor === null);
    if (lying.length === 0) return 'none left by the books';
    if (open.length === 0) return 'all of it lies in kits';
    const bin = binOf({ bins, lots: at.facts.lots }, item, lot);
    return `${bin === null ? '' : `in ${bin}, `}${quantityText(sumOf(open), unit)} there`;
  };
  return [...new Set([...hand, ...there, ...all])].map((id) => {
    const [refusal] = lotRefusals(item, id, at.facts);
    return {
      id,
      says: says(id),
      whyNot: refusal === undefined ? null : spoken(refusalLine(at.car.id, refusal, at.plan).says),
    };
  });
};

const sumOf = (lying: readonly OnShelf[]): Exact =>
  lying.reduce(
    (sum, { supply }) => (compare(supply.quantity, ZERO) > 0 ? add(sum, supply.quantity) : sum),
    ZERO,
  );
