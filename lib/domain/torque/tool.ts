/** Torque tools and gauges: what they can do, until when they are trusted, and over which time they are suspect. */
import { ONE, ZERO, add, compare, exact, multiply, parseDecimal, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Unit } from '@/lib/domain/base/units';
import type { Day, Instant, Method, SuspectReason, ToolId, ToolKind } from '@/lib/domain/base/vocabulary';

export interface Calibration {
  readonly on: Day;
  /** The last day on which it counts (inclusive, D18). */
  readonly due: Day;
  readonly certificate?: string;
}

/**
 * A time in which its readings may be wrong, both ends inclusive. `low` and `high` bound the error in percent of
 * what it showed, as found at the bench; both null while nobody has tested it. `knownAt` is when the shop learnt
 * of it: a signature made before that is accepted and doubted, one made after is refused.
 */
export interface SuspectInterval {
  readonly from: Instant;
  readonly until: Instant | null;
  readonly knownAt: Instant;
  readonly reason: SuspectReason;
  readonly low: string | null;
  readonly high: string | null;
}

export interface Tool {
  readonly id: ToolId;
  readonly name: string;
  readonly kind: ToolKind;
  /** The usable range, both ends inclusive; the lower end is the tool's own (ISO 6789-1: its lowest mark). */
  readonly low: string;
  readonly high: string;
  readonly unit: Unit;
  /** From the square drive to the handle mark; an adapter can't be judged without it. */
  readonly length?: { readonly value: string; readonly unit: Unit };
  readonly calibrations: readonly Calibration[];
  /** Uses since the last calibration and how many it is good for, where the shop counts them. */
  readonly cycles?: { readonly used: number; readonly limit: number };
  readonly suspect: readonly SuspectInterval[];
}

export interface Adapter {
  readonly id: string;
  readonly name: string;
  /** How far it puts the fastener out from the square drive. */
  readonly extension: { readonly value: string; readonly unit: Unit };
  /** Between adapter and handle, degrees: 0 lies in line and adds most, 90 adds nothing. */
  readonly angle: number;
}

const INDICATING: readonly ToolKind[] = ['dial', 'beam', 'digital'];

/** Does this kind of tool do this method? Where a reading is asked for, a click tool does not. */
export const toolFitsMethod = (kind: ToolKind, method: Method): boolean => {
  switch (method) {
    case 'click':
      return kind === 'click' || INDICATING.includes(kind);
    case 'dial':
    case 'beam':
    case 'digital':
    case 'prevailing':
      return INDICATING.includes(kind);
    case 'angle':
    case 'sequence':
      return kind === 'click' || INDICATING.includes(kind);
    case 'firm':
      return false;
  }
};

/** The calibration that covers a day, or null. The last valid day counts. */
export const calibrationOn = (tool: Tool, day: Day): Calibration | null =>
  tool.calibrations.filter((each) => each.on <= day && day <= each.due).at(-1) ?? null;

/** The latest calibration at all, to say since when it has been out. */
export const lastCalibration = (tool: Tool): Calibration | null => tool.calibrations.at(-1) ?? null;

const covers = (interval: SuspectInterval, at: Instant): boolean =>
  interval.from <= at && (interval.until === null || at <= interval.until);

/** Intervals that cover an instant, known by now or not. */
export const suspectAt = (tool: Tool, at: Instant): readonly SuspectInterval[] =>
  tool.suspect.filter((interval) => covers(interval, at));

/** Was it known at that instant that the tool must not be used? */
export const knownSuspectAt = (tool: Tool, at: Instant): SuspectInterval | null =>
  tool.suspect.find((interval) => interval.knownAt <= at && covers(interval, at)) ?? null;

/** Between these multiples of what the tool showed lies what the fastener truly got. */
export interface ErrorFactors {
  readonly least: Exact;
  readonly most: Exact;
}

const factors = new WeakMap<SuspectInterval, ErrorFactors | null>();

/**
 * What a reading of that time must be multiplied by (D53). The drift came at an unknown moment in the interval, so the
 * error lies anywhere between none and the worst as found. Null when the error is not known.
 */
export const errorFactors = (interval: SuspectInterval): ErrorFactors | null => {
  const known = factors.get(interval);
  if (known !== undefined) return known;
  const low = interval.low === null ? null : parseDecimal(interval.low);
  const high = interval.high === null ? null : parseDecimal(interval.high);
  const found =
    low === null || high === null
      ? null
      : {
          least: compare(low, ZERO) < 0 ? factorOf(low) : ONE,
          most: compare(high, ZERO) > 0 ? factorOf(high) : ONE,
        };
  factors.set(interval, found);
  return found;
};

const factorOf = (percent: Exact): Exact => add(ONE, multiply(percent, exact(1n, 100n)));

/** The band of a found error widened by the certificate's uncertainty, in percent as decimal text. */
export const widened = (
  error: { readonly low: Exact; readonly high: Exact },
  uncertainty: Exact,
): { low: Exact; high: Exact } => ({
  low: subtract(error.low, uncertainty),
  high: add(error.high, uncertainty),
});
