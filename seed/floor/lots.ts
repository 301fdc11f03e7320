/** What stands in the bins by lot: hardware that the plan wants traced, and what goes off. */
import type { Day } from '@/lib/domain/base/vocabulary';
import type { ShopClaim } from '@/lib/domain/commands';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { bought } from './shelf';

type ReceiveLot = Extract<ShopClaim, { type: 'receive-lot' }>;

/** What does not keep, and how many days from its receipt. */
const KEEPS: Readonly<Record<string, number>> = {
  'BF-4': 540,
  'BF-51': 133,
  'SL-poly': 300,
  'TS-lin': 365,
  COOL: 900,
};
/** Bolts whose maker's paper is asked for and filed. */
const WITH_CERTIFICATE = /-10$|^M14|^F716/;

/** One lot of everything that the plan traces, in the plan's order. */
export const openingLots = (document: PlanDocument, laterBy: (days: number) => Day): readonly ReceiveLot[] =>
  Object.entries(document.items ?? {})
    .filter(([, item]) => item.trace === 'lot')
    .map(([item], index) => {
      const lot = `L-${String(801 + index).padStart(4, '0')}`;
      const keeps = KEEPS[item];
      return {
        type: 'receive-lot',
        lot,
        item,
        quantity: Number(bought(document)(item)),
        ...(WITH_CERTIFICATE.test(item)
          ? { certificate: `3.1 / ${lot.slice(2)}`, certificateAsked: true }
          : {}),
        ...(keeps === undefined ? {} : { expires: laterBy(keeps) }),
      };
    });

/** Tube nuts bought again, half way through one car's brake lines (`supply.ts`); of them the supplier will have bad news. */
export const LOT_TOO_SOFT = 'L-0941';

/** Lock nuts bought again, and a box whose paper never came, so that nobody may use it. */
export const laterLots: readonly ReceiveLot[] = [
  { type: 'receive-lot', lot: 'L-0931', item: 'NL-M10', quantity: 100 },
  { type: 'receive-lot', lot: 'L-0932', item: 'NL-M8', quantity: 200 },
  { type: 'receive-lot', lot: 'L-0933', item: 'M12x90-10', quantity: 25, certificateAsked: true },
];
