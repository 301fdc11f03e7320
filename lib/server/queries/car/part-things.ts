/** What the forms of parts are made from: where each stands, who gave one up for this car, what the shelf has of it. */
import { lastOuting } from '@/lib/domain/car/component-rows';
import { waitsForLook } from '@/lib/domain/shop/components';
import { takesMore } from '@/lib/domain/shop/trip-rows';
import type { PartThing, ShelfPiece, TripThing } from '@/lib/wire/views/desk';
import { weekdayWords } from '@/lib/wire/views/when';
import { brings } from './foresee';
import { partKeys } from './matters';
import type { Seen } from './seen';

export const partThings = (seen: Seen): Readonly<Record<string, PartThing>> => {
  const { car, plan, words, floor } = seen;
  return Object.fromEntries(
    partKeys(seen).map((key) => {
      const state = car.parts[key]?.state ?? 'absent';
      const isAway = state === 'out' || state === 'back';
      return [
        key,
        {
          name: words.thing(key),
          state,
          taking: brings(seen, { type: 'take-part', car: car.id, part: key, reason: '' }, 'part-taken'),
          lookedAt: plan.document.parts?.[key]?.lookedAt ?? '',
          waitsForLook: state === 'back' || waitsForLook(plan, car, key),
          trip: isAway ? (lastOuting(car.components[key])?.trip ?? null) : null,
          givers: floor
            .filter(({ parts }) => parts[key]?.state === 'taken' && parts[key].takenFor === car.id)
            .map(({ id }) => id),
          shelf: state === 'absent' || state === 'taken' ? shelfOf(seen, key) : [],
        },
      ];
    }),
  );
};

/** Lots that may be used, and what is bought of it without lots. */
const shelfOf = ({ shop, facts }: Seen, part: string): readonly ShelfPiece[] => {
  const isOf = (item: string): boolean => item === part || shop.items[item]?.isPart === part;
  const lots = Object.values(shop.lots).filter(
    ({ item, quarantined, expires }) =>
      isOf(item) && quarantined === null && (expires === null || facts.day <= expires),
  );
  if (lots.length > 0) return lots.map(({ id, item }) => ({ item, lot: id }));
  const bought = Object.values(shop.orders).flatMap(({ lines }) =>
    lines.flatMap(({ item }) => (isOf(item) ? [item] : [])),
  );
  return [...new Set(bought)].map((item) => ({ item, lot: null }));
};

/** Those that are not over: somebody may still put something in the van. */
export const tripThings = ({ shop, facts }: Seen): readonly TripThing[] =>
  Object.values(shop.trips)
    .filter((trip) => takesMore(trip, facts.day))
    .map(({ id, supplier, goes, due }) => ({
      trip: id,
      says: `${shop.suppliers[supplier]?.name ?? supplier}, goes ${weekdayWords(goes, facts.day)}, back ${weekdayWords(due, facts.day)}`,
    }));
