/** A plan's text: read and checked, and kept under its hash where that is asked. `release-plan` does the rest. */
import { z } from 'zod';
import { forLeads, setUpRefused } from '@/lib/server/auth/set-up-door';
import { database } from '@/lib/server/database';
import { keepPlan } from '@/lib/server/load/plan';
import type { PlanDocument } from '@/lib/domain/plan/document';
import { readPlan } from '@/lib/wire/read-plan';
import type { PlanAnswer, PlanLook } from '@/lib/wire/set-up';

export const dynamic = 'force-dynamic';

/** A plan of 1 MB, with every sign in it escaped, and what stands around it. */
const MOST_BYTES = 2_100_000;
/** A file of something else altogether is wrong in every line. */
const MOST_PROBLEMS = 200;

const schema = z.strictObject({ text: z.string(), keep: z.boolean() });

export const POST = (request: Request): Promise<Response> =>
  forLeads(request, schema, MOST_BYTES, async ({ text, keep }) => {
    const { document, problems } = readPlan(text);
    const isSound = document !== null && problems.every(({ rank }) => rank !== 'error');
    const answer: PlanAnswer = {
      outcome: 'read',
      look: document === null ? null : lookOf(document),
      problems: problems.slice(0, MOST_PROBLEMS),
      hash: null,
    };
    if (!keep) return Response.json(answer);
    if (!isSound)
      return setUpRefused({
        outcome: 'refused',
        says: 'A plan with errors can’t be finished, so no car is begun on it.',
      });
    const kept = await keepPlan(database(), document);
    return 'taken' in kept
      ? setUpRefused({
          outcome: 'refused',
          says: `${kept.taken} is there already and says something else. Give this one another revision.`,
        })
      : Response.json({ ...answer, hash: kept.hash } satisfies PlanAnswer);
  });

const lookOf = ({ plan, revision, stages, operations, joints, checks, items }: PlanDocument): PlanLook => {
  const count = (section: object | undefined): number => Object.keys(section ?? {}).length;
  return {
    model: plan,
    revision,
    stages: count(stages),
    operations: count(operations),
    joints: count(joints),
    checks: count(checks),
    items: count(items),
  };
};
