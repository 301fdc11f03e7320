/** What finishing an operation still lacks, line by line of its body. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { StateKey } from '@/lib/domain/base/vocabulary';
import type { RunRef } from '@/lib/domain/car/joint-rows';
import type { BodyRequirement, CompiledOperation } from '@/lib/domain/plan/compiled';
import { belowLevel, hasPhoto, notClear, unmet } from '@/lib/domain/unmet';
import type { Case } from './case';

export const bodyUnmet = (
  at: Case,
  operation: CompiledOperation,
  run: RunRef,
  lines: readonly BodyRequirement[] = operation.body,
): readonly Refusal[] =>
  lines.flatMap((line) => {
    const refusal = lineUnmet(at, operation, run, line);
    return refusal === null ? [] : [refusal];
  });

const lineUnmet = (
  at: Case,
  operation: CompiledOperation,
  run: RunRef,
  line: BodyRequirement,
): Refusal | null => {
  switch (line.verb) {
    case 'snug':
    case 'final':
      return belowLevel(at.car, at.facts, line.joint, line.verb);
    case 'open':
    case 'retorque':
    case 'recheck':
      return isDoneInRun(at, line.joint, line.verb, run)
        ? line.verb === 'open'
          ? null
          : belowLevel(at.car, at.facts, line.joint, 'final')
        : refuse('joint-work-missing', { joint: line.joint, work: line.verb });
    case 'check':
      return notClear(at.car, line.check);
    case 'out':
      return unmet(at.plan, at.car, at.facts, [{ kind: 'stopgap-out', stopgap: line.stopgap }])[0] ?? null;
    case 'fit':
      return at.car.parts[line.part]?.state === 'fitted'
        ? null
        : refuse('part-not-fitted', { part: line.part });
    case 'photo':
      return hasPhoto(at.car, operation.stateKey, line.slot)
        ? null
        : refuse('photo-missing', { of: operation.stateKey, slot: line.slot });
    case 'place':
    case 'set':
    case 'clear':
      return null;
  }
};

/** These three must have happened in this very run, whatever the joint was before. */
export const isDoneInRun = (
  { car }: Pick<Case, 'car'>,
  joint: StateKey,
  work: 'open' | 'retorque' | 'recheck',
  run: RunRef,
): boolean => {
  const row = car.joints[joint];
  if (row === undefined) return false;
  const isThis = (ref: RunRef | null): boolean => ref?.operation === run.operation && ref.run === run.run;
  if (work === 'open') return isThis(row.opened?.run ?? null);
  const isTorqued = row.marks.some((mark) => mark.level === 'final' && !mark.struck && isThis(mark.run));
  return isTorqued || (work === 'recheck' && row.rechecks.some((each) => !each.struck && isThis(each.run)));
};
