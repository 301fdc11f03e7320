/** Stock in the shop's words. */
import type { EndReason } from './purchase-rows';
import type { KeptOffDonor, OutReason, StockPlace } from './stock';

export const OUT_WORDS: Readonly<Record<OutReason, string>> = {
  'extra-taken': 'taken beside the kit',
  scrapped: 'scrapped',
  lost: 'lost',
  returned: 'sent back to whoever sold it',
};

/** `NL-M10`, or `NL-M10 of lot L-0801` where it is traced. */
export const placeWords = ({ item, lot }: StockPlace): string =>
  lot === null ? item : `${item} of lot ${lot}`;

/** `6 good of B-M10 of lot L-0031, 2 thrown away`. */
export const keptWords = ({ item, good, scrapped, lot }: KeptOffDonor): string =>
  [
    ...(lot === null ? [] : [`${good} good of ${placeWords({ item, lot })}`]),
    ...(scrapped === '0' ? [] : [`${scrapped} ${lot === null ? `of ${item} ` : ''}thrown away`]),
  ].join(', ');

export const END_WORDS: Readonly<Record<EndReason, string>> = {
  cancelled: 'cancelled',
  credited: 'the money comes back',
  'sent-back': 'sent back',
};
