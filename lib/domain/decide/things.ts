/** Conditions by report, parts, holds, options, notes. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { RunRef } from '@/lib/domain/car/joint-rows';
import type { CompiledOperation } from '@/lib/domain/plan/compiled';
import { notHere } from '@/lib/domain/unmet';
import { bodyUnmet } from './body';
import { accept, holdsOnWork, nextId, signature, undecided, unknown, unless } from './case';
import type { CarClaimOf, Case, Decision } from './case';
import { conditionCleared, conditionSet, distinct, dueAgain } from './consequences';
import { findingsOnPart } from './findings-on';

const isCondition = ({ plan }: Case, condition: string): boolean =>
  plan.document.conditions?.[condition] !== undefined || plan.setters.has(condition);

/**
 * A condition that no work sets is set by saying so. One that work sets is so in the middle of that work, where its
 * line in the body has been reached (the body is on, its mounts are still to be torqued); finishing says it otherwise.
 */
export const setCondition = (at: Case, claim: CarClaimOf<'set-condition'>): Decision => {
  const { condition, reason } = claim;
  if (!isCondition(at, condition)) return unknown('condition', condition);
  const setters = at.plan.setters.get(condition) ?? [];
  const running = setters.find((each) => at.car.operations[each.stateKey]?.status === 'running');
  const run = running === undefined ? null : runOf(at, running);
  const refusals: Refusal[] = [];
  if (at.car.conditions[condition]?.value === true)
    refusals.push(refuse('condition-already', { condition, value: true }));
  if (running !== undefined && run !== null)
    refusals.push(...bodyUnmet(at, running, run, linesBefore(running, condition)));
  else if (setters.length > 0)
    refusals.push(
      refuse('condition-set-by-work', { condition, operations: setters.map((each) => each.stateKey) }),
    );
  return unless(refusals, () => conditionSet(at, condition, reason, run));
};

const runOf = ({ car }: Case, { stateKey }: CompiledOperation): RunRef => ({
  operation: stateKey,
  run: car.operations[stateKey]?.run ?? 1,
});

const linesBefore = ({ body }: CompiledOperation, condition: string): CompiledOperation['body'] =>
  body.slice(
    0,
    body.findIndex((line) => line.verb === 'set' && line.condition === condition),
  );

/** Reported as no longer so; by the running work that means to end it, where there is one. */
export const clearCondition = (at: Case, claim: CarClaimOf<'clear-condition'>): Decision => {
  const { condition, reason } = claim;
  if (!isCondition(at, condition)) return unknown('condition', condition);
  const ending = [...at.plan.operations.values()].find(
    (each) =>
      at.car.operations[each.stateKey]?.status === 'running' &&
      each.body.some((line) => line.verb === 'clear' && line.condition === condition),
  );
  const run = ending === undefined ? null : runOf(at, ending);
  return accept(...distinct(conditionCleared(at, condition, reason, run)));
};

const isPart = ({ plan }: Case, part: string): boolean => plan.document.parts?.[part] !== undefined;

export const fitPart = (at: Case, claim: CarClaimOf<'fit-part'>): Decision => {
  const { part } = claim;
  if (!isPart(at, part)) return unknown('part', part);
  const fitters = at.plan.fitters.get(part) ?? [];
  const running = fitters.find((each) => at.car.operations[each.stateKey]?.status === 'running');
  const refusals: Refusal[] = [...holdsOnWork(at, part), ...findingsOnPart(at, part)];
  const state = at.car.parts[part]?.state ?? 'absent';
  if (state === 'fitted') refusals.push(refuse('part-already', { part, state }));
  else if (state !== 'present') refusals.push(notHere(at.plan, at.car, part));
  if (running === undefined)
    refusals.push(
      refuse('part-not-taken-into-work', { part, operations: fitters.map((each) => each.stateKey) }),
    );
  else refusals.push(...undecided(at, running));
  const run: RunRef | null =
    running === undefined
      ? null
      : { operation: running.stateKey, run: at.car.operations[running.stateKey]?.run ?? 1 };
  return unless(refusals, () => [
    { type: 'part-fitted', part, run, signed: signature('fit-part', part, at.car.parts[part]?.piece ?? 1) },
  ]);
};

/** Robbing a part: a warning on the giver, whatever state it is in; what it did here is due again. */
export const takePart = (at: Case, claim: CarClaimOf<'take-part'>): Decision => {
  const { part, takenFor, reason } = claim;
  if (!isPart(at, part)) return unknown('part', part);
  const because = takenFor === undefined ? `${part} was taken off` : `${part} was taken for ${takenFor}`;
  return accept(
    { type: 'part-taken', part, takenFor: takenFor ?? null, reason },
    ...distinct((at.plan.fitters.get(part) ?? []).flatMap((each) => dueAgain(at, each, because))),
  );
};

export const placeHold = (at: Case, claim: CarClaimOf<'place-hold'>): Decision =>
  accept({
    type: 'hold-placed',
    hold: nextId('H', at.car.holds),
    scope: claim.scope,
    things: claim.things ?? [],
    reason: claim.reason,
  });

export const releaseHold = (at: Case, claim: CarClaimOf<'release-hold'>): Decision => {
  const row = at.car.holds[claim.hold];
  if (row === undefined) return unknown('hold', claim.hold);
  return unless(
    row.releasedBy === null ? [] : [refuse('hold-already-released', { hold: claim.hold })],
    () => [{ type: 'hold-released', hold: claim.hold, reason: claim.reason ?? null }],
  );
};

/** The first choice; another one later is a change. */
export const chooseOption = (at: Case, claim: CarClaimOf<'choose-option'>): Decision => {
  const { option, choice } = claim;
  const entry = at.plan.document.options?.[option];
  if (entry === undefined) return unknown('option', option);
  const chosen = at.car.options[option];
  const refusals: Refusal[] = [];
  if (chosen !== undefined) refusals.push(refuse('option-already-chosen', { option, choice: chosen }));
  if (!entry.choices.includes(choice))
    refusals.push(refuse('choice-unknown', { option, choice, choices: entry.choices }));
  return unless(refusals, () => [{ type: 'option-chosen', option, choice }]);
};

/** The list is made here, where nobody else can change it: what is told is who comes and who goes. */
export const assign = (at: Case, claim: CarClaimOf<'assign'>): Decision => {
  const { job, add = [], remove = [] } = claim;
  const stranger = [...add, ...remove].find((person) => at.facts.people[person] === undefined);
  if (stranger !== undefined) return unknown('person', stranger);
  const before = at.car.assignments[job]?.people ?? [];
  const people = [...new Set([...before, ...add])].filter((person) => !remove.includes(person));
  const isSame = people.length === before.length && people.every((person) => before.includes(person));
  return isSame && at.car.assignments[job] !== undefined
    ? accept()
    : accept({ type: 'job-assigned', job, people });
};
