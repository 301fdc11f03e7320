/**
 * Hardware off a donor that is good to use again: a lot of its own, for that donor's car alone until it is shared. What the
 * car's plan wants new is never good again, in a critical joint as in any other: the plan says so of the item, and joints that
 * take back their own pieces after an opening take the donor's by the same word.
 */
import { ZERO, compare, parseDecimal } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { DonorHardwareClaim, KeptLine } from '@/lib/domain/donor-claims';
import type { Facts } from '@/lib/domain/facts';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { parseBin } from '@/lib/domain/shop/lot-state';
import { newOnly } from '@/lib/domain/shop/off-donor';
import { lotName, nextLotNumber } from '@/lib/domain/shop/purchase-rows';
import { stockText } from '@/lib/domain/shop/stock';
import { isItem } from './items';
import { receivedLot } from './received-lot';
import { accepted, denied } from './shop-decision';
import type { ShopDecision } from './shop-decision';

export const decideDonorHardware = (facts: Facts, claim: DonorHardwareClaim): ShopDecision => {
  if (claim.type === 'share-donor-lot') return share(facts, claim.lot);
  const { donorOf, lines } = claim;
  const plan = facts.plans[facts.builds?.[donorOf] ?? ''];
  if (plan === undefined) return denied([refuse('unknown-thing', { what: 'car', key: donorOf })]);
  const refusals: Refusal[] = [];
  const read = lines.reduce<readonly Kept[]>(
    (before, line) => [...before, readLine(facts, plan, line, before, refusals)],
    [],
  );
  if (refusals.length > 0) return denied(refusals);
  return accepted(
    {
      type: 'donor-hardware-kept',
      donorOf,
      lines: read.map(({ item, good, scrapped, lot }) => ({
        item,
        good: stockText(good),
        scrapped: stockText(scrapped),
        lot,
      })),
    },
    ...read.flatMap(({ item, good, scrapped, lot, bin }) =>
      lot === null
        ? []
        : [
            {
              type: 'lot-received' as const,
              lot: {
                ...receivedLot(facts, { lot, item, quantity: Number(stockText(good)) }),
                ...(bin === null ? {} : { bin }),
                // It came with the donor: nobody pays for it again.
                cost: '0',
                donor: { car: donorOf, isShared: false, scrapped: stockText(scrapped) },
              },
            },
          ],
    ),
  );
};

/** Whoever says so of a lot that is shared already has said nothing new. */
const share = (facts: Facts, lot: string): ShopDecision => {
  const donor = facts.lots[lot]?.donor;
  if (donor === undefined) return denied([refuse('unknown-thing', { what: 'lot off a donor', key: lot })]);
  return donor.isShared ? accepted() : accepted({ type: 'donor-lot-shared', lot, donorOf: donor.car });
};

interface Kept {
  readonly item: string;
  readonly good: Exact;
  readonly scrapped: Exact;
  /** Null where none of it was good. */
  readonly lot: string | null;
  readonly bin: string | null;
}

const readLine = (
  facts: Facts,
  plan: PlanDocument,
  line: KeptLine,
  before: readonly Kept[],
  refusals: Refusal[],
): Kept => {
  const { item } = line;
  const quantity = (field: 'good' | 'scrapped'): Exact => {
    const text = line[field] ?? '0';
    const value = parseDecimal(text);
    if (value !== null && compare(value, ZERO) >= 0) return value;
    refusals.push(unreadable(`${field} of ${item}`, text, 'a number, 0 or more'));
    return ZERO;
  };
  const faults = refusals.length;
  if (!isItem(facts, item)) refusals.push(refuse('unknown-thing', { what: 'item', key: item }));
  const good = quantity('good');
  const scrapped = quantity('scrapped');
  const isGood = compare(good, ZERO) > 0;
  if (!isGood && compare(scrapped, ZERO) === 0 && refusals.length === faults)
    refusals.push(unreadable(`good of ${item}`, line.good, 'how many are good, or were thrown away'));
  const rule = isGood ? newOnly(plan, item, facts.supply.items[item]?.own) : null;
  if (rule !== null) refusals.push(refuse('must-be-new', { item, rule, joint: null }));
  const bin = line.bin === undefined ? null : parseBin(line.bin);
  if (line.bin !== undefined && bin === null)
    refusals.push(unreadable(`bin of ${item}`, line.bin, 'a number and a letter, like 09C'));
  const made = before.filter(({ lot }) => lot !== null).length;
  const lot = isGood ? (line.lot ?? lotName(nextLotNumber(facts.lots) + made)) : null;
  if (lot !== null && (facts.lots[lot] !== undefined || before.some((each) => each.lot === lot)))
    refusals.push(refuse('already-there', { what: 'lot', key: lot }));
  return { item, good, scrapped, lot, bin };
};

const unreadable = (field: string, text: string, wanted: string): Refusal =>
  refuse('value-unreadable', { field, text, wanted });
