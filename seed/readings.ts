/** Values as a careful person would read them: never all the same, never on the limit, and the same in every run. */
import { parseDecimal, toDecimalText, toNumber } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Unit } from '@/lib/domain/base/units';
import { placeOf } from '@/lib/domain/plan/window';

/** Between 0 and 1, by the text alone (FNV-1a). */
export const shareOf = (text: string): number => {
  let hash = 0x811c9dc5;
  for (const character of text) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  // The last steps of a plain FNV leave like texts near to each other.
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d) >>> 0;
  return ((hash ^ (hash >>> 13)) >>> 0) / 2 ** 32;
};

interface Range {
  readonly low: Exact | null;
  readonly high: Exact | null;
  readonly target: Exact | null;
  readonly unit: Unit;
}

const COUNTED: readonly Unit[] = ['click', 'turn', 'pcs'];

/** A value inside the range, near its middle, or well away from its one end; `otherwise` where that can't be rounded. */
export const readingIn = (range: Range, salt: string, otherwise: string): string => {
  const share = shareOf(salt);
  const low = range.low === null ? null : toNumber(range.low);
  const high = range.high === null ? null : toNumber(range.high);
  const text =
    low !== null && high !== null
      ? between(
          low,
          high,
          range.target === null ? (low + high) / 2 : toNumber(range.target),
          share,
          range.unit,
        )
      : high !== null
        ? rounded(high * (0.35 + 0.4 * share), oneSidedStep(high))
        : rounded((low ?? 0) * (1.06 + 0.1 * share), oneSidedStep(low ?? 0));
  const value = parseDecimal(text);
  return value !== null && placeOf(range, value) === 'inside' ? text : otherwise;
};

const between = (low: number, high: number, middle: number, share: number, unit: Unit): string => {
  const half = Math.min(high - middle, middle - low);
  const step = COUNTED.includes(unit) ? 1 : stepFor(half);
  return rounded(middle + (share - 0.5) * 0.8 * half, step);
};

/** What a scale of that size lets one read. */
const stepFor = (half: number): number => {
  if (half >= 20) return 5;
  if (half >= 10) return 1;
  if (half >= 2) return 0.5;
  if (half >= 0.4) return 0.1;
  return half >= 0.03 ? 0.01 : 0.001;
};

const oneSidedStep = (end: number): number =>
  end === 0 ? 1 : Math.min(1, 10 ** Math.floor(Math.log10(Math.abs(end) * 0.2)));

const rounded = (value: number, step: number): string => {
  const places = Math.max(0, -Math.floor(Math.log10(step)));
  const text = (Math.round(value / step) * step).toFixed(places);
  const exact = parseDecimal(text);
  return exact === null ? text : toDecimalText(exact);
};
