/**
 * A crow's-foot or extension makes the wrench longer than its scale knows: the fastener gets more than the
 * wrench shows. In line, Ta = Tw·(L + E)/L; at an angle only E·cos a adds to the lever.
 *
 * Source: US Army TM 9-254 fig. 46 (its text misprints L + E·cos a as a product) and TM 5-3810-305-23.
 */
import { ZERO, add, compare, divide, exact, multiply } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';

export interface Lever {
  /** L: from the square drive to the handle mark. */
  readonly length: Exact;
  /** E: from the square drive to the fastener, in the same unit as `length`. A straight socket has 0. */
  readonly extension: Exact;
  /** Degrees between adapter and handle: 0 lies in line, 90 adds nothing, 180 points back and shortens. */
  readonly angle: number;
}

/**
 * Right angles are exact. Any other cosine is rounded to 12 decimals: the error is far below any tool's, and all
 * engines agree on it, where the last bits of Math.cos may differ between the browser and the server.
 */
const cosine = (degrees: number): Exact => {
  const turned = Math.abs(degrees) % 360;
  if (turned === 0) return exact(1n);
  if (turned === 90 || turned === 270) return ZERO;
  if (turned === 180) return exact(-1n);
  return exact(Math.round(Math.cos((turned * Math.PI) / 180) * 1e12), 1_000_000_000_000n);
};

/** (L + E·cos a)/L; null where there is no lever left to speak of, or the angle is no number. */
const gain = ({ length, extension, angle }: Lever): Exact | null => {
  if (!Number.isFinite(angle) || compare(length, ZERO) <= 0) return null;
  const reach = add(length, multiply(extension, cosine(angle)));
  return compare(reach, ZERO) <= 0 ? null : divide(reach, length);
};

/**
 * What the fastener gets when the wrench is set to, or shows, `setting`; in the same torque unit.
 * Null when L <= 0, when L + E·cos a <= 0, or when the angle is not finite.
 *
 * @example deliveredFromSetting(exact(225), { length: exact(18), extension: exact(6), angle: 0 }) // 300
 */
export const deliveredFromSetting = (setting: Exact, lever: Lever): Exact | null => {
  const factor = gain(lever);
  return factor === null ? null : multiply(setting, factor);
};

/**
 * What to set the wrench to, so that the fastener gets `delivered`. The tool's range is judged on this, not on
 * what the fastener gets. Null as above.
 *
 * @example settingForDelivered(exact(300), { length: exact(18), extension: exact(6), angle: 0 }) // 225
 */
export const settingForDelivered = (delivered: Exact, lever: Lever): Exact | null => {
  const factor = gain(lever);
  return factor === null ? null : divide(delivered, factor);
};
