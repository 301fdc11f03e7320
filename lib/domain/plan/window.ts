/**
 * A window: the exact, inclusive range that a value must lie in. A tolerance becomes its two ends
 * when the plan is loaded, so that no rule rounds before it compares.
 */
import {
  add,
  compare,
  exact,
  multiply,
  parseDecimal,
  subtract,
  toDecimalText,
} from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { parseUnit } from '@/lib/domain/base/units';
import type { Unit } from '@/lib/domain/base/units';

export interface Window {
  readonly low: Exact | null;
  readonly high: Exact | null;
  /** What is aimed at, where the text names it. */
  readonly target: Exact | null;
  readonly unit: Unit;
  readonly text: string;
}

/** What a specification may say instead of a window. */
export type Specification =
  | { readonly kind: 'window'; readonly window: Window }
  | { readonly kind: 'no-value-yet' }
  | { readonly kind: 'no-value-published' };

/** A limit of a check: a window, or something that is simply so or not. */
export type Limit =
  | { readonly kind: 'window'; readonly window: Window }
  | { readonly kind: 'statement'; readonly text: string };

const NUMBER = '([+-]?\\d+(?:\\.\\d+)?)';
const TOLERANCE = new RegExp(`^${NUMBER}\\s*(?:±|\\+/-|\\+-)\\s*${NUMBER}\\s*(%\\s+)?(.+)$`);
const RANGE = new RegExp(`^${NUMBER}\\s+to\\s+${NUMBER}\\s*(.+)$`);
const ONE_SIDED = new RegExp(`^(<=|>=)\\s*${NUMBER}\\s*(.*)$`);

/**
 * `45 ± 3 N·m`, `45 ± 5 % N·m`, `190 to 230 lbf·ft`, `>= 25 mm`, `<= 0.1 mm`; both ends belong to it.
 * Null when the text is none of these, the unit is unknown, or low lies above high.
 */
export const parseWindow = (text: string): Window | null => {
  const trimmed = text.trim();
  const tolerance = TOLERANCE.exec(trimmed);
  if (tolerance !== null) return around(tolerance, trimmed);
  const range = RANGE.exec(trimmed);
  if (range !== null) {
    const low = parseDecimal(range[1] ?? '');
    const high = parseDecimal(range[2] ?? '');
    const unit = parseUnit(range[3] ?? '');
    if (low === null || high === null || unit === null || compare(low, high) > 0) return null;
    return { low, high, target: null, unit, text: trimmed };
  }
  const oneSided = ONE_SIDED.exec(trimmed);
  if (oneSided === null) return null;
  const bound = parseDecimal(oneSided[2] ?? '');
  const unit = parseUnit(oneSided[3] ?? '');
  if (bound === null || unit === null) return null;
  return oneSided[1] === '<='
    ? { low: null, high: bound, target: null, unit, text: trimmed }
    : { low: bound, high: null, target: null, unit, text: trimmed };
};

const around = (match: RegExpExecArray, text: string): Window | null => {
  const target = parseDecimal(match[1] ?? '');
  const given = parseDecimal(match[2] ?? '');
  const unit = parseUnit(match[4] ?? '');
  if (target === null || given === null || unit === null || given.num < 0n) return null;
  const size = target.num < 0n ? exact(-target.num, target.den) : target;
  const tolerance = match[3] === undefined ? given : multiply(size, multiply(given, exact(1n, 100n)));
  return { low: subtract(target, tolerance), high: add(target, tolerance), target, unit, text };
};

export const parseSpecification = (text: string): Specification | null => {
  const trimmed = text.trim();
  if (trimmed === 'no value yet') return { kind: 'no-value-yet' };
  if (trimmed === 'no value published') return { kind: 'no-value-published' };
  const window = parseWindow(trimmed);
  return window === null ? null : { kind: 'window', window };
};

/** Any text that does not begin like a number is a statement to be confirmed: `boot whole`, `none cracked`. */
export const parseLimit = (text: string): Limit | null => {
  const window = parseWindow(text);
  if (window !== null) return { kind: 'window', window };
  return /^\s*[<>=±+\d-]/.test(text) || text.trim() === '' ? null : { kind: 'statement', text: text.trim() };
};

export type Place = 'below' | 'inside' | 'above';

/** Where a value, already in the window's unit, lies; both ends are inside. */
export const placeOf = (window: Pick<Window, 'low' | 'high'>, value: Exact): Place => {
  if (window.low !== null && compare(value, window.low) < 0) return 'below';
  if (window.high !== null && compare(value, window.high) > 0) return 'above';
  return 'inside';
};

/** The window's ends as a person reads them, `42 to 48 N·m`. */
export const windowText = (window: Window): string => {
  const { low, high, unit } = window;
  if (low !== null && high !== null) return `${toDecimalText(low)} to ${toDecimalText(high)} ${unit}`;
  if (low !== null) return `at least ${toDecimalText(low)} ${unit}`;
  return high === null ? window.text : `at most ${toDecimalText(high)} ${unit}`;
};
