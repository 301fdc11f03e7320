/**
 * The stock half of what happened: what each event adds to which place. Additive, whatever stream the event stands in, so
 * that a car's event changes stock without the shop's lock, and the sums of all streams are what is there.
 */
import { ZERO, add, exact } from './base/exact';
import type { Exact } from './base/exact';
import type { Event } from './events';
import { quantityOf } from './shop/stock';
import type { Drawn, Recount, StockChange, StockPlace } from './shop/stock';

export const stockHalf = (event: Event): readonly StockChange[] => {
  switch (event.type) {
    case 'lot-received':
      return [change({ item: event.lot.item, lot: event.lot.id }, fromNumber(event.lot.quantity), ZERO)];
    case 'stock-received':
    case 'stock-put-back':
      return [change(event, add(quantityOf(event.quantity), quantityOf(event.found)), ZERO)];
    case 'stock-drawn':
      return [change(event, ZERO, quantityOf(event.quantity))];
    case 'stock-counted':
      return [looked(event, event)];
    case 'kit-picked':
      return (event.emptied ?? []).map((place) => looked(place, event));
    default:
      return drawn(drawnBy(event) ?? []);
  }
};

/** What an event of a car took from stock; null where it says nothing of it, as in logs from before stock was kept. */
export const drawnBy = (event: Event): readonly Drawn[] | null =>
  'drawn' in event ? (event.drawn ?? null) : null;

/** A lot's quantity is a number in its event: as it is written, 7.5 is 15/2. */
const fromNumber = (quantity: number): Exact =>
  Number.isSafeInteger(quantity) ? exact(quantity) : quantityOf(String(quantity));

const change = ({ item, lot }: StockPlace, came: Exact, went: Exact): StockChange => ({
  item,
  lot,
  came,
  went,
  counted: null,
});

const looked = (place: Recount, { meta }: Pick<Event, 'meta'>): StockChange => ({
  ...change(place, add(quantityOf(place.more), quantityOf(place.found)), quantityOf(place.fewer)),
  counted: { at: meta.at, by: meta.by },
});

const drawn = (list: readonly Drawn[]): readonly StockChange[] =>
  list.map((each) => change(each, ZERO, quantityOf(each.quantity)));
