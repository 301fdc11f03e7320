/** One car's way through its stages: what is due at each gate, and how much of it is settled. */
import 'server-only';
import { doubtsOf, levelOf } from '@/lib/domain/car/joint';
import type { Car } from '@/lib/domain/car/rows';
import type { Facts } from '@/lib/domain/facts';
import type { CompiledCheck, CompiledJoint, CompiledPlan, CompiledStage } from '@/lib/domain/plan/compiled';
import { levelUnmet, notClear, unfinished } from '@/lib/domain/unmet';
import { RAIL_CODES } from '@/lib/wire/views/board';
import type { BoardCell, RailCode } from '@/lib/wire/views/board';
import { dateText, named } from './words';

export const cellsOf = (plan: CompiledPlan, car: Car, facts: Facts, zone: string): readonly BoardCell[] => {
  const tallies = plan.stages.map(() => new Tally());
  // What hangs on an option that nobody has chosen yet does not count (D14).
  for (const joint of plan.all.joints)
    if (joint.undecided.length === 0)
      tallies[joint.due]?.joint(signOf(joint, car, facts), isSettled(joint, car, facts));
  for (const check of plan.all.checks)
    if (check.undecided.length === 0)
      tallies[check.due]?.check(boxOf(check, car), notClear(car, check.stateKey) === null);
  for (const operation of plan.all.operations)
    if (operation.undecided.length === 0)
      tallies[operation.due]?.operation(unfinished(car, operation.stateKey) === null);
  return plan.stages.map((stage) => cellOf(stage, tallies[stage.index] ?? new Tally(), car, facts, zone));
};

const isSettled = (joint: CompiledJoint, car: Car, facts: Facts): boolean => {
  const row = car.joints[joint.stateKey];
  return levelUnmet(joint.stateKey, levelOf(row), doubtsOf(row, facts), joint.dueLevel) === null;
};

/** The shape of a head: a doubt shows only where there is a stripe to be broken (D27). */
const signOf = (joint: CompiledJoint, car: Car, facts: Facts): RailCode => {
  const row = car.joints[joint.stateKey];
  const level = levelOf(row);
  const isBehind = joint.due < car.stage;
  if (level === 'open') return isBehind ? 'O' : 'o';
  if (level === 'snug') return 's';
  if (doubtsOf(row, facts).length > 0) return isBehind ? 'D' : 'd';
  return level === 'verified' ? 'v' : 'f';
};

const boxOf = (check: CompiledCheck, car: Car): RailCode => {
  const status = car.checks[check.stateKey]?.status;
  if (status === 'failed') return 'x';
  if (status === 'clear' || status === 'conceded') return 'p';
  return check.due < car.stage ? 'U' : 'u';
};

interface Share {
  done: number;
  of: number;
}

/** What is counted at one gate. */
class Tally {
  readonly signs = new Map<RailCode, number>();
  readonly joints: Share = { done: 0, of: 0 };
  readonly checks: Share = { done: 0, of: 0 };
  readonly operations: Share = { done: 0, of: 0 };
  /** Snug where more is due, and final where a second person is. */
  readonly short: { s: number; f: number } = { s: 0, f: 0 };

  joint(sign: RailCode, settled: boolean): void {
    this.sign(sign);
    count(this.joints, settled);
    if ((sign === 's' || sign === 'f') && !settled) this.short[sign] += 1;
  }

  check(sign: RailCode, settled: boolean): void {
    this.sign(sign);
    count(this.checks, settled);
  }

  operation(settled: boolean): void {
    count(this.operations, settled);
  }

  of(sign: RailCode): number {
    return this.signs.get(sign) ?? 0;
  }

  private sign(sign: RailCode): void {
    this.signs.set(sign, this.of(sign) + 1);
  }
}

const count = (share: Share, settled: boolean): void => {
  share.of += 1;
  if (settled) share.done += 1;
};

const cellOf = (stage: CompiledStage, tally: Tally, car: Car, facts: Facts, zone: string): BoardCell => {
  const { joints, checks, operations } = tally;
  const passed = stage.index < car.stage ? car.gates[stage.key] : undefined;
  const when = passed === undefined ? null : `done ${dateText(passed.passedAt, facts.now, zone)}`;
  const note = stage.index < car.stage ? noteOf(tally) : null;
  const hasHeads = joints.of + checks.of > 0;
  const shown = hasHeads ? { done: joints.done + checks.done, of: joints.of + checks.of } : operations;
  return {
    rail: railOf(tally),
    done: shown.done,
    of: shown.of,
    when,
    note,
    says: [
      `${stage.name}${when === null ? '' : `, ${when}`}:`,
      `${shares({ joint: joints, check: checks, operation: operations })}.`,
      note === null ? '' : `${note}.`,
    ]
      .filter((part) => part !== '')
      .join(' '),
  };
};

const CODES = Object.keys(RAIL_CODES) as RailCode[];

const railOf = (tally: Tally): string =>
  CODES.filter((code) => tally.of(code) > 0)
    .map((code) => `${String(tally.of(code))}${code}`)
    .join(' ');

const shares = (of: Readonly<Record<string, Share>>): string => {
  const said = Object.entries(of)
    .filter(([, share]) => share.of > 0)
    .map(
      ([word, share]) => `${String(share.done)} of ${String(share.of)} ${word}${share.of === 1 ? '' : 's'}`,
    );
  return said.length === 0 ? 'nothing is due here' : named(said);
};

/** In a stage behind nothing should be left; what is gets a word, the first kinds only where there are many. */
const noteOf = (tally: Tally): string | null => {
  const left = [
    [tally.of('D'), 'in doubt'],
    [tally.of('O'), 'open'],
    [tally.short.s, 'snug'],
    [tally.short.f, 'to verify'],
    [tally.of('x'), 'failed'],
    [tally.of('U'), 'to check'],
    [tally.operations.of - tally.operations.done, 'to do again'],
  ] as const;
  const some = left.filter(([number]) => number > 0);
  const [first, ...others] = some;
  if (first === undefined) return null;
  const rest = others.reduce((sum, [number]) => sum + number, 0);
  return rest === 0
    ? `${String(first[0])} ${first[1]}`
    : `${String(first[0])} ${first[1]}, ${String(rest)} more`;
};
