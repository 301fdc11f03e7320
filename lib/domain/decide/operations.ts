/** Starting, leaving and finishing operations. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { PersonId } from '@/lib/domain/base/vocabulary';
import type { RunRef } from '@/lib/domain/car/joint-rows';
import type { OperationRow } from '@/lib/domain/car/rows';
import type { CarPayload } from '@/lib/domain/events';
import type { CompiledOperation } from '@/lib/domain/plan/compiled';
import { unmet } from '@/lib/domain/unmet';
import { bodyUnmet } from './body';
import { accept, deny, holdsOnWork, qualification, signature, undecided, unknown, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';
import { checksDueAgain, conditionCleared, conditionSet, distinct } from './consequences';
import { findingsOnParts } from './findings-on';
import { plannedPlacing } from './stopgaps';
import { usedUp } from './used-up';

type OperationAct =
  | 'start-operation'
  | 'join-operation'
  | 'pause-operation'
  | 'leave-operation'
  | 'resume-operation'
  | 'take-over-operation'
  | 'finish-operation';

export const decideOperation = (at: Case, claim: CarClaimOf<OperationAct>): Decision => {
  const operation = at.plan.operations.get(claim.operation);
  if (operation === undefined) return unknown('operation', claim.operation);
  switch (claim.type) {
    case 'start-operation':
      return start(at, operation, claim.run);
    case 'join-operation':
      return join(at, operation);
    case 'pause-operation':
      return pause(at, operation, claim.leftAs ?? null);
    case 'leave-operation':
      return leave(at, operation, claim.leftAs ?? null);
    case 'resume-operation':
      return goOn(at, operation, 'paused');
    case 'take-over-operation':
      return takeOver(at, operation);
    case 'finish-operation':
      return finish(at, operation, claim);
  }
};

/** Why this operation may not be started or taken up now, by the person who wants to: the same at start and at resume (D28). */
export const startRefusals = (at: Case, operation: CompiledOperation): readonly Refusal[] => [
  ...undecided(at, operation),
  ...qualification(at, at.facts.actor, operation.who),
  ...readiness(at, operation),
];

/** The part of it that is about the car and not about who asks: what `assess` shows beside a waiting job. */
export const readiness = (at: Case, operation: CompiledOperation): readonly Refusal[] => {
  const needs = [
    ...unmet(at.plan, at.car, at.facts, needsNow(at, operation)),
    ...madeOnWhatIsOwed(at, operation),
  ];
  const holds = holdsOnWork(at, operation.stateKey, operation.parts);
  const findings = operation.parts.length === 0 ? NOTHING : findingsOnParts(at, operation);
  const stage = operation.notBefore && at.car.stage < operation.stage ? [notReached(at, operation)] : NOTHING;
  return stage.length + holds.length + findings.length === 0
    ? needs
    : [...stage, ...holds, ...findings, ...needs];
};

const NOTHING: readonly Refusal[] = [];

/** What a begun run made otherwise itself is not asked of it again: the body that it lowers was not on before. */
const needsNow = ({ car }: Case, { stateKey, needs }: CompiledOperation): CompiledOperation['needs'] => {
  const row = car.operations[stateKey];
  if (row?.status !== 'running' && row?.status !== 'paused') return needs;
  const isOwn = (ref: RunRef | null | undefined): boolean =>
    ref?.operation === stateKey && ref.run === row.run;
  return needs.filter((need) =>
    need.kind === 'condition'
      ? !isOwn(car.conditions[need.condition]?.run)
      : need.kind !== 'joint-at-level' || !isOwn(car.joints[need.joint]?.opened?.run),
  );
};

/** Nothing is made on a piece that came off or was condemned, until the next one is here. */
const madeOnWhatIsOwed = ({ car }: Case, { madeOn }: CompiledOperation): readonly Refusal[] => {
  const state = madeOn === null ? undefined : car.parts[madeOn]?.state;
  return madeOn !== null && (state === 'absent' || state === 'taken')
    ? [refuse('part-absent', { part: madeOn })]
    : NOTHING;
};

const notReached = ({ plan, car }: Case, operation: CompiledOperation): Refusal =>
  refuse('stage-not-reached', {
    operation: operation.stateKey,
    stage: plan.stages[operation.stage]?.key ?? '',
    standsIn: plan.stages[car.stage]?.key ?? '',
  });

const start = (at: Case, operation: CompiledOperation, named: number | undefined): Decision => {
  const key = operation.stateKey;
  const row = at.car.operations[key];
  if (row?.status === 'running' || row?.status === 'paused')
    return deny(refuse('operation-already-running', { operation: key }));
  if (row?.status === 'finished' && !operation.repeatable)
    return deny(refuse('operation-already-finished', { operation: key }));
  const run = row === undefined ? 1 : row.status === 'due-again' ? row.run : row.run + 1;
  const again = row?.status === 'finished' ? checksDueAgain(at, operation, `${key} is run again`) : [];
  const refusals = [
    ...stale(operation, named, run),
    ...clock(at, operation),
    ...startRefusals(at, operation),
  ];
  return unless(refusals, () => [{ type: 'operation-started', operation: key, run }, ...again]);
};

/** Other work that the person is at: a person has one running clock, and their hours come from it (design 6). */
const clock = ({ facts, car }: Case, { stateKey }: CompiledOperation): readonly Refusal[] =>
  (facts.clocks[facts.actor] ?? [])
    .filter((each) => each.car !== car.id || each.operation !== stateKey)
    .map((each) => refuse('clock-running', { person: facts.actor, ...each }));

const stale = (
  operation: CompiledOperation,
  named: number | undefined,
  current: number,
): readonly Refusal[] =>
  named === undefined || named === current
    ? []
    : [refuse('stale-run', { operation: operation.stateKey, named, current })];

const join = (at: Case, operation: CompiledOperation): Decision => {
  const key = operation.stateKey;
  const row = at.car.operations[key];
  if (row?.status !== 'running') return deny(refuse('operation-not-running', { operation: key }));
  const person = at.facts.actor;
  return unless(
    [
      ...(row.present.includes(person) ? [refuse('already-on-it', { operation: key, person })] : []),
      ...clock(at, operation),
      ...qualification(at, person, operation.who),
      ...holdsOnWork(at, key),
    ],
    () => [{ type: 'operation-joined', operation: key, run: row.run }],
  );
};

/** Anyone may stop work; where nothing runs there is nothing to stop and nothing to refuse. */
const pause = (at: Case, operation: CompiledOperation, leftAs: string | null): Decision => {
  const row = at.car.operations[operation.stateKey];
  return row?.status === 'running'
    ? accept({ type: 'operation-paused', operation: operation.stateKey, run: row.run, leftAs })
    : accept();
};

/** One person's clock stops. Whoever is last leaves the work paused; who is not on it has nothing to leave. */
const leave = (at: Case, operation: CompiledOperation, leftAs: string | null): Decision => {
  const row = at.car.operations[operation.stateKey];
  if (row?.status !== 'running' || !row.present.includes(at.facts.actor)) return accept();
  return row.present.length === 1
    ? pause(at, operation, leftAs)
    : accept({ type: 'operation-left', operation: operation.stateKey, run: row.run, leftAs });
};

const goOn = (at: Case, operation: CompiledOperation, from: 'paused' | 'running or paused'): Decision => {
  const key = operation.stateKey;
  const row = at.car.operations[key];
  const isThere = row?.status === 'paused' || (from === 'running or paused' && row?.status === 'running');
  if (row === undefined || !isThere)
    return deny(
      row?.status === 'running'
        ? refuse('operation-already-running', { operation: key })
        : refuse('operation-not-running', { operation: key }),
    );
  return unless([...clock(at, operation), ...startRefusals(at, operation)], () => [
    { type: 'operation-resumed', operation: key, run: row.run, takenOver: from !== 'paused' },
  ]);
};

/** Nobody takes over from themselves; where somebody else is on it too, the others are relieved. */
const takeOver = (at: Case, operation: CompiledOperation): Decision => {
  const key = operation.stateKey;
  const row = at.car.operations[key];
  const person = at.facts.actor;
  return isAloneOn(row, person)
    ? deny(refuse('already-on-it', { operation: key, person }))
    : goOn(at, operation, 'running or paused');
};

const isAloneOn = (row: OperationRow | undefined, person: PersonId): boolean =>
  row?.status === 'running' && row.present.length === 1 && row.present[0] === person;

const finish = (
  at: Case,
  operation: CompiledOperation,
  { run: named, lots = [] }: CarClaimOf<'finish-operation'>,
): Decision => {
  const key = operation.stateKey;
  const row = at.car.operations[key];
  if (row?.status !== 'running') return deny(refuse('operation-not-running', { operation: key }));
  const person = at.facts.actor;
  const run: RunRef = { operation: key, run: row.run };
  const used = usedUp(at, operation, lots);
  const refusals = [
    ...stale(operation, named, row.run),
    ...(row.crew.includes(person) ? [] : [refuse('not-on-it', { operation: key, person })]),
    ...(row.crew.length < operation.crew
      ? [refuse('crew-too-small', { operation: key, crew: operation.crew, present: row.crew.length })]
      : []),
    ...holdsOnWork(at, key),
    ...bodyUnmet(at, operation, run),
    ...used.refusals,
  ];
  return unless(refusals, () => [
    {
      type: 'operation-finished',
      operation: key,
      run: row.run,
      waitMs: operation.waitMs,
      drawn: used.drawn,
      signed: signature('finish-operation', key, row.run),
    },
    ...distinct(
      operation.body.flatMap((line): readonly CarPayload[] => {
        const because = `${key} is finished`;
        switch (line.verb) {
          case 'place':
            return plannedPlacing(at, line.stopgap);
          case 'set':
            return at.car.conditions[line.condition]?.value === true
              ? []
              : conditionSet(at, line.condition, because, run);
          case 'clear':
            return conditionCleared(at, line.condition, because, run);
          default:
            return [];
        }
      }),
    ),
  ]);
};
