/** The lots of one item, as whoever takes from them sees them. */
import { ZERO, add, compare } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Key, LotId } from '@/lib/domain/base/vocabulary';
import { asideFor, lotRefusals } from '@/lib/domain/car/hardware';
import { lotFactsOf } from '@/lib/domain/decide/case';
import type { Case } from '@/lib/domain/decide/case';
import { lotsAtHand } from '@/lib/domain/shop/lots-to-take';
import { quantityText } from '@/lib/domain/shop/need-words';
import { binOf } from '@/lib/domain/shop/rows';
import type { Lot, Shop } from '@/lib/domain/shop/rows';
import { lotOf } from '@/lib/domain/shop/shelf';
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

/**
 * What may be taken stands first, in the order to take it. Off another car's donor it is none of this one's, until it is shared.
 * `box`: what lies in the kit of the work that takes it.
 */
export const lotChoices = (
  at: Case,
  { bins, shelf }: Stores,
  box: readonly Drawn[],
  item: Key,
  spoken: Said['spoken'],
): readonly LotChoice[] => {
  const hand = lotsAtHand(box, shelf, item, at.car.id).flatMap(({ lot }) => lot ?? []);
  const isOurs = (lot: Lot): boolean => lot.item === item && (asideFor(lot) ?? at.car.id) === at.car.id;
  const all = Object.values(at.facts.lots).flatMap((lot) => (isOurs(lot) ? lot.id : []));
  const there = shelf.flatMap(({ supply }) => lotOf(supply) ?? []).filter((lot) => all.includes(lot));
  const unit = at.plan.document.items?.[item]?.unit ?? 'pc';
  const says = (lot: LotId): string => {
    if (box.some((line) => line.item === item && line.lot === lot)) return 'in the kit';
    const lying = shelf.filter(({ supply }) => lotOf(supply) === lot);
    const open = lying.filter(({ isBoxed }) => isBoxed !== true);
    if (lying.length === 0) return 'none left by the books';
    if (open.length === 0) return 'all of it lies in kits';
    const bin = binOf({ bins, lots: at.facts.lots }, item, lot);
    return `${bin === null ? '' : `in ${bin}, `}${quantityText(sumOf(open), unit)} there`;
  };
  return [...new Set([...hand, ...there, ...all])].map((id) => {
    const [refusal] = lotRefusals(item, id, lotFactsOf(at));
    return {
      id,
      says: `${originWords(at, at.facts.lots[id])}${says(id)}`,
      whyNot: refusal === undefined ? null : spoken(refusalLine(at.car.id, refusal, at.plan).says),
    };
  });
};

const originWords = ({ car }: Case, lot: Lot | undefined): string =>
  lot?.donor === undefined
    ? ''
    : lot.donor.car === car.id
      ? 'off its donor, '
      : `off the donor of ${lot.donor.car}, `;

const sumOf = (lying: readonly OnShelf[]): Exact =>
  lying.reduce(
    (sum, { supply }) => (compare(supply.quantity, ZERO) > 0 ? add(sum, supply.quantity) : sum),
    ZERO,
  );
