/** Why something is needed, for which car and by when, in words. */
import { ONE, compare, multiply, exact, toDecimalText, toInchText, ZERO, add } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Instant, Key } from '@/lib/domain/base/vocabulary';
import { quoted, withPlace } from '@/lib/domain/base/words';
import { planKey } from '@/lib/domain/plan/positions';
import type { DatedLine, DemandLine } from './demand';
import { isCounted } from './item';
import type { NeedCause, NeedLine } from './need-line';
import type { Allocation } from './supply';

/** What things are called; each answers null where it has no name for a key. */
export interface NeedNames {
  readonly thing: (car: CarId, key: string) => string | null;
  readonly item: (key: Key) => string | null;
  readonly car: (id: CarId) => string;
  readonly person: (id: string) => string | null;
  /** A day as the shop writes it. */
  readonly day: (day: string) => string;
  /** An instant's day in the shop's zone. */
  readonly dayOf: (at: Instant) => string;
}

/** `4`, `6.41 m`, `1/2`: exact where it ends, else rounded for reading. */
export const quantityText = (quantity: Exact, unit: string): string => {
  const size = quantity.den <= 4n && isCounted(unit) ? toInchText(quantity) : toDecimalText(quantity, 3);
  return isCounted(unit) ? size : `${size} ${unit}`;
};

const percent = (share: Exact): string => `${toDecimalText(multiply(share, exact(100)), 1)} %`;

const shareOf = (share: Exact): string => (compare(share, ONE) === 0 ? '' : `, ${toInchText(share)} of it`);

/** `lines` differ only in their place. */
const causeWords = (lines: readonly NeedLine[], line: NeedLine, names: NeedNames): string => {
  const { cause, car } = line;
  const called = (key: string): string => nameOf(names, car, key);
  switch (cause.kind) {
    case 'planned':
      return 'planned';
    case 'opened':
      return cause.at === null
        ? 'spent when it was opened'
        : `opened on ${names.dayOf(cause.at)}${cause.by === null ? '' : ` by ${names.person(cause.by) ?? cause.by}`}`;
    case 'reopening':
      return `opened again in ${called(cause.operation)}, as planned`;
    case 'renew':
      return `to be renewed: ${quoted(cause.because)}`;
    case 'again':
      return `due again${shareOf(cause.share)}: ${quoted(cause.because)}`;
    case 'chained':
      return chainedWords(lines, cause, names);
    case 'condemned':
      return cause.finding === null ? 'condemned' : `replaced by ${cause.finding}`;
    case 'graded':
      return `the donor’s is graded ${cause.grade}${cause.usual === null || cause.usual === cause.grade ? '' : `, usually ${cause.usual}`}`;
    case 'taken':
      return cause.takenFor === '' ? 'taken for another car' : `taken for ${names.car(cause.takenFor)}`;
    case 'attrition':
      return `${percent(cause.share)} more for what gets lost`;
    case 'in-box':
      return `in the box of ${names.item(cause.of) ?? cause.of}`;
  }
};

/** `spring front eye, left (J-110@L)`. */
const nameOf = (names: NeedNames, car: CarId, key: string): string => {
  const name = names.thing(car, key);
  return name === null ? key : `${withPlace(key, name)} (${key})`;
};

type Chained = Extract<NeedCause, { kind: 'chained' }>;

/** D57: which nut has its line made again, and how much of that work it is. */
const chainedWords = (lines: readonly NeedLine[], { behind }: Chained, names: NeedNames): string => {
  const chained = lines.flatMap(({ car, cause }) => (cause.kind === 'chained' ? [{ car, cause }] : []));
  const part = chained.reduce((sum, { cause }) => add(sum, cause.share), ZERO);
  const joints = chained.map(({ car, cause }) => ({ car, at: cause.joint }));
  return `done again${shareOf(part)}, since ${names.item(behind) ?? behind} of ${placesWords(joints, names)} is renewed`;
};

/** What holds for the car as a whole: a place would say nothing. */
const isOfCar = ({ kind }: NeedCause): boolean => kind === 'attrition' || kind === 'in-box';

/** When, and what that rests on. */
const byWords = ({ by }: DatedLine, names: NeedNames): string =>
  by.basis === 'now' ? 'now' : `by ${names.day(by.day)}`;

/** Said once wherever days stand that rest on it. */
export const RECKONED =
  'Days are reckoned from the plan’s minutes and where each car stands; waits, work outside and other cars are left out until there is a schedule.';

/** One reason in pieces, for a list that gives each its own column. */
export interface Reason {
  readonly car: CarId;
  readonly quantity: string;
  /** `spring front eye, left (J-110@L)`; null for what is of the car as a whole. */
  readonly place: string | null;
  /** `opened on 24 Nov by Ines Harrow`. */
  readonly cause: string;
  /** `by 27 Nov`, `now`; null for what is of the car as a whole. */
  readonly by: string | null;
}

const reasonOf = (lines: readonly DatedLine[], unit: string, names: NeedNames): Reason | null => {
  const [first] = lines;
  if (first === undefined) return null;
  const quantity = lines.reduce((sum, line) => add(sum, line.quantity), ZERO);
  const isWhole = isOfCar(first.cause);
  return {
    car: first.car,
    quantity: quantityText(quantity, unit),
    place: isWhole ? null : placesWords(lines, names),
    cause: causeWords(lines, first, names),
    by: isWhole ? null : byWords(first, names),
  };
};

/** `2 for C54-012, spring front eye, left (J-110@L), opened on 24 Nov by Ines Harrow, now`. */
const reasonWords = ({ car, quantity, place, cause, by }: Reason, names: NeedNames): string =>
  [`${quantity} for ${names.car(car)}`, place, cause, by].filter((part) => part !== null).join(', ');

/** One name for a thing that stands at several places: `ball joint (J-201@L R)`, `P-clips (J-315@1 to 24)`. */
const placesWords = (lines: readonly Pick<NeedLine, 'car' | 'at'>[], names: NeedNames): string => {
  const keys = [...new Set(lines.map(({ at }) => at))];
  const [first] = lines;
  const [key = ''] = keys;
  if (first === undefined) return '';
  if (keys.length === 1) return nameOf(names, first.car, key);
  const plan = key.split('@')[0] ?? key;
  const positions = keys.map((each) => each.split('@')[1] ?? '');
  return `${names.thing(first.car, key) ?? plan} (${plan}@${runsOf(positions)})`;
};

/** `5 to 10` for what is counted without a gap. */
const runsOf = (positions: readonly string[]): string => {
  const numbers = positions.map(Number);
  const isRun = numbers.every((each, index) => each === (numbers[0] ?? NaN) + index);
  const [first = '', last = ''] = [positions[0], positions.at(-1)];
  return isRun && positions.length > 2 ? `${first} to ${last}` : positions.join(' ');
};

/** Lines that differ only in their place are said together. */
const groupKey = ({ car, at, cause, by }: DatedLine): string =>
  [car, isOfCar(cause) ? '' : planKey(at), causeKey(cause), by.basis, by.day].join('|');

const causeKey = (cause: NeedCause): string => {
  const { kind } = cause;
  const told = kind === 'chained' ? { ...cause, joint: planKey(cause.joint) } : cause;
  return JSON.stringify(told, (_, value: unknown) => (typeof value === 'bigint' ? String(value) : value));
};

/** Every reason of an item's need, the earliest first. */
export const reasonPieces = (
  { lines, unit }: Pick<DemandLine, 'lines' | 'unit'>,
  names: NeedNames,
): readonly Reason[] => {
  const groups = new Map<string, DatedLine[]>();
  for (const line of lines) groups.set(groupKey(line), [...(groups.get(groupKey(line)) ?? []), line]);
  return [...groups.values()].flatMap((group) => reasonOf(group, unit, names) ?? []);
};

/** The same, each as one line. */
export const reasonsOf = (demand: Pick<DemandLine, 'lines' | 'unit'>, names: NeedNames): readonly string[] =>
  reasonPieces(demand, names).map((reason) => reasonWords(reason, names));

/** Where it comes from: `20 from L-0801; 5 on order PO-3, due 30 Nov, late for C54-012`. */
export const coveredWords = (
  allocations: readonly Allocation[],
  unit: string,
  names: NeedNames,
): readonly string[] => {
  const sums = new Map<string, Exact>();
  for (const each of allocations) {
    const said = sourceWords(each, names);
    sums.set(said, add(sums.get(said) ?? ZERO, each.quantity));
  }
  return [...sums].map(([said, quantity]) => `${quantityText(quantity, unit)} ${said}`);
};

const sourceWords = ({ source, isLate, car }: Allocation, names: NeedNames): string => {
  switch (source.kind) {
    case 'lot':
      return `from lot ${source.lot}`;
    case 'bulk':
      return 'from the shelf';
    case 'donor':
      return `off the donor${source.car === car ? '' : ` of ${names.car(source.car)}`}, lot ${source.lot}`;
    case 'order':
      return `on order ${source.order}, due ${names.day(source.due)}${isLate ? `, late for ${names.car(car)}` : ''}`;
  }
};
