/** Words for the shop's books of buying. */
import type { Sentences } from './words';

type Code =
  | 'size-unreadable'
  | 'plan-says'
  | 'comes-with-itself'
  | 'no-order-day'
  | 'steps-out-of-order'
  | 'weight-missing'
  | 'offer-ended'
  | 'given-before'
  | 'pin-empty'
  | 'not-offered'
  | 'ordered-since'
  | 'order-day-past'
  | 'prices-changed'
  | 'order-cancelled';

export const supplySentences: Sentences<Code> = {
  'size-unreadable': ({ text, says }) => `“${text}” is no size that can be read. ${says}`,
  'plan-says': ({ item, field, planned }, called) =>
    `${called(item)} is a plan’s item, and the plan gives its ${field} as “${planned}”. Leave the ${field} out here.`,
  'comes-with-itself': ({ item }, called) =>
    `${called(item)} can’t lie in its own box. Take it off the list of what comes with it.`,
  'no-order-day': ({ supplier }) =>
    `Nothing can ever be ordered from ${supplier}. Name a day of the week, or say that an order is taken on any day.`,
  'steps-out-of-order': ({ of, what }) =>
    `The steps of ${of} don’t rise: ${what}. Begin with the lowest and name each once.`,
  'weight-missing': ({ supplier, item }, called) =>
    `${supplier} charges freight by weight, and a pack of ${called(item)} has none. Give its weight in grams.`,
  'offer-ended': ({ offer }) => `The offer ${offer} has ended already. There is nothing to end.`,
  'given-before': ({ what, key }) =>
    `The ${what} “${key}” stands in an earlier row as well. Leave one of the two.`,
  'pin-empty': ({ item }, called) =>
    `Nothing is insisted on for ${called(item)}. Choose a supplier, a quantity, today, or to leave it out.`,
  'not-offered': ({ item, supplier }, called) =>
    `${supplier} offers no ${called(item)}. Choose one of those who do, or enter the offer.`,
  'ordered-since': ({ first }) =>
    `Orders were approved since this was worked out: ${first} is there already. Look at the order again, it leaves out what is on its way.`,
  'order-day-past': ({ supplier, day }) =>
    `${supplier} takes no order on ${day}. Look at the order again, it is for their next day.`,
  'prices-changed': ({ supplier }) =>
    `What ${supplier} asks has changed since this was worked out. Look at the order again, it has the new terms.`,
  'order-cancelled': ({ order }) => `${order} is cancelled already. There is nothing to cancel.`,
};
