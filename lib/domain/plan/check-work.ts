/** Checks, conditions, stopgaps and waits against what the operations do about them. */
import type { Key } from '@/lib/domain/base/vocabulary';
import { canStandTogether } from './check-options';
import type { Performers } from './check-performers';
import type { PlanReading, ReadOperation } from './check-reading';
import { allNeeds } from './check-references';
import { problem } from './problem';
import type { Problem } from './problem';
import { parseWindow } from './window';

export const checkWork = (reading: PlanReading, performers: Performers): Problem[] => [
  ...checksWorked(reading, performers),
  ...conditionsSet(reading, performers),
  ...conditionsCleared(reading, performers),
  ...stopgapsBothWays(reading, performers),
  ...waitsHaveTime(reading),
  ...irreversibleIsMeasured(reading),
];

const checksWorked = (reading: PlanReading, performers: Performers): readonly Problem[] =>
  [...reading.checks.values()].flatMap(({ key, entry }) => {
    const path = ['checks', key];
    const work = performers.ofCheck(key).map(({ operation }) => operation);
    const operations = [...new Set(work)];
    const clash = operations.filter((one) =>
      operations.some(
        (other) => other !== one && canStandTogether([one.entry.when, other.entry.when], reading.document),
      ),
    );
    const isMeasured = Object.values(entry.values ?? {}).some((text) => parseWindow(text) !== null);
    return [
      ...(operations.length === 0 ? [problem('check-not-worked', path, { check: key })] : []),
      ...(clash.length > 1
        ? [
            problem('check-in-several', path, {
              check: key,
              operations: clash.map((each) => each.key).join(', '),
            }),
          ]
        : []),
      ...(isMeasured && (entry.source ?? '').trim() === ''
        ? [problem('limit-without-source', [...path, 'source'], { check: key })]
        : []),
    ];
  });

/** A condition is false until something sets it, so only a need that it be true can wait for ever. */
const conditionsSet = (reading: PlanReading, performers: Performers): readonly Problem[] =>
  allNeeds(reading).flatMap(({ value, path }) => {
    if (value.kind !== 'condition' || !value.value) return [];
    const { condition } = value;
    const isKnown = Object.hasOwn(reading.document.conditions ?? {}, condition);
    if (!isKnown || performers.doing(['set'], condition).length > 0) return [];
    return [problem('condition-never-set', path, { condition })];
  });

/** Opening a joint must not end a condition that no operation may set a second time. */
const conditionsCleared = (reading: PlanReading, performers: Performers): readonly Problem[] =>
  [...reading.joints.values()].flatMap(({ key, entry }) =>
    (entry.clears ?? []).flatMap((condition, at) => {
      const setters = performers.doing(['set'], condition).map(({ operation }) => operation);
      const [first] = setters;
      const mayRunAgain = setters.some((each) => each.entry.redo === true || each.entry.repeatable === true);
      if (first === undefined || mayRunAgain) return [];
      const details = { joint: key, condition, operation: first.key };
      return [problem('cleared-for-good', ['joints', key, 'clears', at], details)];
    }),
  );

/** One put in with a tap (ad hoc) has a removing job of its own, and needs no body line. */
const stopgapsBothWays = (reading: PlanReading, performers: Performers): readonly Problem[] =>
  [...reading.stopgaps.values()].flatMap(({ key, entry }) => {
    if (entry.adHoc === true) return [];
    const [placed] = performers.doing(['place'], key);
    const [out] = performers.doing(['out'], key);
    const path = ['stopgaps', key];
    if (placed !== undefined && out === undefined)
      return [problem('stopgap-never-out', path, { stopgap: key, operation: placed.operation.key })];
    if (placed === undefined && out !== undefined)
      return [problem('stopgap-never-placed', path, { stopgap: key, operation: out.operation.key })];
    return [];
  });

const waitsHaveTime = (reading: PlanReading): readonly Problem[] =>
  allNeeds(reading).flatMap(({ value, path }) => {
    if (value.kind !== 'wait') return [];
    const operation = reading.operations.get(value.ref.key);
    if (operation === undefined || operation.entry.wait !== undefined) return [];
    return [problem('wait-without-time', path, { operation: operation.key })];
  });

/** What can't be undone wants a number before it. */
const irreversibleIsMeasured = (reading: PlanReading): readonly Problem[] =>
  [...reading.operations.values()].flatMap((operation) => {
    if (operation.entry.irreversible !== true) return [];
    const isMeasured = checksNamed(operation).some(
      (key) => reading.checks.get(key)?.entry.kind === 'measured',
    );
    if (isMeasured) return [];
    const path = ['operations', operation.key, 'irreversible'];
    return [problem('irreversible-unmeasured', path, { operation: operation.key })];
  });

const checksNamed = ({ needs, body }: ReadOperation): readonly Key[] => [
  ...needs.flatMap(({ value }) => (value.kind === 'bare' ? [value.ref.key] : [])),
  ...body.flatMap(({ value }) => (value.verb === 'check' ? [value.ref.key] : [])),
];
