/** What the car's page would show somebody of a shop that only the rules know. */
import { carViewOf } from '@/lib/server/queries/car/view';
import { NO_STORES } from '@/lib/server/queries/sign-off/lot-choices';
import type { Stores } from '@/lib/server/queries/sign-off/lot-choices';
import type { CarView } from '@/lib/wire/views/car';
import type { Shop } from './shop';

export const viewOf = (shop: Shop, me = 'leo', stores: Stores = NO_STORES): CarView => {
  const car = shop.car();
  return carViewOf(
    {
      shop: shop.world.shop,
      car,
      plan: shop.plan(),
      facts: shop.facts(me),
      setting: { name: 'Shop', zone: 'UTC' },
      floor: [car],
    },
    { signature: null, lately: [], chosen: {}, stores },
  );
};
