/** What is typed at goods in, before it is a claim. */
import { ZERO, compare, parseDecimal } from '@/lib/domain/base/exact';
import type { CameIn } from '@/lib/domain/purchase-claims';
import { lotName } from '@/lib/domain/shop/purchase-rows';
import type { PurchaseLineView } from '@/lib/wire/views/purchase';

export interface Entry {
  readonly good: string;
  readonly damaged: string;
  readonly wrong: string;
  readonly certificate: string;
  /** Null: as with its last lot. */
  readonly isAsked: boolean | null;
  readonly expires: string;
}

export const EMPTY_ENTRY: Entry = {
  good: '',
  damaged: '',
  wrong: '',
  certificate: '',
  isAsked: null,
  expires: '',
};

type Entries = Readonly<Record<number, Entry>>;

const isAny = ({ good, damaged, wrong }: Entry): boolean =>
  [good, damaged, wrong].some((text) => text.trim() !== '');

/** Lot numbers for what is traced and good, in the order of the lines, so that a bag can be labelled before it is booked. */
export const lotsFor = (
  lines: readonly PurchaseLineView[],
  entries: Entries,
  next: number,
): Readonly<Record<number, string>> => {
  let number = next;
  const found: Record<number, string> = {};
  for (const [index, { isTraced }] of lines.entries()) {
    const good = parseDecimal(entries[index]?.good ?? '');
    if (!isTraced || good === null || compare(good, ZERO) <= 0) continue;
    found[index] = lotName(number);
    number += 1;
  }
  return found;
};

/** What the claim says; a line that nobody touched is not in it. */
export const cameIn = (
  lines: readonly PurchaseLineView[],
  entries: Entries,
  lots: Readonly<Record<number, string>>,
): readonly CameIn[] =>
  lines.flatMap((line, index): readonly CameIn[] => {
    const entry = entries[index];
    if (entry === undefined || !isAny(entry)) return [];
    const { damaged, wrong, certificate, expires } = entry;
    const lot = lots[index];
    const ofLot =
      lot === undefined
        ? {}
        : {
            lot,
            ...(certificate.trim() === '' ? {} : { certificate: certificate.trim() }),
            ...((entry.isAsked ?? line.asksCertificate) ? { certificateAsked: true } : {}),
            ...(expires === '' ? {} : { expires }),
          };
    return [
      {
        line: index,
        good: entry.good.trim() === '' ? '0' : entry.good.trim(),
        ...(damaged.trim() === '' ? {} : { damaged: damaged.trim() }),
        ...(wrong.trim() === '' ? {} : { wrong: wrong.trim() }),
        ...ofLot,
      },
    ];
  });

export const countWords = (lines: number): string => `${String(lines)} ${lines === 1 ? 'line' : 'lines'}`;
