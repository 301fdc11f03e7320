/** Refusals as lines for a screen, made on the server, where the plan's names are. */
import type { Refusal } from '@/lib/domain/base/refusals';
import { sentence } from '@/lib/domain/base/sentences';
import type { Facts } from '@/lib/domain/facts';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { namesOf, withPeople } from './names';
import { saidLine } from './said-line';
import type { RefusalLine } from './said-line';

export type { RefusalLine };

/** One refusal on one car, with what stands under it; with plan and people, both are called by their names. */
export const refusalLine = (
  car: string,
  refusal: Refusal,
  plan?: { readonly document: PlanDocument } | null,
  people: Facts['people'] = {},
): RefusalLine => {
  const inPlan = plan ? namesOf(plan.document) : noNames;
  const line = saidLine(car, refusal, sentence(refusal, withPeople(inPlan, people)));
  return refusal.under === undefined
    ? line
    : { ...line, under: refusal.under.map((each) => refusalLine(car, each, plan, people)) };
};

const noNames = (): null => null;
