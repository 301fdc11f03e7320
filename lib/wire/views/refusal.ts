/** Refusals as lines for a screen, made on the server, where the plan's names are. */
import type { Refusal } from '@/lib/domain/base/refusals';
import { sentence } from '@/lib/domain/base/sentences';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { namesOf } from './names';
import { saidLine } from './said-line';
import type { RefusalLine } from './said-line';

export type { RefusalLine };

/** One refusal on one car, with what stands under it; with the plan, things are called by their names. */
export const refusalLine = (
  car: string,
  refusal: Refusal,
  plan?: { readonly document: PlanDocument } | null,
): RefusalLine => {
  const line = saidLine(car, refusal, sentence(refusal, plan ? namesOf(plan.document) : noNames));
  return refusal.under === undefined
    ? line
    : { ...line, under: refusal.under.map((each) => refusalLine(car, each, plan)) };
};

const noNames = (): null => null;
