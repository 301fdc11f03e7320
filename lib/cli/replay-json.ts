/** A played day as one JSON document, for other programs. */
import type { Refusal } from '@/lib/domain/base/refusals';
import { sentence } from '@/lib/domain/base/sentences';
import type { NameOf } from '@/lib/domain/base/sentences';
import { ID_USED } from './play-lines';
import type { AssessedCar, PlayedLine, Verdict } from './play-lines';
import { idUsedSentence } from './print-verdict';

interface SaidRefusal {
  readonly code: string;
  readonly details: Refusal['details'] | { readonly first: number };
  readonly soft: boolean;
  readonly sentence: string;
  readonly under: readonly SaidRefusal[];
}

export const lineAsJson = (played: PlayedLine, nameOf: NameOf): unknown => {
  const { read, verdict, twinOf, isAsExpected } = played;
  const { now, by, command } = read.line;
  return {
    line: read.number,
    now,
    by,
    command,
    verdict: verdict.kind === 'accepted' ? 'accepted' : 'refused',
    twinOf,
    expected: read.expect,
    isAsExpected,
    events: verdict.kind === 'accepted' ? verdict.events : [],
    refusals: refusalsOf(verdict, command.id, nameOf),
  };
};

const refusalsOf = (verdict: Verdict, id: string, nameOf: NameOf): readonly SaidRefusal[] => {
  switch (verdict.kind) {
    case 'accepted':
      return [];
    case 'refused':
      return verdict.refusals.map((refusal) => said(refusal, nameOf));
    case 'id-used': {
      const { first } = verdict;
      const text = idUsedSentence(id, first);
      return [{ code: ID_USED, details: { first }, soft: false, sentence: text, under: [] }];
    }
  }
};

const said = (refusal: Refusal, nameOf: NameOf): SaidRefusal => ({
  code: refusal.code,
  details: refusal.details,
  soft: refusal.soft ?? false,
  sentence: sentence(refusal, nameOf),
  under: (refusal.under ?? []).map((each) => said(each, nameOf)),
});

export const carAsJson = ({ car, plan, assessment }: AssessedCar, nameOf: NameOf): unknown => ({
  ...assessment,
  chassis: car.chassis,
  delivered: car.delivered,
  gate: { ...assessment.gate, unmet: assessment.gate.unmet.map((refusal) => said(refusal, nameOf)) },
  looseEnds: assessment.looseEnds.map((end) => ({
    ...end,
    refusal: said(end.refusal, nameOf),
    due: end.due === null ? null : (plan.stages[end.due]?.key ?? null),
  })),
  jobs: assessment.jobs.map((job) => ({
    ...job,
    due: plan.stages[job.due]?.key ?? null,
    waitsFor: job.waitsFor.map((refusal) => said(refusal, nameOf)),
  })),
});
