/** Money in its smallest unit, and as people write it. A shop has one currency; until its settings name one, this. */
import { compare, exact, multiply, parseDecimal, ZERO } from '@/lib/domain/base/exact';

const SIGN = '£';

/** `1,290.50`, with the sign in front. */
export const moneyText = (minor: number): string => {
  const size = Math.abs(minor);
  const whole = String(Math.floor(size / 100)).replace(/\B(?=(?:\d{3})+$)/gu, ',');
  return `${minor < 0 ? '−' : ''}${SIGN}${whole}.${String(size % 100).padStart(2, '0')}`;
};

/** `4.20`, `4`, `4,20`; null for what is no amount, is below nothing, or has parts of a penny. */
export const readMoney = (text: string): number | null => {
  const value = parseDecimal(text.replace(SIGN, ''));
  if (value === null || compare(value, ZERO) < 0) return null;
  const minor = multiply(value, exact(100n));
  return minor.den === 1n ? Number(minor.num) : null;
};
