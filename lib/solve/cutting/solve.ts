/**
 * The cut plan: fewest new lengths, then least length taken, each proved where time allows. What is
 * handed out has passed the rulebook’s own check.
 */
import { cuttingFaults, cuttingScore, fewestByMaterial, tooLong } from '@/lib/domain/shop/cutting';
import type { CuttingPlan, CuttingProblem, CuttingScore } from '@/lib/domain/shop/cutting';
import { highs } from '../highs';
import { bestFit } from './fill';
import { costOf, leastOf } from './least';
import type { Aim } from './least';
import type { Deadline, Instance, Pattern, Question } from './instance';
import { translate } from './translate';

export interface CuttingAnswer {
  /** Null where no plan was found: too little stock, or too little time. */
  readonly plan: CuttingPlan | null;
  readonly score: CuttingScore | null;
  /** No plan has fewer; of those that have as few, none takes less. */
  readonly bounds: { readonly newLengths: number; readonly taken: number };
  /** Of which the plan is proved to have the least. */
  readonly proved: { readonly newLengths: boolean; readonly taken: boolean };
  readonly seconds: number;
}

/** Directly, in this thread: nothing else runs meanwhile. */
export const solveCutting = async (problem: CuttingProblem, seconds: number): Promise<CuttingAnswer> => {
  const begin = performance.now();
  const solver = await highs();
  if (tooLong(problem).length > 0) return withoutPlan(begin);
  const { instance, aims, toPlan } = translate(problem);
  const { patterns, bounds } =
    instance.widths.length === 0
      ? { patterns: [], bounds: [0, 0] }
      : inTurn({ solver, instance, aims, deadline: begin + seconds * 1000 });
  if (patterns === null) return withoutPlan(begin);
  const plan = toPlan(patterns);
  const faults = cuttingFaults(problem, plan);
  if (faults.length > 0) throw new Error(`The solver’s plan can’t be cut: ${JSON.stringify(faults)}`);
  const score = cuttingScore(problem, plan);
  const [lengths = 0, taken = 0] = bounds;
  const newLengths = Math.max(lengths, fewestByMaterial(problem));
  const isFewest = score.newLengths === newLengths;
  return {
    plan,
    score,
    bounds: { newLengths, taken },
    proved: { newLengths: isFewest, taken: isFewest && score.taken === taken },
    seconds: (performance.now() - begin) / 1000,
  };
};

const withoutPlan = (begin: number): CuttingAnswer => ({
  plan: null,
  score: null,
  bounds: { newLengths: 0, taken: 0 },
  proved: { newLengths: false, taken: false },
  seconds: (performance.now() - begin) / 1000,
});

interface Work {
  readonly solver: Awaited<ReturnType<typeof highs>>;
  readonly instance: Instance;
  readonly aims: readonly Aim[];
  readonly deadline: Deadline;
}

/** One aim after the other; what one has reached is a limit for those behind it. */
const inTurn = ({ solver, instance, aims, deadline }: Work) => {
  const pool: Pattern[] = [];
  const reached: number[] = [];
  const bounds: number[] = [];
  let patterns = bestFit(
    instance,
    instance.demand,
    instance.kinds.map(({ most }) => most),
  );
  for (const [turn, aim] of aims.entries()) {
    const before = aims.slice(0, turn);
    const limits = before.map(({ costs }) => costs);
    if (patterns !== null && isSettled(instance, before, aim)) {
      reached.push(costOf(aim, patterns));
      bounds.push(costOf(aim, patterns));
      continue;
    }
    const question = questionOf(instance, aims[0], patterns, reached);
    const least = leastOf({ solver, instance, aim, limits, question, begun: patterns, pool, deadline });
    if (least.patterns === null) return { patterns: null, bounds };
    patterns = least.patterns;
    reached.push(least.value);
    bounds.push(least.bound);
  }
  return { patterns, bounds };
};

/** With one kind of stock, the number of bins decides everything else. */
const isSettled = ({ kinds }: Instance, before: readonly Aim[], { costs }: Aim): boolean =>
  costs.every((cost) => cost === 0) ||
  (kinds.length === 1 && before.some((earlier) => earlier.costs.every((cost) => cost > 0)));

const questionOf = (
  { demand, kinds }: Instance,
  first: Aim | undefined,
  patterns: readonly Pattern[] | null,
  reached: readonly number[],
): Question => {
  const known = patterns === null || first === undefined ? Infinity : costOf(first, patterns);
  return {
    demand,
    least: kinds.map(() => 0),
    most: kinds.map(({ most }, kind) => (first?.costs[kind] === 1 ? Math.min(most, known) : most)),
    limits: reached,
  };
};
