/** Open findings that stand in the way of work. */
import { refuse } from '@/lib/domain/base/refusals';
import type { Refusal } from '@/lib/domain/base/refusals';
import type { Key } from '@/lib/domain/base/vocabulary';
import type { CompiledOperation } from '@/lib/domain/plan/compiled';
import { planKey } from '@/lib/domain/plan/positions';
import type { Case } from './case';

/** An open finding on a part blocks fitting it, however far away the gate is. */
export const findingsOnPart = ({ car }: Pick<Case, 'car'>, part: Key): readonly Refusal[] =>
  Object.entries(car.findings).flatMap(([finding, row]) =>
    row.state !== 'closed' && row.about.kind === 'part' && planKey(row.about.key) === part
      ? [refuse('finding-on-part', { finding, part })]
      : [],
  );

export const findingsOnParts = (at: Pick<Case, 'car'>, operation: CompiledOperation): readonly Refusal[] =>
  operation.body.flatMap((line) => (line.verb === 'fit' ? findingsOnPart(at, line.part) : []));
