/** The order of the stages, which is that of the file, against what the work needs. */
import type { Key } from '@/lib/domain/base/vocabulary';
import { canStandTogether } from './check-options';
import { asksBefore, asksOfNeeds, asksOfOperation } from './check-performers';
import type { Ask, Performers } from './check-performers';
import type { PlanReading, Read, ReadOperation } from './check-reading';
import { dueLevelOf } from './compile-operations';
import type { Need } from './notation';
import { problem } from './problem';
import type { Problem, ProblemPath } from './problem';

/** Needs on work of a later stage, and things due at a gate before the stage of their work. */
export const checkGates = (reading: PlanReading, performers: Performers): Problem[] => [
  ...needsOfLaterStages(reading, performers),
  ...dueTooEarly(reading, performers),
  ...stopgapGates(reading, performers),
];

const needsOfLaterStages = (reading: PlanReading, performers: Performers): Problem[] => {
  const before = asksBefore(reading, performers);
  const found: Problem[] = [];
  const compare = (asks: readonly Ask[], due: number | null, when: string | undefined): void => {
    if (due === null) return;
    for (const ask of asks) {
      const late = laterWork(reading, ask, due, when);
      if (late === null) continue;
      const details = {
        need: ask.text,
        operation: late.operation.key,
        stage: late.operation.entry.stage,
        due: [...reading.stages.keys()][due] ?? '',
      };
      found.push(problem(late.isPinned ? 'need-never-in-time' : 'need-of-later-stage', ask.path, details));
    }
  };
  for (const operation of reading.operations.values())
    compare(
      [
        ...asksOfOperation(reading, performers, operation, before),
        ...asksOfConditions(performers, operation.needs),
      ],
      dueOf(reading, operation),
      operation.entry.when,
    );
  for (const joint of reading.joints.values()) {
    const due = dueOfJoint(reading, performers, joint.key);
    const asks = [
      ...asksOfNeeds(reading, performers, joint.finalNeeds),
      ...asksOfConditions(performers, joint.finalNeeds),
    ];
    compare(asks, due, joint.entry.when);
  }
  // What the first stage asks is had before the plan's own work begins; the gate before it is none.
  for (const stage of reading.stages.values())
    compare(asksOfNeeds(reading, performers, stage.needs), stage.index - 1, undefined);
  return found;
};

/** A condition that must be so waits for the work that sets it. */
const asksOfConditions = (performers: Performers, needs: readonly Read<Need>[]): readonly Ask[] =>
  needs.flatMap(({ value, text, path }) =>
    value.kind === 'condition' && value.value
      ? [{ path, text, when: undefined, performers: performers.doing(['set'], value.condition) }]
      : [],
  );

/** The work that an ask waits for, if all of it belongs to a stage after the gate at which the asker is due. */
const laterWork = (
  reading: PlanReading,
  ask: Ask,
  due: number,
  when: string | undefined,
): { readonly operation: ReadOperation; readonly isPinned: boolean } | null => {
  const candidates = ask.performers
    .map(({ operation }) => operation)
    .filter((each) => canStandTogether([when, ask.when, each.entry.when], reading.document));
  const isLater = (operation: ReadOperation): boolean =>
    (reading.stages.get(operation.entry.stage)?.index ?? -1) > due;
  if (candidates.length === 0 || !candidates.every(isLater)) return null;
  const isPinned = ({ entry }: ReadOperation): boolean =>
    entry.notBefore ?? reading.stages.get(entry.stage)?.entry.notBefore ?? false;
  const free = candidates.find((each) => !isPinned(each));
  const operation = free ?? candidates[0];
  return operation === undefined ? null : { operation, isPinned: free === undefined };
};

const indexOf = (reading: PlanReading, stage: Key | undefined): number | null =>
  reading.stages.get(stage ?? '')?.index ?? null;

/** The gate at which an operation is due: its own, else its stage's. */
const dueOf = (reading: PlanReading, { entry }: ReadOperation): number | null =>
  indexOf(reading, entry.due ?? entry.stage);

const dueOfJoint = (reading: PlanReading, performers: Performers, key: Key): number | null => {
  const joint = reading.joints.get(key);
  const [first] = performers.ofJoint(key, 'final');
  if (joint?.entry.due !== undefined) return indexOf(reading, joint.entry.due);
  return first === undefined ? null : dueOf(reading, first.operation);
};

const dueTooEarly = (reading: PlanReading, performers: Performers): Problem[] => {
  const found: Problem[] = [];
  const compare = (path: ProblemPath, due: Key | undefined, work: readonly ReadOperation[]): void => {
    const gate = indexOf(reading, due);
    const [first] = work;
    if (gate === null || first === undefined) return;
    const isTooEarly = work.every((each) => (indexOf(reading, each.entry.stage) ?? -1) > gate);
    if (!isTooEarly) return;
    const details = { due: due ?? '', operation: first.key, stage: first.entry.stage };
    found.push(problem('due-before-stage', path, details));
  };
  for (const operation of reading.operations.values())
    compare(['operations', operation.key, 'due'], operation.entry.due, [operation]);
  for (const { key, entry } of reading.joints.values()) {
    const work = performers.ofJoint(key, dueLevelOf(entry)).map(({ operation }) => operation);
    compare(['joints', key, 'due'], entry.due, work);
  }
  for (const { key, entry } of reading.checks.values()) {
    const work = performers.ofCheck(key).map(({ operation }) => operation);
    compare(['checks', key, 'due'], entry.due, work);
  }
  return found;
};

const stopgapGates = (reading: PlanReading, performers: Performers): Problem[] =>
  [...reading.stopgaps.values()].flatMap(({ key, entry }) => {
    const gate = indexOf(reading, entry.outBy);
    if (gate === null) return [];
    const isLate = ({ operation }: { readonly operation: ReadOperation }): boolean =>
      (indexOf(reading, operation.entry.stage) ?? -1) > gate;
    const placed = performers.doing(['place'], key).find(isLate);
    const out = performers.doing(['out'], key);
    const path = ['stopgaps', key, 'outBy'];
    const details = (operation: ReadOperation): Record<string, string> => ({
      stopgap: key,
      outBy: entry.outBy,
      operation: operation.key,
      stage: operation.entry.stage,
    });
    if (placed !== undefined) return [problem('stopgap-out-before-placed', path, details(placed.operation))];
    const [first] = out;
    if (first === undefined || !out.every(isLate)) return [];
    return [problem('stopgap-out-late', path, details(first.operation))];
  });
