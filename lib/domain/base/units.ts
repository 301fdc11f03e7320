/**
 * The units that a plan, a tool or a reading may use, with exact factors.
 *
 * All follow from three definitions that are exact: 1 in = 25.4 mm and 1 lb = 0.45359237 kg (international yard
 * and pound agreement, 1959), and gn = 9.80665 m/s² (3rd CGPM, 1901). Temperature is left out: it has an offset.
 */
import { ONE, exact, multiply } from './exact';
import type { Exact } from './exact';

/** `factor`: how many of its dimension's base unit one of it is. The base unit is the one with factor 1. */
interface UnitEntry<Name extends string> {
  readonly dimension: Name;
  readonly factor: Exact;
}

const unit = <Name extends string>(dimension: Name, factor: Exact = ONE): UnitEntry<Name> => ({
  dimension,
  factor,
});

const inch = exact(254, 10); // mm
const pound = exact(45_359_237, 100_000_000); // kg
const gravity = exact(980_665, 100_000); // m/s²
const poundForce = multiply(pound, gravity); // N
const thousandth = exact(1, 1000);
const inchInMetres = multiply(inch, thousandth);
const poundInch = multiply(poundForce, inchInMetres); // N·m
/** 1 lbf/in² = lbf / (in · in), here in N/mm² and from there to kPa. */
const psi = exact(poundForce.num * inch.den * inch.den * 1000n, poundForce.den * inch.num * inch.num);

const TABLE = {
  'N·m': unit('torque'),
  'cN·m': unit('torque', exact(1, 100)),
  'lbf·ft': unit('torque', multiply(poundInch, exact(12))),
  'lbf·in': unit('torque', poundInch),
  'kgf·m': unit('torque', gravity),
  'kgf·cm': unit('torque', multiply(gravity, exact(1, 100))),

  mm: unit('length'),
  m: unit('length', exact(1000)),
  cm: unit('length', exact(10)),
  in: unit('length', inch),
  '\u00b5m': unit('length', thousandth),

  kPa: unit('pressure'),
  bar: unit('pressure', exact(100)),
  MPa: unit('pressure', exact(1000)),
  psi: unit('pressure', psi),

  N: unit('force'),
  lbf: unit('force', poundForce),
  kgf: unit('force', gravity),

  s: unit('time'),
  min: unit('time', exact(60)),
  h: unit('time', exact(3600)),
  d: unit('time', exact(86_400)),

  kg: unit('mass'),
  lb: unit('mass', pound),

  ml: unit('volume'),
  l: unit('volume', exact(1000)),

  '\u03a9': unit('resistance'),
  'k\u03a9': unit('resistance', exact(1000)),

  '°': unit('angle'),
  '%': unit('ratio'),
  V: unit('voltage'),
  A: unit('current'),
  rpm: unit('speed'),
  // Counted things. A turn is not 360°: a nut backed off by turns is counted, not measured.
  turn: unit('turns'),
  click: unit('clicks'),
  pcs: unit('pieces'),
};

/** Spelled as in the shop's papers, `N·m`, `lbf·ft`. `parseUnit` makes one from typed text. */
export type Unit = keyof typeof TABLE;
export type Dimension = (typeof TABLE)[Unit]['dimension'];

/** Every unit, in the order of the table. */
export const UNITS = Object.keys(TABLE) as readonly Unit[];

/**
 * Other spellings, after `joined`. Left out on purpose: `lb ft`, `ft-lb`, `in-lb` and `kg m`, where nothing says
 * that a force is meant, and every change of case that could make another unit (`mN`, `NM`).
 */
const SPELLINGS: Readonly<Record<string, Unit>> = {
  Nm: 'N·m',
  cNm: 'cN·m',
  'ft·lbf': 'lbf·ft',
  'in·lbf': 'lbf·in',
  'm·kgf': 'kgf·m',
  kgfm: 'kgf·m',
  kgfcm: 'kgf·cm',
  um: '\u00b5m',
  '\u03bcm': '\u00b5m',
  '"': 'in',
  '\u2033': 'in',
  inch: 'in',
  inches: 'in',
  PSI: 'psi',
  deg: '°',
  degree: '°',
  degrees: '°',
  '\u00ba': '°',
  sec: 's',
  hr: 'h',
  hour: 'h',
  hours: 'h',
  day: 'd',
  days: 'd',
  mL: 'ml',
  L: 'l',
  ohm: '\u03a9',
  kohm: 'k\u03a9',
  kOhm: 'k\u03a9',
  'r/min': 'rpm',
  '1/min': 'rpm',
  turns: 'turn',
  clicks: 'click',
  pc: 'pcs',
};

const READABLE: ReadonlyMap<string, Unit> = new Map<string, Unit>([
  ...Object.entries(SPELLINGS),
  ...UNITS.map((each): [string, Unit] => [each, each]),
]);

/** Any sign of multiplication, or a gap, between two symbols becomes the raised dot; a full stop at the end goes. */
const joined = (text: string): string =>
  text
    .trim()
    .normalize('NFC')
    .replace(/\.$/, '')
    .replace(/([A-Za-z])\s*[\s·\u22c5\u2219\u2022*.-]\s*(?=[A-Za-z])/g, '$1·');

/**
 * Reads a unit as typed on a plain keyboard: `Nm`, `N.m`, `lbf ft`, `ft-lbf`, `deg`, `um`.
 * Null where it is unknown or could mean two things, as `lb ft` and `kg m` do.
 *
 * @example parseUnit('lbf ft') // 'lbf·ft'
 */
export const parseUnit = (text: string): Unit | null => READABLE.get(joined(text)) ?? null;

export const dimensionOf = (of: Unit): Dimension => TABLE[of].dimension;

/**
 * The same amount in another unit, exactly. Null where the two measure different things.
 *
 * @example convert(exact(25), 'lbf·ft', 'N·m') // 33.89544870828501
 */
export const convert = (value: Exact, from: Unit, to: Unit): Exact | null => {
  if (from === to) return value;
  const [source, target] = [TABLE[from], TABLE[to]];
  if (source.dimension !== target.dimension) return null;
  return exact(
    value.num * source.factor.num * target.factor.den,
    value.den * source.factor.den * target.factor.num,
  );
};
