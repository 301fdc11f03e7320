/** Words for the shop's books of buying. */
import { amount } from './money';
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
  | 'price-changed'
  | 'freight-changed'
  | 'ordered-since'
  | 'order-day-past'
  | 'too-few-packs'
  | 'deposit-not-owed'
  | 'order-too-small'
  | 'nothing-came'
  | 'nothing-outstanding';

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
  'price-changed': ({ item, supplier, pack, seen, now }, called) =>
    `${supplier} asks ${amount(now)} for ${pack} of ${called(item)} now, not ${amount(seen)} as was shown. Look at the order again: it is worked out anew.`,
  'freight-changed': ({ supplier, seen, now }) =>
    `The freight of ${supplier} is ${amount(now)} now, not ${amount(seen)} as was shown. Look at the order again: it is worked out anew.`,
  'ordered-since': ({ order }) =>
    `Order ${order} was approved since this was worked out. Look at the order again: it leaves out what is on its way.`,
  'order-day-past': ({ supplier, day }) =>
    `${supplier} takes no order on ${day}. Look at the order again: it is for their next day.`,
  'too-few-packs': ({ item, packs, fewest }, called) =>
    `${called(item)} is sold from ${String(fewest)} packs on, and ${String(packs)} ${packs === 1 ? 'is' : 'are'} asked for. Order more, or choose another pack.`,
  'deposit-not-owed': ({ order, money, open }) =>
    open === 0
      ? `No deposit of order ${order} is still to come back, so ${amount(money)} is another credit. Record it as one.`
      : `${amount(open)} of deposits of order ${order} are still to come back, not ${amount(money)}. Record the rest as another credit.`,
  'order-too-small': ({ supplier, goods, least }) =>
    `${supplier} takes no order below ${amount(least)}, and this one comes to ${amount(goods)}. Order more there, or all of it elsewhere.`,
  'nothing-came': ({ order }) =>
    `Nothing is said to have come of order ${order}. Count what is there, good or not, or leave it for another day.`,
  'nothing-outstanding': ({ order, item }, called) =>
    `Nothing of ${called(item)} is to come with order ${order} any more. There is nothing to end.`,
};
