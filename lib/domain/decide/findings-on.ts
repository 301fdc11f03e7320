/** Open findings that stand in the way of work. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { Car, FindingRow } from '@/lib/domain/car/rows';
import type { CompiledOperation } from '@/lib/domain/plan/compiled';
import { planKey } from '@/lib/domain/plan/positions';
import type { Case } from './case';

/** An open finding on a part blocks fitting it, however far away the gate is. */
export const findingsOnPart = ({ car }: Pick<Case, 'car'>, part: Key): readonly Refusal[] =>
  onParts(car, (named) => named === part);

/**
 * The same for every part that an operation fits. Once it is decided, the work that holds the look which closes it may
 * begin: that look is part of it, and only the fitting waits.
 */
export const findingsOnParts = (
  { car }: Pick<Case, 'car'>,
  operation: CompiledOperation,
): readonly Refusal[] =>
  onParts(car, (named, row) => operation.parts.includes(named) && !isLookedAtIn(operation, row));

const isLookedAtIn = ({ body }: CompiledOperation, { state, check }: FindingRow): boolean =>
  state === 'decided' && body.some((line) => line.verb === 'check' && line.check === check?.key);

const onParts = (car: Car, isMeant: (part: Key, row: FindingRow) => boolean): readonly Refusal[] => {
  const found: Refusal[] = [];
  for (const finding in car.findings) {
    const row = car.findings[finding];
    if (row === undefined || row.state === 'closed' || row.about.kind !== 'part') continue;
    const part = planKey(row.about.key);
    // The finding is about the piece that is gone; the one that came for it is judged by its own checks.
    if (row.replaced && car.parts[part]?.state !== 'absent') continue;
    if (isMeant(part, row)) found.push(refuse('finding-on-part', { finding, part }));
  }
  return found;
};
