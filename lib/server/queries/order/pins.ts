/** What was insisted on, and what that costs. */
import 'server-only';
import type { Key } from '@/lib/domain/base/vocabulary';
import { quantityText } from '@/lib/domain/shop/need-words';
import { ONE, parseDecimal } from '@/lib/domain/base/exact';
import type { ItemPin } from '@/lib/domain/shop/offer-rows';
import type { Shop } from '@/lib/domain/shop/rows';
import type { NeedNow } from '@/lib/server/load/need';
import type { PinCost } from '@/lib/solve/order/pin-costs';
import { moneyText } from '@/lib/wire/money';
import type { OrderLineView, PinView } from '@/lib/wire/views/order';

/** Who offers it, by name. */
export const sellersOf = (item: Key, { offers, suppliers }: Shop): OrderLineView['sellers'] => {
  const ids = Object.values(offers).flatMap((offer) =>
    offer.item === item && !offer.ended ? [offer.supplier] : [],
  );
  return [...new Set(ids)].flatMap((id) => {
    const seller = suppliers[id];
    return seller === undefined ? [] : [{ id, name: seller.name, takesToday: seller.takesToday }];
  });
};

export const pinViews = (
  { world: { shop }, names, catalogue }: Pick<NeedNow, 'world' | 'names' | 'catalogue'>,
  costs: readonly PinCost[],
): readonly PinView[] =>
  Object.values(shop.pins).flatMap(({ id, pin }): readonly PinView[] => {
    if (pin === null) return [];
    const unit = catalogue[id]?.unit ?? 'pc';
    return [
      {
        item: id,
        name: names.item(id) ?? id,
        unit,
        says: pinWords(pin, unit, shop),
        cost: costWords(costs.find(({ line }) => line === id)),
        pin,
        sellers: sellersOf(id, shop),
      },
    ];
  });

const pinWords = (
  { supplier, quantity, buyToday, isExcluded }: ItemPin,
  unit: string,
  { suppliers }: Shop,
): string =>
  isExcluded
    ? 'left out of the order'
    : [
        ...(quantity === null ? [] : [quantityText(parseDecimal(quantity) ?? ONE, unit)]),
        ...(supplier === null ? [] : [`from ${suppliers[supplier]?.name ?? supplier}`]),
        ...(buyToday ? ['today'] : []),
      ].join(', ');

/** Null where it is in no line of this week, or one of the two orders was not found. */
const costWords = (cost: PinCost | undefined): string | null => {
  if (cost === undefined || cost.money === null || cost.lateCarDays === null) return null;
  const { money, lateCarDays, proved } = cost;
  const said = [
    money === 0 ? 'costs nothing' : `costs ${moneyText(Math.abs(money))} ${money > 0 ? 'more' : 'less'}`,
    ...(lateCarDays === 0
      ? []
      : [`${String(Math.abs(lateCarDays))} car-days ${lateCarDays > 0 ? 'later' : 'sooner'}`]),
  ].join(', ');
  return proved ? said : `${said}, as far as was worked out`;
};
