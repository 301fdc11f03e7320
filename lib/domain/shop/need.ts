/**
 * What a car still needs: its effective plan's hardware that is not in yet, planned re-openings included, what openings and
 * findings have made necessary, what gets lost of bulk goods, less what lies in the box of a part. Derived, never stored; asks
 * no clock. Changes bring no lines of their own yet: the one kind there is (accept as is) buys nothing.
 */
import { ZERO, add, compare, exact, multiply, subtract } from '@/lib/domain/base/exact';
import type { Exact } from '@/lib/domain/base/exact';
import type { CarId, Key } from '@/lib/domain/base/vocabulary';
import type { DoubtFacts } from '@/lib/domain/car/joint';
import type { Car } from '@/lib/domain/car/rows';
import type { CompiledPlan } from '@/lib/domain/plan/compiled';
import type { Catalogue } from './item';
import { jointNeed } from './need-joints';
import type { CarlessLine, NeedLine } from './need-line';
import { stepsBeside } from './need-openings';
import { chainedNeed, operationNeed, partsNeed } from './need-work';

export interface CarNeed {
  readonly car: CarId;
  /** In the plan's order: joints, work, parts, then attrition and boxes. */
  readonly lines: readonly NeedLine[];
  /** Waits for a choice: counts once that is made. */
  readonly undecided: readonly NeedLine[];
}

interface Known extends DoubtFacts {
  readonly plan: CompiledPlan;
  readonly catalogue: Catalogue;
  readonly found: CarNeed;
}

/** For each version of a car, as `unsettledOf`: rows are never changed in place, so identity tells versions. */
const known = new WeakMap<Car, Known>();

/** One car's need. The answer holds until the car, its plan, a tool, a lot or the catalogue changes. */
export const carNeed = (plan: CompiledPlan, car: Car, facts: DoubtFacts, catalogue: Catalogue): CarNeed => {
  const before = known.get(car);
  const isSame =
    before?.plan === plan &&
    before.catalogue === catalogue &&
    before.tools === facts.tools &&
    before.lots === facts.lots;
  if (before !== undefined && isSame) return before.found;
  const found = collect(plan, car, facts, catalogue);
  known.set(car, { plan, catalogue, tools: facts.tools, lots: facts.lots, found });
  return found;
};

const collect = (plan: CompiledPlan, car: Car, facts: DoubtFacts, catalogue: Catalogue): CarNeed => {
  // What is delivered needs nothing more from this shop until it comes back.
  if (car.delivered) return { car: car.id, lines: [], undecided: [] };
  const all: CarlessLine[] = [];
  const beside = stepsBeside(plan, car, facts);
  for (const joint of plan.all.joints) {
    const lines = jointNeed(plan, car, joint, facts, beside.get(joint.stateKey));
    if (lines.length > 0) all.push(...lines, ...chainedNeed(plan, car, joint, lines));
  }
  for (const operation of plan.all.operations) all.push(...operationNeed(plan, car, operation));
  const used = new Set(all.map(({ item }) => catalogue[item]?.isPart ?? ''));
  all.push(...partsNeed(plan, car, used));

  const isOpen = ({ undecided }: CarlessLine): boolean => undecided.length > 0;
  const counted = all.filter((line) => !isOpen(line));
  const boxes = inBoxes(plan, counted, catalogue);
  const lines = [...counted, ...boxes, ...attrition([...counted, ...boxes], catalogue)];
  const ofCar = (line: CarlessLine): NeedLine => ({ ...line, car: car.id });
  return { car: car.id, lines: lines.map(ofCar), undecided: all.filter(isOpen).map(ofCar) };
};

/** How much of each item these lines come to. */
export const totalsOf = (lines: readonly Pick<NeedLine, 'item' | 'quantity'>[]): ReadonlyMap<Key, Exact> => {
  const found = new Map<Key, Exact>();
  for (const { item, quantity } of lines) found.set(item, add(found.get(item) ?? ZERO, quantity));
  return found;
};

/**
 * What lies in the box of an item covers the first fitting of as many, whether that box is still to be bought or its
 * contents lie beside the car; what is renewed later is not in it.
 */
const inBoxes = (
  plan: CompiledPlan,
  lines: readonly CarlessLine[],
  catalogue: Catalogue,
): readonly CarlessLine[] => {
  const found: CarlessLine[] = [];
  const planned = totalsOf(lines.filter(({ cause }) => cause.kind === 'planned'));
  for (const [box, count] of boxesOf(plan, catalogue))
    for (const [item, each] of Object.entries(catalogue[box]?.comesWith ?? {})) {
      const open = planned.get(item) ?? ZERO;
      const fittedAlready = subtract(totalPlanned(plan, item), open);
      const left = subtract(multiply(count, exact(each)), fittedAlready);
      const covered = compare(left, open) < 0 ? left : open;
      const first = lines.find((line) => line.item === item && line.cause.kind === 'planned');
      if (first === undefined || compare(covered, ZERO) <= 0) continue;
      found.push({ ...first, quantity: subtract(ZERO, covered), cause: { kind: 'in-box', of: box } });
    }
  return found;
};

/** Items of this plan that hold others, and how many of them the plan takes. */
const boxesOf = (plan: CompiledPlan, catalogue: Catalogue): ReadonlyMap<Key, Exact> => {
  const found = new Map<Key, Exact>();
  for (const { key, undecided } of plan.all.operations)
    for (const [item, given] of Object.entries(plan.document.operations?.[key]?.hardware ?? {})) {
      const holds = Object.keys(catalogue[item]?.comesWith ?? {}).length > 0;
      if (!holds || undecided.length > 0) continue;
      const quantity = exact(typeof given === 'number' ? given : given.quantity);
      found.set(item, add(found.get(item) ?? ZERO, quantity));
    }
  return found;
};

/** How many the plan has in all, fitted or not. */
const totalPlanned = (plan: CompiledPlan, item: Key): Exact => {
  const ofJoints = plan.all.joints
    .filter(({ undecided }) => undecided.length === 0)
    .flatMap(({ hardware }) => hardware.filter((line) => line.item === item))
    .reduce((sum, line) => sum + line.quantity, 0);
  return exact(ofJoints);
};

/** Of bulk goods some get lost; exact here, and rounded up only once for all cars. */
const attrition = (lines: readonly CarlessLine[], catalogue: Catalogue): readonly CarlessLine[] => {
  const totals = totalsOf(lines);
  return [...totals].flatMap(([item, quantity]): readonly CarlessLine[] => {
    const entry = catalogue[item];
    const first = lines.find((line) => line.item === item);
    const isLost =
      entry?.trace === 'bulk' && compare(entry.attrition, ZERO) > 0 && compare(quantity, ZERO) > 0;
    if (entry === undefined || first === undefined || !isLost) return [];
    const cause = { kind: 'attrition', share: entry.attrition } as const;
    return [{ ...first, quantity: multiply(quantity, entry.attrition), cause }];
  });
};
