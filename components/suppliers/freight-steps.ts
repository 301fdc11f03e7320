/** A freight table as one line: from which value or weight on, and the fee. */
import type { Freight } from '@/lib/domain/shop/order';
import { amount } from '@/lib/domain/base/money';
import { readMoney } from '@/lib/wire/money';

/** `0.00: 6.50; 90.00: 0.00`. */
export const freightText = ({ by, steps }: Freight): string =>
  steps.map(({ from, fee }) => `${by === 'value' ? amount(from) : String(from)}: ${amount(fee)}`).join('; ');

/** The inverse; null for what is no such line. */
export const readFreight = (by: Freight['by'], text: string): Freight['steps'] | null => {
  const steps = text.split(';').map((part) => {
    const [, from = '', fee = ''] = /^\s*(\S+?)\s*:\s*(\S+)\s*$/u.exec(part) ?? [];
    const start = by === 'value' ? readMoney(from) : /^\d{1,8}$/u.test(from) ? Number(from) : null;
    const amount = readMoney(fee);
    return start === null || amount === null ? null : { from: start, fee: amount };
  });
  const known = steps.filter((step) => step !== null);
  return known.length === steps.length ? known : null;
};
