/**
 * The plan checker: everything that can be said against a plan without running it, all at once.
 *
 * Its proof that the plan can be finished belongs here too, as one more list beside these: a complete order of
 * operations under every combination of options, or the smallest set of statements that can't all hold (each
 * condition set before it is needed and not cleared in between, nothing covered before it is verified, nothing
 * disturbed after its last gate without a retorque). It can count on what these lists have found to be sound.
 */
import { checkCutting } from './check-cutting';
import { checkCycles } from './check-cycles';
import { checkGates } from './check-gates';
import { checkJoints } from './check-joints';
import { performersOf } from './check-performers';
import { readElements } from './check-reading';
import { checkReferences } from './check-references';
import { checkTexts } from './check-texts';
import { checkWork } from './check-work';
import type { PlanDocument } from './document';
import type { Problem } from './problem';

/** Every problem of a plan, in no particular order; a plan without an error may be released. */
export const checkPlan = (document: PlanDocument): Problem[] => {
  const reading = readElements(document);
  const performers = performersOf(reading);
  return [
    ...reading.unreadable,
    ...checkTexts(document),
    ...checkReferences(reading),
    ...checkJoints(reading, performers),
    ...checkWork(reading, performers),
    ...checkGates(reading, performers),
    ...checkCycles(reading),
    ...checkCutting(document),
  ];
};
