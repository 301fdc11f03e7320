/** Commands about the shop's own books: people, tools, lots, stock, buying. */
import { ITEM_TERMS, OFFER, PIN, SUPPLIER } from './base/refusal-groups';
import { LEADS, OWNER, assurance, note, warning } from './command-rule';
import type { CommandRule } from './command-rule';
import type { ShopClaim } from './commands';

export const SHOP_COMMANDS: Readonly<Record<ShopClaim['type'], CommandRule>> = {
  // people, tools, lots
  'add-person': note('shop', LEADS, 'someone works here', ['already-there']),
  'qualify-person': assurance('shop', LEADS, 'someone may do this kind of work, from a day to a day', []),
  'end-qualification': note('shop', LEADS, 'someone may do this kind of work up to a day and no longer'),
  'rename-person': note('shop', LEADS, 'someone is called something else from now on'),
  'change-roles': note('shop', OWNER, 'someone has other roles from now on', ['last-owner']),
  'remove-person': note('shop', LEADS, 'someone no longer works here', ['last-owner']),
  'add-tool': note('shop', LEADS, 'the shop has this tool', ['already-there', 'value-unreadable']),
  'add-adapter': note('shop', LEADS, "the shop has this crow's-foot or extension", [
    'already-there',
    'value-unreadable',
  ]),
  'record-calibration': assurance('shop', LEADS, 'a tool was calibrated, and how it was found', [
    'value-unreadable',
  ]),
  'suspect-tool': warning('shop', 'anyone', 'a tool was dropped, lost, is overdue, or reads wrong'),
  'release-plan': assurance('shop', LEADS, 'cars may be begun on a plan revision', ['already-there']),
  'receive-lot': assurance('shop', LEADS, 'a lot of hardware came in', ['already-there']),
  'quarantine-lot': warning('shop', 'anyone', 'a lot must not be used'),
  'keep-donor-hardware': assurance('shop', 'anyone', 'hardware off a donor is good to use again', [
    'must-be-new',
    'value-unreadable',
    'already-there',
  ]),
  'share-donor-lot': assurance('shop', LEADS, 'any car may have what came off a donor', []),
  'clear-lot': assurance('shop', LEADS, 'a lot kept apart is good after all', ['lot-not-quarantined']),

  // stock: books give way to the shelf
  'receive-stock': assurance('shop', LEADS, 'bulk goods came in', ['value-unreadable', 'already-there']),
  'count-stock': note('shop', 'anyone', 'somebody counted what is there', [
    'already-there',
    'value-unreadable',
    'lot-of-other-item',
  ]),
  'draw-stock': warning('shop', 'anyone', 'goods went that are in no car'),
  'put-back': note('shop', 'anyone', 'goods came back to the shelf', [
    'value-unreadable',
    'lot-of-other-item',
  ]),
  'put-away': note('shop', 'anyone', 'goods lie in this bin from now on', [
    'already-there',
    'value-unreadable',
    'lot-of-other-item',
  ]),
  'count-remnants': note('shop', 'anyone', 'what rests of an item lie in the rack', ['value-unreadable']),
  'saw-bars': note('shop', 'anyone', 'bars of a cut plan are sawn', [
    'value-unreadable',
    'rest-not-there',
    'bar-too-short',
    'cut-not-wanted',
  ]),
  'recut-pieces': note('shop', 'anyone', 'sawn pieces are to be cut again', ['not-sawn']),
  // buying
  'set-item': note('shop', LEADS, 'what the shop keeps of an item, and how', ITEM_TERMS),
  'set-supplier': note('shop', LEADS, 'who sells to the shop, and on what terms', SUPPLIER),
  'set-offer': note('shop', LEADS, 'what a supplier asks for a pack', OFFER),
  'end-offer': note('shop', LEADS, 'a pack is no longer sold', ['offer-ended']),
  'import-items': note('shop', LEADS, 'a file of items', ['given-before', ...ITEM_TERMS]),
  'import-offers': note('shop', LEADS, 'a file of offers', ['given-before', ...OFFER]),
  'pin-line': note('shop', LEADS, 'an order has this line so, whatever is cheapest', PIN),
  'unpin-line': note('shop', LEADS, 'an order has this line as is cheapest again'),
  'approve-order': assurance('shop', OWNER, 'orders are sent as they were shown', [
    'price-changed',
    'freight-changed',
    'ordered-since',
    'order-day-past',
    'too-few-packs',
    'order-too-small',
    'given-before',
  ]),
  'receive-order': assurance('shop', LEADS, 'goods of an order came in', [
    'value-unreadable',
    'already-there',
    'given-before',
    'nothing-came',
  ]),
  'promise-order': note('shop', LEADS, 'an order is promised for another day'),
  'end-order-line': note('shop', LEADS, 'what has not come of a line will not come any more', [
    'nothing-outstanding',
  ]),
  'credit-order': note('shop', LEADS, 'money of an order comes back', ['deposit-not-owed']),
  'set-rate': note('shop', OWNER, 'what an hour of the shop costs from a day on'),

  // outside work
  'quote-outside': note('shop', LEADS, 'what work outside is expected to cost'),
  'open-trip': note('shop', LEADS, 'a trip to who does outside work is planned', [
    'already-there',
    'back-before-gone',
  ]),
  'promise-trip': note('shop', LEADS, 'a trip is promised back for another day', ['back-before-gone']),
  'bill-trip': note('shop', LEADS, 'what outside work cost', ['given-before']),
};
