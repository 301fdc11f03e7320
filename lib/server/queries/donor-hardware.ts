/** What came off a donor beside its parts: lots, what is left of each, and which items of the plan may be used again. */
import 'server-only';
import { ZERO, compare, subtract } from '@/lib/domain/base/exact';
import type { Key } from '@/lib/domain/base/vocabulary';
import { asideFor } from '@/lib/domain/car/hardware';
import type { PlanDocument } from '@/lib/domain/plan/document';
import type { Catalogue } from '@/lib/domain/shop/item';
import { totalsOf } from '@/lib/domain/shop/need';
import type { CarNeed } from '@/lib/domain/shop/need';
import { quantityText } from '@/lib/domain/shop/need-words';
import { newOnly } from '@/lib/domain/shop/off-donor';
import { binOf } from '@/lib/domain/shop/rows';
import type { Lot } from '@/lib/domain/shop/rows';
import { EMPTY_PLACE, onHand, quantityOf, stockKey } from '@/lib/domain/shop/stock';
import type { Stock } from '@/lib/domain/shop/stock';
import type { DonorItem, DonorLot } from '@/lib/wire/views/donor';
import type { Seen } from './car/seen';

export const donorLots = (seen: Seen, stock: Stock, catalogue: Catalogue): readonly DonorLot[] =>
  Object.values(seen.shop.lots)
    .filter(({ donor }) => donor?.car === seen.car.id)
    .map((lot) => ({
      lot: lot.id,
      item: lot.item,
      name: catalogue[lot.item]?.name ?? seen.nameOf(lot.item) ?? lot.item,
      says: leftWords(seen, lot, stock, catalogue),
      isShared: lot.donor?.isShared === true,
      keptApart: lot.quarantined ?? '',
    }));

const leftWords = ({ shop }: Seen, lot: Lot, stock: Stock, catalogue: Catalogue): string => {
  const { id, item, quantity, donor } = lot;
  const unit = catalogue[item]?.unit ?? 'pc';
  const there = onHand(stock[stockKey({ item, lot: id })] ?? EMPTY_PLACE);
  const bin = binOf(shop, item, id);
  const thrown = quantityOf(donor?.scrapped ?? '0');
  return [
    `${quantityText(there, unit)} of ${quantityText(quantityOf(String(quantity)), unit)} left${bin === null ? '' : ` in ${bin}`}`,
    ...(compare(thrown, ZERO) > 0 ? [`${quantityText(thrown, unit)} thrown away`] : []),
  ].join(', ');
};

/** Hardware of the plan that is not tightened once: what the car still needs, beyond what was put aside for it, first. */
export const donorItems = (
  { plan, car, shop }: Seen,
  need: CarNeed,
  stock: Stock,
  catalogue: Catalogue,
): readonly DonorItem[] => {
  const { document } = plan;
  const needed = totalsOf(need.lines);
  const aside = totalsOf(
    Object.values(shop.lots).flatMap((lot) =>
      asideFor(lot) === car.id && lot.quarantined === null
        ? [
            {
              item: lot.item,
              quantity: onHand(stock[stockKey({ item: lot.item, lot: lot.id })] ?? EMPTY_PLACE),
            },
          ]
        : [],
    ),
  );
  return [...hardwareOf(document)]
    .filter((item) => newOnly(document, item) === null)
    .map((item) => {
      const open = subtract(needed.get(item) ?? ZERO, aside.get(item) ?? ZERO);
      const name = catalogue[item]?.name ?? document.items?.[item]?.name ?? item;
      const unit = catalogue[item]?.unit ?? 'pc';
      return { key: item, name, needed: compare(open, ZERO) > 0 ? quantityText(open, unit) : '' };
    })
    .toSorted(
      (a, b) => Number(b.needed !== '') - Number(a.needed !== '') || a.name.localeCompare(b.name, 'en'),
    );
};

/** What joints and work are put together with. */
const hardwareOf = ({ joints = {}, operations = {} }: PlanDocument): ReadonlySet<Key> =>
  new Set(
    [...Object.values(joints), ...Object.values(operations)].flatMap(({ hardware = {} }) =>
      Object.keys(hardware),
    ),
  );
