/**
 * Loose ends: every open promise on a car. Something was begun, put in, opened, found or asked, and is not settled;
 * what nobody has touched yet is work to come and no loose end.
 */
import { refuse } from './base/refusals';
import type { Refusal } from './base/refusals';
import { isAtLevel } from './base/vocabulary';
import type { Car } from './car/rows';
import { awayRefusal, notClear, stillPlaced, unfinished } from './unmet';
import type { Unsettled, UnsettledJoint } from './unsettled';

export const LOOSE_END_KINDS = [
  'hold',
  'finding',
  'change',
  'doubt',
  'joint',
  'check',
  'operation',
  'stopgap',
  'part',
] as const;
export type LooseEndKind = (typeof LOOSE_END_KINDS)[number];

export interface LooseEnd {
  readonly kind: LooseEndKind;
  readonly key: string;
  readonly refusal: Refusal;
  /** Index of the stage by whose gate it must be settled; null = by delivery. */
  readonly due: number | null;
}

/** All of them, the gravest kinds first. */
export const looseEnds = (car: Car, open: Unsettled): readonly LooseEnd[] => {
  const found: LooseEnd[] = [];
  const add = (kind: LooseEndKind, key: string, refusal: Refusal, due: number | null): void => {
    found.push({ kind, key, refusal, due });
  };
  for (const [key, hold] of Object.entries(car.holds))
    if (hold.releasedBy === null)
      add('hold', key, refuse('hold-stands', { hold: key, scope: hold.scope, reason: hold.reason }), null);
  for (const [key, row] of Object.entries(car.findings))
    if (row.state === 'undecided')
      add('finding', key, refuse('finding-undecided', { finding: key, about: row.about.key }), row.due);
    else if (row.state === 'decided')
      add(
        'finding',
        key,
        refuse('finding-not-closed', {
          finding: key,
          about: row.about.key,
          disposition: row.disposition ?? 'rework',
        }),
        row.workDue,
      );
  for (const [key, row] of Object.entries(car.changes))
    if (row.state === 'asked') add('change', key, refuse('change-undecided', { change: key }), row.due);
  openJoints(open.joints, add);
  for (const { check, row } of open.checks) {
    if (row === undefined) continue;
    const refusal = notClear(car, check.stateKey);
    if (refusal !== null) add('check', check.stateKey, refusal, check.due);
  }
  for (const { operation, row } of open.operations) {
    const refusal = row === undefined ? null : unfinished(car, operation.stateKey);
    if (refusal !== null) add('operation', operation.stateKey, refusal, operation.due);
  }
  for (const [key, row] of Object.entries(car.stopgaps))
    if (row.removed < row.placed) add('stopgap', key, stillPlaced(key, row), row.outBy);
  for (const [key, row] of Object.entries(car.parts))
    if (row.state === 'taken' || (row.state === 'absent' && row.piece > 1))
      add('part', key, refuse('part-owed', { part: key, takenFor: row.takenFor ?? '' }), null);
    else if (row.state === 'out' || row.state === 'back') add('part', key, awayRefusal(car, key), null);
  return found;
};

type Add = (kind: LooseEndKind, key: string, refusal: Refusal, due: number | null) => void;

const openJoints = (joints: readonly UnsettledJoint[], add: Add): void => {
  for (const { joint, row, doubts } of joints) {
    if (row === undefined) continue;
    const key = joint.stateKey;
    const { level } = row;
    const isTouched = row.marks.length > 0 || row.opened !== null;
    if (isTouched && !isAtLevel(level, joint.dueLevel))
      add(
        'joint',
        key,
        refuse('joint-below-level', { joint: key, level, wanted: joint.dueLevel }),
        joint.due,
      );
    if (!isAtLevel(level, 'final') && row.doubts.length === 0) continue;
    for (const { cause, remedy, because } of doubts)
      add('doubt', key, refuse('joint-in-doubt', { joint: key, cause, remedy, because }), joint.due);
  }
};
