/** Events of trips. */
import type { Meta } from '@/lib/domain/event-meta';
import type { Shop } from '@/lib/domain/shop/rows';
import type { TripRow } from '@/lib/domain/shop/trip-rows';
import type { TripPayload } from '@/lib/domain/trip-payload';

export const evolveTrip = (shop: Shop, event: TripPayload & { readonly meta: Meta }): Shop => {
  const { by, at } = event.meta;
  switch (event.type) {
    case 'trip-opened': {
      const { trip: id, supplier, goes, due } = event;
      return { ...shop, trips: { ...shop.trips, [id]: { id, supplier, goes, due, bills: [], by, at } } };
    }
    case 'trip-promised':
      return onTrip(shop, event.trip, (trip) => ({ ...trip, due: event.due }));
    case 'trip-billed': {
      const { lines, freight, note } = event;
      return onTrip(shop, event.trip, (trip) => ({
        ...trip,
        bills: [...trip.bills, { lines, freight, note, by, at }],
      }));
    }
  }
};

const onTrip = (shop: Shop, id: string, change: (trip: TripRow) => TripRow): Shop => {
  const trip = shop.trips[id];
  return trip === undefined ? shop : { ...shop, trips: { ...shop.trips, [id]: change(trip) } };
};
