/**
 * What inch fasteners measure, exactly as printed, in inches: for judging how long a bolt must be. Metric ones have no
 * table here: their washers and nuts are given with the question.
 */
import { add, compare, exact, parseDecimal, parseInches } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import { lengthText } from './thread-table';

/** How far a dimension may go from what it is called after. */
export interface Spread {
  readonly min: Exact;
  readonly basic: Exact;
  readonly max: Exact;
}

const ROWS = ['1/4', '5/16', '3/8', '7/16', '1/2', '9/16', '5/8', '3/4'] as const;

/** One printed column for the sizes of `ROWS`; `–` where it has none. */
const column = (text: string): ReadonlyMap<string, Exact> => {
  const cells = text.split(' ');
  return new Map(
    ROWS.flatMap((size, index): [string, Exact][] => {
      const cell = cells[index] ?? '–';
      const value = parseInches(cell) ?? parseDecimal(cell);
      return value === null ? [] : [[size, value]];
    }),
  );
};

interface Columns {
  readonly min: ReadonlyMap<string, Exact>;
  readonly basic: ReadonlyMap<string, Exact>;
  readonly max: ReadonlyMap<string, Exact>;
}

const spreadAt = ({ min, basic, max }: Columns, diameter: Exact): Spread | null => {
  const size = lengthText('in', diameter);
  const [least, named, most] = [min.get(size), basic.get(size), max.get(size)];
  return least === undefined || named === undefined || most === undefined
    ? null
    : { min: least, basic: named, max: most };
};

/**
 * Height of nuts. Hex and jam nuts: ASME B18.2.2-2015, Machinery's Handbook 31 p. 1677,
 * https://online.flippingbook.com/view/954046886/202. Jam nuts have no printed basic height there, so theirs is the
 * greatest. Lock nuts: http://www.fastener-technology.com/products/nuts/grade-c-lock-nuts.html, which prints least and greatest.
 */
const lockNutMin = column('0.212 0.258 0.320 0.365 0.427 0.473 0.535 –');
const jamMax = column('0.163 0.195 0.227 0.260 0.323 0.324 0.387 0.446');
const insertMax = column('0.328 0.359 0.469 0.524 0.609 0.656 0.765 –');
const metalMax = column('0.288 0.336 0.415 0.463 0.573 0.621 0.731 –');
const NUTS = {
  hex: {
    basic: column('7/32 17/64 21/64 3/8 7/16 31/64 35/64 41/64'),
    max: column('0.226 0.273 0.337 0.385 0.448 0.496 0.559 0.665'),
    min: column('0.212 0.258 0.320 0.365 0.427 0.473 0.535 0.617'),
  },
  thin: {
    basic: jamMax,
    max: jamMax,
    min: column('0.150 0.180 0.210 0.240 0.302 0.301 0.363 0.398'),
  },
  insert: { basic: insertMax, max: insertMax, min: lockNutMin },
  'all-metal': { basic: metalMax, max: metalMax, min: lockNutMin },
} satisfies Readonly<Record<string, Columns>>;

export type NutPattern = keyof typeof NUTS;

/** Null for a size that is not printed. */
export const nutHeight = (pattern: NutPattern, diameter: Exact): Spread | null =>
  spreadAt(NUTS[pattern], diameter);

/**
 * Thickness of washers. Plain type A, SAE pattern “N” and USS pattern “W”: ASME B18.21.1-2009, Machinery's Handbook 31
 * p. 1694, https://online.flippingbook.com/view/954046886/225. Split lock washers, least thickness, which is what one is
 * when pressed flat: https://www.aftfasteners.com/regular-high-alloy-split-helical-spring-lockwashers-dimensions-mechanical-properties/.
 */
const splitMin = column('0.062 0.078 0.094 0.109 0.125 0.141 0.156 0.188');
const WASHERS = {
  N: {
    basic: column('0.065 0.065 0.065 0.065 0.095 0.095 0.095 0.134'),
    max: column('0.080 0.080 0.080 0.080 0.121 0.121 0.121 0.160'),
    min: column('0.051 0.051 0.051 0.051 0.074 0.074 0.074 0.108'),
  },
  W: {
    basic: column('0.065 0.083 0.083 0.083 0.109 0.109 0.134 0.148'),
    max: column('0.080 0.104 0.104 0.104 0.132 0.132 0.160 0.177'),
    min: column('0.051 0.064 0.064 0.064 0.086 0.086 0.108 0.122'),
  },
  split: { basic: splitMin, max: splitMin, min: splitMin },
} satisfies Readonly<Record<string, Columns>>;

export type WasherPattern = keyof typeof WASHERS;

export const washerThickness = (pattern: WasherPattern, diameter: Exact): Spread | null =>
  spreadAt(WASHERS[pattern], diameter);

/**
 * Below thread length plus this, a hex cap screw is threaded to its head. ASME B18.2.1, transition Y, as printed at
 * https://astma193gradeb7.com/hex-cap-screws-asme-b18.2.1/; that such bolts are threaded to the head is from memory.
 */
const TRANSITION = column('0.250 0.278 0.312 0.357 0.385 0.417 0.455 0.500');

export const transitionLength = (diameter: Exact): Exact | null =>
  TRANSITION.get(lengthText('in', diameter)) ?? null;

/**
 * How much shorter than its name a hex cap screw may be. ASME B18.2.1, as printed at
 * http://www.aftfasteners.com/hex-cap-screws-head-thread-dimensions-performance-mechanical-specs/. Up to and with `to`.
 */
const SHORTER: readonly {
  readonly to: Exact | null;
  readonly by: readonly [thin: string, middle: string, thick: string];
}[] = [
  { to: exact(1), by: ['0.03', '0.03', '0.03'] },
  { to: exact(5, 2), by: ['0.04', '0.06', '0.08'] },
  { to: exact(4), by: ['0.06', '0.08', '0.10'] },
  { to: exact(6), by: ['0.10', '0.10', '0.10'] },
  { to: null, by: ['0.18', '0.18', '0.18'] },
];
const WIDTHS: readonly string[][] = [
  ['1/4', '5/16', '3/8'],
  ['7/16', '1/2'],
  ['9/16', '5/8', '3/4'],
];

/** Null for a diameter that is not printed. */
export const mayBeShorterBy = (diameter: Exact, length: Exact): Exact | null => {
  const width = WIDTHS.findIndex((sizes) => sizes.includes(lengthText('in', diameter)));
  const row = SHORTER.find(({ to }) => to === null || compare(length, to) <= 0);
  const text = row?.by[width];
  return text === undefined ? null : parseDecimal(text);
};

/**
 * Clearance holes: ASME B18.2.8, https://www.jandesupply.com/reference-clearance-holes.php, checked with Machinery's
 * Handbook 31 p. 1741; ISO 273, https://engineeringhardware.com/?p=50. Close, normal, loose (fine, medium, coarse).
 */
const HOLES: Readonly<Record<string, string>> = {
  '1/4': '0.266 0.281 0.297',
  '5/16': '0.328 0.344 0.359',
  '3/8': '0.391 0.406 0.422',
  '7/16': '0.453 0.469 0.484',
  '1/2': '0.531 0.562 0.609',
  '5/8': '0.656 0.688 0.734',
  '3/4': '0.781 0.812 0.906',
  M5: '5.3 5.5 5.8',
  M6: '6.4 6.6 7.0',
  M8: '8.4 9.0 10.0',
  M10: '10.5 11.0 12.0',
  M12: '13.0 13.5 14.5',
  M14: '15.0 15.5 16.5',
  M16: '17.0 17.5 18.5',
};

/** In the bolt's own unit. Null for a size that is not printed. */
export const clearanceHole = (
  unit: 'in' | 'mm',
  diameter: Exact,
  fit: 'close' | 'normal' | 'loose',
): Exact | null => {
  const row = HOLES[`${unit === 'mm' ? 'M' : ''}${lengthText(unit, diameter)}`];
  const cell = row?.split(' ')[['close', 'normal', 'loose'].indexOf(fit)];
  return cell === undefined ? null : parseDecimal(cell);
};

/**
 * Length of thread on a hex bolt. Inch, ASME B18.2.1: 2D + 1/4 up to 6 in, 2D + 1/2 above (values as printed at
 * https://astma193gradeb7.com/hex-cap-screws-asme-b18.2.1/). Metric, ISO 888 from memory: 2d + 6 up to 125 mm, 2d + 12 up to
 * 200 mm, 2d + 25 above; a 10 mm bolt of 40 has 26 mm.
 */
export const threadLength = (unit: 'in' | 'mm', diameter: Exact, length: Exact): Exact => {
  const twice = exact(2n * diameter.num, diameter.den);
  const isUpTo = (limit: number): boolean => compare(length, exact(limit)) <= 0;
  if (unit === 'in') return add(twice, exact(1, isUpTo(6) ? 4 : 2));
  return add(twice, exact(isUpTo(125) ? 6 : isUpTo(200) ? 12 : 25));
};
