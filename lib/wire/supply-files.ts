/** Items and offers as files of comma-separated values: the same columns out and in. */
import type { Result } from '@/lib/domain/base/result';
import type { PriceStep } from '@/lib/domain/shop/order';
import { readSize } from '@/lib/domain/shop/size';
import type { ItemTermsClaim, OfferClaim } from '@/lib/domain/supply-claims';
import { writeCsv } from './csv';
import type { CsvFault } from './csv';
import { amount } from '@/lib/domain/base/money';
import { readMoney } from './money';
import { readTable } from './table-file';

export const OFFER_COLUMNS = ['supplier', 'item', 'pack', 'prices', 'weight', 'number', 'deposit'] as const;
export const ITEM_COLUMNS = [
  'item',
  'name',
  'unit',
  'reuse',
  'trace',
  'shelf months',
  'opened days',
  'comes with',
  'minimum',
  'attrition',
  'part',
] as const;

/** `4.20`, or with steps `1: 4.20; 10: 3.90`. */
export const readPrices = (text: string): readonly PriceStep[] | null => {
  const steps = text.split(';').map((part) => {
    const [, from = '1', price = ''] = /^\s*(?:(\d{1,7})\s*:)?\s*(\S+)\s*$/u.exec(part) ?? [];
    const amount = readMoney(price);
    return amount === null ? null : { fromPacks: Number(from), price: amount };
  });
  const known = steps.filter((step) => step !== null);
  return known.length === steps.length ? known : null;
};

/** The inverse of `readPrices`. */
export const pricesText = (steps: readonly PriceStep[]): string => {
  const [only, ...more] = steps;
  if (only?.fromPacks === 1 && more.length === 0) return amount(only.price);
  return steps.map(({ fromPacks, price }) => `${String(fromPacks)}: ${amount(price)}`).join('; ');
};

const wholeIn = (text: string): number | null => (/^\d{1,9}$/u.test(text) ? Number(text) : null);

export const readOffersFile = (text: string): Result<readonly OfferClaim[], readonly CsvFault[]> =>
  readTable(text, OFFER_COLUMNS, ['supplier', 'item', 'pack', 'prices'], (cell, say): OfferClaim => {
    const prices = readPrices(cell('prices'));
    if (cell('prices') !== '' && prices === null)
      say('prices', `“${cell('prices')}” is no price; write 4.20, or with steps 1: 4.20; 10: 3.90`);
    const weight = cell('weight') === '' ? undefined : wholeIn(cell('weight'));
    if (weight === null) say('weight', `“${cell('weight')}” is no whole number of grams`);
    const deposit = cell('deposit') === '' ? undefined : readMoney(cell('deposit'));
    if (deposit === null) say('deposit', `“${cell('deposit')}” is no amount; write 18.00`);
    const number = cell('number');
    return {
      supplier: cell('supplier'),
      item: cell('item'),
      pack: cell('pack'),
      prices: prices ?? [],
      ...(typeof weight === 'number' ? { weight } : {}),
      ...(number === '' ? {} : { number }),
      ...(typeof deposit === 'number' ? { deposit } : {}),
    };
  });

export const writeOffersFile = (offers: readonly OfferClaim[]): string =>
  writeCsv([
    OFFER_COLUMNS,
    ...offers.map(({ supplier, item, pack, prices, weight = 0, number = '', deposit = 0 }) => [
      supplier,
      item,
      pack,
      pricesText(prices),
      weight === 0 ? '' : String(weight),
      number,
      deposit === 0 ? '' : amount(deposit),
    ]),
  ]);

/** `NS-M10 4; RB-damper 4`. */
export const readBox = (text: string): Readonly<Record<string, number>> | null => {
  const parts = text.split(';').map((part) => /^\s*(\S+)\s+(\d{1,6})\s*$/u.exec(part));
  const box: Record<string, number> = {};
  for (const part of parts) {
    const [, key = '', count = ''] = part ?? [];
    if (key === '' || key in box || key in Object.prototype) return null;
    box[key] = Number(count);
  }
  return box;
};

export const boxText = (box: Readonly<Record<string, number>>): string =>
  Object.entries(box)
    .map(([key, count]) => `${key} ${String(count)}`)
    .join('; ');

export const readItemsFile = (text: string): Result<readonly ItemTermsClaim[], readonly CsvFault[]> =>
  readTable(text, ITEM_COLUMNS, ['item'], (cell, say): ItemTermsClaim => {
    const has = (column: (typeof ITEM_COLUMNS)[number]): boolean => cell(column) !== '';
    const counted = (column: 'shelf months' | 'opened days'): number | undefined => {
      const count = has(column) ? wholeIn(cell(column)) : undefined;
      if (count === null) say(column, `“${cell(column)}” is no whole number`);
      return count ?? undefined;
    };
    const [shelfMonths, openedDays] = [counted('shelf months'), counted('opened days')];
    const trace = (['lot', 'bulk'] as const).find((each) => each === cell('trace'));
    if (has('trace') && trace === undefined) say('trace', `“${cell('trace')}” is neither lot nor bulk`);
    const box = has('comes with') ? readBox(cell('comes with')) : {};
    if (box === null) say('comes with', `“${cell('comes with')}” is no list; write NS-M10 4; RB-damper 4`);
    const name = cell('name');
    return {
      item: cell('item'),
      ...(name === '' ? {} : readSize(name).ok ? { size: name } : { name }),
      ...(has('unit') ? { unit: cell('unit') } : {}),
      ...(has('reuse') ? { reuse: cell('reuse') } : {}),
      ...(trace === undefined ? {} : { trace }),
      ...(shelfMonths === undefined ? {} : { shelfMonths }),
      ...(openedDays === undefined ? {} : { openedDays }),
      ...(box === null || Object.keys(box).length === 0 ? {} : { comesWith: box }),
      ...(has('minimum') ? { minimum: cell('minimum') } : {}),
      ...(has('attrition') ? { attrition: cell('attrition') } : {}),
      ...(has('part') ? { isPart: cell('part') } : {}),
    };
  });

export const writeItemsFile = (items: readonly ItemTermsClaim[]): string =>
  writeCsv([
    ITEM_COLUMNS,
    ...items.map((item) => [
      item.item,
      item.name ?? item.size ?? '',
      item.unit ?? '',
      item.reuse ?? '',
      item.trace ?? '',
      item.shelfMonths === undefined ? '' : String(item.shelfMonths),
      item.openedDays === undefined ? '' : String(item.openedDays),
      boxText(item.comesWith ?? {}),
      item.minimum ?? '',
      item.attrition ?? '',
      item.isPart ?? '',
    ]),
  ]);
