/**
 * Threads that a shop buys by name: which pitches a diameter has, the coarse one first.
 *
 * Inch: ASME B1.1, UNC and UNF, as printed at https://ns1.engineersedge.com/hardware/ansi_inch_size_thread_stress_15800.htm
 * and https://www.mwcomponents.com/resources/material-strengths-standard-and-specialty-fasteners-2.
 * Metric: ISO 261, as printed at https://docs.steelcam.org/yamawa/obshij-katalog-2016-2017-page799 (M5 to M10) and
 * https://china-reducers.com/thread-effective-stress-area-table/ (M12 to M16).
 */
import {
  compare,
  exact,
  parseDecimal,
  parseInches,
  toDecimalText,
  toInchText,
} from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { Thread } from '@/lib/domain/torque/strength';

/** Diameter in inches, then threads to the inch: coarse (UNC) and fine (UNF). */
const INCH: Readonly<Record<string, readonly [coarse: number, fine: number]>> = {
  '1/4': [20, 28],
  '5/16': [18, 24],
  '3/8': [16, 24],
  '7/16': [14, 20],
  '1/2': [13, 20],
  '9/16': [12, 18],
  '5/8': [11, 18],
  '3/4': [10, 16],
};

/** Diameter in mm, then pitches in mm. */
const METRIC: Readonly<Record<string, readonly string[]>> = {
  '5': ['0.8'],
  '6': ['1'],
  '8': ['1.25', '1'],
  '10': ['1.5', '1.25', '1'],
  '12': ['1.75', '1.5', '1.25'],
  '14': ['2', '1.5'],
  '16': ['2', '1.5'],
};

const known = (text: string, read: (text: string) => Exact | null): readonly Exact[] => {
  const value = read(text);
  return value === null ? [] : [value];
};

const THREADS: readonly Thread[] = [
  ...Object.entries(INCH).flatMap(([diameter, counts]) =>
    known(diameter, parseInches).flatMap((size) =>
      counts.map((count): Thread => ({ unit: 'in', diameter: size, pitch: exact(1, count) })),
    ),
  ),
  ...Object.entries(METRIC).flatMap(([diameter, pitches]) =>
    known(diameter, parseDecimal).flatMap((size) =>
      pitches
        .flatMap((pitch) => known(pitch, parseDecimal))
        .map((pitch): Thread => ({ unit: 'mm', diameter: size, pitch })),
    ),
  ),
];

/** The table's threads of this diameter, the coarse one first; empty for a diameter that it does not hold. */
export const threadsOf = (unit: Thread['unit'], diameter: Exact): readonly Thread[] =>
  THREADS.filter((each) => each.unit === unit && compare(each.diameter, diameter) === 0);

/** Is it one that the table holds? Others can be bought, and have to be written in full. */
export const isStandard = ({ unit, diameter, pitch }: Thread): boolean =>
  threadsOf(unit, diameter).some((each) => compare(each.pitch, pitch) === 0);

/**
 * The one way a thread is written: pitch always there, since that is what people get wrong.
 *
 * @example threadText(m10Fine) // 'M10×1.25'
 */
export const threadText = ({ unit, diameter, pitch }: Thread): string =>
  unit === 'mm'
    ? `M${toDecimalText(diameter)}×${toDecimalText(pitch)}`
    : `${lengthText('in', diameter)}-${toDecimalText(exact(pitch.den, pitch.num))}`;

/** A length in the unit's own writing, without the unit: `2-1/2`, `0.63`, `40`. Reads back exactly. */
export const lengthText = (unit: Thread['unit'], length: Exact): string =>
  unit === 'mm' || 64n % length.den !== 0n ? decimalText(length) : toInchText(length);

/** What ends as a decimal is written as one; a third of an inch stays a fraction. */
const decimalText = (length: Exact): string => {
  const text = toDecimalText(length, 9);
  const back = parseDecimal(text);
  return back !== null && compare(back, length) === 0 ? text : toInchText(length);
};
