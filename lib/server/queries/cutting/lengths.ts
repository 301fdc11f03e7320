/** Lengths as the cutting page writes them. */
import { exact, toDecimalText } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';

/** `3,150`, `12.5`: millimetres, to a tenth. */
export const millimetres = (length: Exact): string => {
  const [whole = '', tenths] = toDecimalText(length, 1).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/gu, ',');
  return tenths === undefined ? grouped : `${grouped}.${tenths}`;
};

/** `15.77 m`, of whole numbers of which so many make a millimetre. */
export const metres = (whole: number, scale: number): string =>
  `${toDecimalText(exact(whole, scale * 1000), 2)} m`;
