/** Which line of which operation does what others ask for. */
import type { Key, MarkLevel } from '@/lib/domain/base/vocabulary';
import type { PlanReading, Read, ReadOperation } from './check-reading';
import { dueLevelOf } from './compile-operations';
import type { BodyVerb, Need } from './notation';

/** `line` is null where the operation as a whole is meant: it must be finished. */
export interface Performer {
  readonly operation: ReadOperation;
  readonly line: number | null;
}

/** The verbs that leave a joint at least at this level. Verifying follows on final: no line of its own. */
const REACHING: Readonly<Record<MarkLevel, readonly BodyVerb[]>> = {
  snug: ['snug', 'final', 'retorque'],
  final: ['final', 'retorque'],
  verified: ['final', 'retorque'],
};

export interface Performers {
  readonly doing: (verbs: readonly BodyVerb[], key: Key) => readonly Performer[];
  /** What brings a joint to a level, in the order of the file; the first that a car has will do. */
  readonly ofJoint: (key: Key, level: MarkLevel) => readonly Performer[];
  readonly ofCheck: (key: Key) => readonly Performer[];
  /** What clears a need on work; null for needs that no single piece of work clears (conditions, parts, stopgaps). */
  readonly ofNeed: (need: Need) => readonly Performer[] | null;
}

export const performersOf = (reading: PlanReading): Performers => {
  const byTarget = new Map<Key, Performer[]>();
  for (const operation of reading.operations.values())
    operation.body.forEach(({ value }, line) => {
      const list = byTarget.get(value.ref.key) ?? [];
      list.push({ operation, line });
      byTarget.set(value.ref.key, list);
    });

  const doing: Performers['doing'] = (verbs, key) =>
    (byTarget.get(key) ?? []).filter(({ operation, line }) => {
      const verb = operation.body[line ?? -1]?.value.verb;
      return verb !== undefined && verbs.includes(verb);
    });
  const whole = (key: Key): readonly Performer[] | null => {
    const operation = reading.operations.get(key);
    return operation === undefined ? null : [{ operation, line: null }];
  };
  const ofJoint: Performers['ofJoint'] = (key, level) => doing(REACHING[level], key);
  const ofCheck: Performers['ofCheck'] = (key) => doing(['check'], key);
  const ofNeed: Performers['ofNeed'] = (need) => {
    switch (need.kind) {
      case 'bare':
        return whole(need.ref.key) ?? ofCheck(need.ref.key);
      case 'joint':
        return ofJoint(need.ref.key, need.level);
      case 'wait':
        return whole(need.ref.key);
      case 'photo':
        return doing(['photo'], need.slot).filter(({ operation }) => operation.key === need.ref.key);
      case 'condition':
      case 'part':
      case 'stopgap-out':
        return null;
    }
  };
  return { doing, ofJoint, ofCheck, ofNeed };
};

/** One thing that must be there first, with the place where the plan asks for it. */
export interface Ask {
  readonly path: readonly (string | number)[];
  readonly text: string;
  readonly when: string | undefined;
  readonly performers: readonly Performer[];
}

const whenOf = (reading: PlanReading, key: Key): string | undefined =>
  (reading.operations.get(key) ?? reading.joints.get(key) ?? reading.checks.get(key))?.entry.when;

/** A list of needs, as what they ask of the work. */
export const asksOfNeeds = (
  reading: PlanReading,
  performers: Performers,
  needs: readonly Read<Need>[],
): readonly Ask[] =>
  needs.flatMap(({ value, text, path }) => {
    const found = performers.ofNeed(value);
    if (found === null || !('ref' in value)) return [];
    return [{ path, text, when: whenOf(reading, value.ref.key), performers: found }];
  });

/** Everything that must be there before an operation may start: its needs, what it covers, what says `before` it. */
export const asksOfOperation = (
  reading: PlanReading,
  performers: Performers,
  operation: ReadOperation,
  before: ReadonlyMap<Key, readonly Ask[]>,
): readonly Ask[] => [
  ...asksOfNeeds(reading, performers, operation.needs),
  ...operation.covers.flatMap(({ value, text, path }) => {
    const joint = reading.joints.get(value.key);
    if (joint === undefined) return [];
    const found = performers.ofJoint(joint.key, dueLevelOf(joint.entry));
    return [{ path, text: `covers ${text}`, when: joint.entry.when, performers: found }];
  }),
  ...(before.get(operation.key) ?? []),
];

/** What joints and checks say about the operation that they must come before. */
export const asksBefore = (
  reading: PlanReading,
  performers: Performers,
): ReadonlyMap<Key, readonly Ask[]> => {
  const found = new Map<Key, Ask[]>();
  const add = (operation: Key | undefined, ask: Ask): void => {
    if (operation === undefined) return;
    const list = found.get(operation) ?? [];
    list.push(ask);
    found.set(operation, list);
  };
  for (const { key, entry } of reading.joints.values())
    add(entry.before, {
      path: ['joints', key, 'before'],
      text: `${key} ${dueLevelOf(entry)}`,
      when: entry.when,
      performers: performers.ofJoint(key, dueLevelOf(entry)),
    });
  for (const { key, entry } of reading.checks.values())
    add(entry.before, {
      path: ['checks', key, 'before'],
      text: key,
      when: entry.when,
      performers: performers.ofCheck(key),
    });
  return found;
};
