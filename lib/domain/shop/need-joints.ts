/**
 * What the joints of a car still take: hardware that is not in yet, that openings have spent, that planned re-openings will
 * spend, and that is in but not to be believed. Each piece is followed through the work to come by the rules that fitting and
 * opening use.
 */
import { isAtLevel } from '@/lib/domain/base/vocabulary';
import type { Key, Level, StateKey } from '@/lib/domain/base/vocabulary';
import { WHOLE, isSpentNow, isUsable, placesOf, shareOfPlace } from '@/lib/domain/car/hardware';
import { doubtsOf, levelOf, standingFinal } from '@/lib/domain/car/joint';
import type { DoubtFacts } from '@/lib/domain/car/joint';
import type { Doubt, FittedItem, JointRow } from '@/lib/domain/car/joint-rows';
import type { Car } from '@/lib/domain/car/rows';
import { expectedLevel } from '@/lib/domain/car/work';
import type { CompiledJoint, CompiledPlan, HardwareLine } from '@/lib/domain/plan/compiled';
import { isForUsed } from '@/lib/domain/plan/reuse';
import type { CarlessLine, NeedCause } from './need-line';
import { stepsToCome } from './need-openings';
import type { Step } from './need-openings';

/** Everything that this joint still takes. */
export const jointNeed = (
  plan: CompiledPlan,
  car: Car,
  joint: CompiledJoint,
  facts: DoubtFacts,
  beside: readonly Step[] = [],
): readonly CarlessLine[] => {
  const row = car.joints[joint.stateKey];
  const own = stepsToCome(plan, car, joint);
  const steps = beside.length === 0 ? own : [...own, ...beside].sort((a, b) => a.order - b.order);
  // Most joints are done, believed, and touched by nothing to come.
  const doubts = row === undefined ? [] : doubtsOf(row, facts).filter(({ remedy }) => remedy === 'renew');
  const found: CarlessLine[] = [];
  for (const line of joint.hardware)
    for (const place of placesOf(joint, line))
      followPiece({ car, joint, row, steps, doubts, facts }, line, place, found);
  return found;
};

interface Following {
  readonly car: Car;
  readonly joint: CompiledJoint;
  readonly row: JointRow | undefined;
  readonly steps: readonly Step[];
  /** Those that only new hardware settles. */
  readonly doubts: readonly Doubt[];
  readonly facts: DoubtFacts;
}

/** The piece as it will be: what rules of use look at. */
interface Followed {
  uses: number;
  spent: boolean;
  loose: boolean;
  reached: Level;
}

const followPiece = (at: Following, line: HardwareLine, place: string, found: CarlessLine[]): void => {
  const { joint } = at;
  const quantity = shareOfPlace(joint, line);
  const add = (cause: NeedCause, before: StateKey | null): void => {
    const { stateKey, due, undecided } = joint;
    found.push({ item: line.item, what: 'item', quantity, cause, at: stateKey, before, due, undecided });
  };
  const piece = startOf(at, line, place, add);
  let opener: StateKey | null = null;
  for (const { operation, verb } of at.steps)
    if (verb === 'renew') renewBeside(at, line, piece, operation, add);
    else if (verb === 'open') {
      piece.spent ||= isSpentNow(line.reuse, asFitted(line.item, piece), piece.reached);
      piece.loose = true;
      piece.reached = 'open';
      opener = operation;
    } else if (verb !== 'recheck') {
      if (piece.loose && mayGoIn(line, piece)) piece.uses += 1;
      else if (piece.loose) {
        add({ kind: 'reopening', operation: opener ?? operation ?? '' }, operation);
        Object.assign(piece, { uses: firstUses(at, line), spent: false });
      }
      piece.loose = false;
      piece.reached = verb === 'snug' ? raised(piece.reached, 'snug') : 'final';
    }
};

/** Opened and put back, if it had been final: what else would there be to renew. */
const renewBeside = (
  at: Following,
  line: HardwareLine,
  piece: Followed,
  operation: StateKey | null,
  add: (cause: NeedCause, before: StateKey | null) => void,
): void => {
  if (piece.reached !== 'final') return;
  piece.spent ||= isSpentNow(line.reuse, asFitted(line.item, piece), piece.reached);
  if (mayGoIn(line, piece)) {
    piece.uses += 1;
    return;
  }
  const because = 'what stands beside it is opened, and it may be tightened only once';
  add(operation === null ? { kind: 'renew', because } : { kind: 'reopening', operation }, operation);
  Object.assign(piece, { uses: firstUses(at, line), spent: false });
};

/**
 * What came off a donor has one fitting behind it. Nobody knows which pieces will go in, so that where there are such for
 * this car every one that is still to go in is counted as one of them: that asks for too many rather than too few.
 */
const firstUses = ({ car, facts }: Following, { item, reuse }: HardwareLine): number =>
  reuse.rule === 'times' &&
  isForUsed(reuse) &&
  Object.values(facts.lots).some(
    ({ item: held, donor }) =>
      held === item && donor !== undefined && (donor.isShared || donor.car === car.id),
  )
    ? 2
    : 1;

const raised = (level: Level, to: Level): Level => (isAtLevel(level, to) ? level : to);

/** What is in now, or what must go in first: as it will be once that is done. */
const startOf = (
  at: Following,
  line: HardwareLine,
  place: string,
  add: (cause: NeedCause, before: StateKey | null) => void,
): Followed => {
  const { car, joint, row, facts, doubts } = at;
  const fitted = row?.fasteners[place]?.[line.item];
  const reached: Level = standingFinal(row) === null ? levelOf(row) : 'final';
  // Before anything else is done on it, it is brought back to where it was: the next opening finds it so.
  const restored = raised(reached, expectedLevel(car, joint));
  const fresh: Followed = { uses: firstUses(at, line), spent: false, loose: false, reached: restored };
  if (fitted === undefined) {
    add({ kind: 'planned' }, nextWork(at));
    return fresh;
  }
  const badLot = fitted.lot === null ? null : (facts.lots[fitted.lot]?.quarantined ?? null);
  const isLoose = fitted.spent || fitted.loose === true;
  if (isLoose) {
    const usable = isUsable(fitted, line.reuse) && line.reuse.rule !== 'once-fitted';
    if (usable && badLot === null) return { ...fresh, uses: fitted.uses + 1 };
    // It could go in again but for its lot: opening has not spent it, so that the work behind it is still to be made due again.
    if (usable) add({ kind: 'renew', because: `lot ${fitted.lot ?? ''}: ${badLot ?? ''}` }, nextWork(at));
    else add({ kind: 'opened', at: row?.opened?.at ?? null, by: row?.opened?.by ?? null }, nextWork(at));
    return fresh;
  }
  const doubt = doubts.find((each) => isAbout(each, place));
  if (doubt === undefined) return { ...fresh, uses: fitted.uses };
  // Renewing opens it: what that spends must be bought, and what the doubt is about.
  const isLost =
    (badLot !== null && doubts.some(({ cause }) => cause === 'lot-quarantined')) ||
    (place !== WHOLE && isOverTorqued(doubts, place)) ||
    isSpentNow(line.reuse, fitted, reached);
  if (!isLost) return { ...fresh, uses: fitted.uses + 1 };
  add({ kind: 'renew', because: doubt.because }, null);
  return fresh;
};

const isAbout = ({ fasteners }: Doubt, place: string): boolean =>
  fasteners === null || place === WHOLE || fasteners.includes(Number(place));

const isOverTorqued = (doubts: readonly Doubt[], place: string): boolean =>
  doubts.some(({ cause, fasteners }) => cause === 'over-torque' && (fasteners ?? []).includes(Number(place)));

const asFitted = (item: Key, { uses, spent }: Followed): FittedItem => ({ item, lot: null, uses, spent });

const mayGoIn = (line: HardwareLine, piece: Followed): boolean =>
  line.reuse.rule !== 'once-fitted' && isUsable(asFitted(line.item, piece), line.reuse);

/** Work that was done asks for it back now; else it is for the work that tightens the joint next. */
const nextWork = ({ car, joint, row, steps }: Following): StateKey | null => {
  const isOwed = expectedLevel(car, joint) !== 'open' && levelOf(row) === 'open';
  return isOwed ? null : (steps.find(({ verb }) => verb !== 'open' && verb !== 'recheck')?.operation ?? null);
};
