/**
 * What a bolt can bear, as advice for a torque that nobody has published. Floating numbers are fine here:
 * friction alone spreads such a torque by a quarter, and no rule compares with it. A lead decides, not this.
 */
import {
  compare,
  divide,
  exact,
  multiply,
  parseDecimal,
  parseInches,
  toNumber,
  ZERO,
} from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';

/** Lengths in `unit`. An inch thread's pitch is 1/n for n threads to the inch. */
export interface Thread {
  readonly unit: 'in' | 'mm';
  readonly diameter: Exact;
  readonly pitch: Exact;
}

export const GRADES = ['2', '5', '8', '8.8', '10.9', '12.9'] as const;
/** `2`, `5`, `8` are SAE J429 and go with inch threads; the others are ISO 898-1 and go with metric ones. */
export type Grade = (typeof GRADES)[number];

const METRIC = /^M(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)$/i;
const INCH = /^(.+)-(\d{1,2})(?:\s*UN[CF]?)?$/i;

/** No thread in use is nearly so coarse; beyond it the area formulas mean nothing. */
const isThread = ({ diameter, pitch }: Thread): boolean =>
  compare(pitch, ZERO) > 0 && compare(multiply(pitch, exact(2)), diameter) < 0;

const metricThread = (match: RegExpExecArray): Thread | null => {
  const [diameter, pitch] = [parseDecimal(match[1] ?? ''), parseDecimal(match[2] ?? '')];
  return diameter === null || pitch === null ? null : { unit: 'mm', diameter, pitch };
};

const inchThread = (match: RegExpExecArray): Thread | null => {
  const diameter = parseInches(match[1] ?? '');
  const pitch = divide(exact(1), exact(BigInt(match[2] ?? '0')));
  return diameter === null || pitch === null ? null : { unit: 'in', diameter, pitch };
};

/**
 * Reads `M10x1.5`, `M12×1.25`, `3/8-24`, `1/2-20 UNF`, `1-1/8-12`. Null for anything else; `M10` alone is left
 * out too, for the pitch is what people get wrong.
 */
export const parseThread = (text: string): Thread | null => {
  const plain = text.trim();
  const metric = METRIC.exec(plain);
  const inch = metric === null ? INCH.exec(plain) : null;
  const thread = metric !== null ? metricThread(metric) : inch !== null ? inchThread(inch) : null;
  return thread !== null && isThread(thread) ? thread : null;
};

/** Reads `8.8`, `5`, `g5`, `grade 5`, `class 10.9`, `SAE 8`. Null for a grade that the tables here do not hold. */
export const parseGrade = (text: string): Grade | null => {
  const bare = text.trim().replace(/^(?:grade|gr\.?|g|class|SAE|ISO)\s*/i, '');
  return GRADES.find((each) => each === bare) ?? null;
};

/**
 * The area that counts in tension, in² or mm². Inch: 0.7854·(D − 0.9743/n)², ASME B1.1 app. B [memory];
 * metric: 0.7854·(d − 0.9382·P)², ISO 898-1 §9.1.6.1. Not for inch bolts above 180 ksi, which ask for another.
 */
export const stressArea = ({ unit, diameter, pitch }: Thread): number => {
  const lost = unit === 'in' ? 0.9743 : 0.9382;
  return (Math.PI / 4) * (toNumber(diameter) - lost * toNumber(pitch)) ** 2;
};

/** Above `over` up to and with `to`, in or mm; the first band begins at `over` itself. Strength in psi or MPa. */
interface Band {
  readonly over: number;
  readonly to: number;
  readonly proof: number;
}

/** SAE J429 in psi, ISO 898-1 in MPa: M16 still belongs to the lower class 8.8 value. */
const PROOF: Readonly<Record<Grade, { readonly unit: Thread['unit']; readonly bands: readonly Band[] }>> = {
  '2': {
    unit: 'in',
    bands: [
      { over: 0.25, to: 0.75, proof: 55_000 },
      { over: 0.75, to: 1.5, proof: 33_000 },
    ],
  },
  '5': {
    unit: 'in',
    bands: [
      { over: 0.25, to: 1, proof: 85_000 },
      { over: 1, to: 1.5, proof: 74_000 },
    ],
  },
  '8': { unit: 'in', bands: [{ over: 0.25, to: 1.5, proof: 120_000 }] },
  '8.8': {
    unit: 'mm',
    bands: [
      { over: 1.6, to: 16, proof: 580 },
      { over: 16, to: 39, proof: 600 },
    ],
  },
  '10.9': { unit: 'mm', bands: [{ over: 5, to: 39, proof: 830 }] },
  '12.9': { unit: 'mm', bands: [{ over: 1.6, to: 39, proof: 970 }] },
};

/**
 * The stress that leaves no lasting stretch: psi for an inch thread, MPa for a metric one. Null where the grade
 * is not one for this kind of thread, or the standard does not reach its diameter. Grade 2 is for bolts up to
 * 6 in long; longer ones bear 33,000 psi only, which the caller has to know.
 */
export const proofStrength = ({ unit, diameter }: Thread, grade: Grade): number | null => {
  const { unit: gradeUnit, bands } = PROOF[grade];
  const size = toNumber(diameter);
  if (unit !== gradeUnit || size < (bands[0]?.over ?? Infinity)) return null;
  // Bands stand in rising order, so the first that reaches far enough is the one; a boundary belongs to the lower.
  return bands.find((band) => size <= band.to)?.proof ?? null;
};

/** Proof strength times stress area: lbf for an inch thread, N for a metric one. Null as `proofStrength`. */
export const proofLoad = (thread: Thread, grade: Grade): number | null => {
  const strength = proofStrength(thread, grade);
  return strength === null ? null : strength * stressArea(thread);
};

export interface TorqueQuestion {
  readonly thread: Thread;
  readonly grade: Grade;
  /** K of T = K·D·F: a property of finish and oil, between about 0.1 and 0.3; sources differ by half. */
  readonly friction: number;
  /** How much of the proof load is wanted: 0.75 where it is taken apart again, 0.9 where not (Shigley). */
  readonly share?: number;
}

/**
 * The torque that pulls a bolt to `share` of its proof load, T = K·D·F with D the nominal diameter.
 * A suggestion. Null as `proofStrength`, or where friction or share is not above 0, or share is above 1.
 *
 * @example 3/8-16 grade 5 at K = 0.20 // 30.9 lbf·ft, printed by the US Army as 31
 */
export const torqueAtProofShare = ({
  thread,
  grade,
  friction,
  share = 0.75,
}: TorqueQuestion): { value: number; unit: 'N·m' | 'lbf·ft' } | null => {
  const load = proofLoad(thread, grade);
  const isSensible = Number.isFinite(friction) && friction > 0 && share > 0 && share <= 1;
  if (load === null || !isSensible) return null;
  const product = friction * toNumber(thread.diameter) * load * share;
  return thread.unit === 'in'
    ? { value: product / 12, unit: 'lbf·ft' }
    : { value: product / 1000, unit: 'N·m' };
};
