/**
 * Cut plans for a server: solved beside it, one thread after the other, and kept by their problem, so that a page that is asked
 * for again solves nothing.
 */
import type { CuttingProblem } from '@/lib/domain/shop/cutting';
import type { CuttingAnswer } from './cutting/solve';
import { solveInWorker } from './in-worker';

/** Oldest first: a map keeps the order in which its keys came. */
const kept = new Map<string, Promise<CuttingAnswer>>();
const MOST_KEPT = 200;

let before: Promise<unknown> = Promise.resolve();

/**
 * The answer to each, in their order; `seconds` is for all that are solved anew. Problems that nobody has asked yet go to one thread
 * together, which loads the solver once.
 */
export const cuttingAnswers = (
  problems: readonly CuttingProblem[],
  seconds: number,
): readonly Promise<CuttingAnswer>[] => {
  const keys = problems.map((problem) => JSON.stringify(problem));
  const fresh = problems.filter((_, at) => !kept.has(keys[at] ?? ''));
  const solving = fresh.length === 0 ? null : inTurn(fresh, seconds);
  return problems.map((problem, at) => {
    const key = keys[at] ?? '';
    const place = fresh.indexOf(problem);
    const answer = kept.get(key) ?? solved(solving, place);
    // One that was just asked for goes last.
    kept.delete(key);
    kept.set(key, answer);
    if (place >= 0) answer.catch(() => kept.delete(key));
    for (const [oldest] of kept) {
      if (kept.size <= MOST_KEPT) break;
      kept.delete(oldest);
    }
    return answer;
  });
};

const inTurn = (problems: readonly CuttingProblem[], seconds: number): Promise<readonly CuttingAnswer[]> => {
  const solving = before.then(() => solveInWorker({ kind: 'cutting-lists', problems, seconds }));
  before = solving.catch(() => undefined);
  return solving;
};

const solved = async (
  solving: Promise<readonly CuttingAnswer[]> | null,
  place: number,
): Promise<CuttingAnswer> => {
  const answer = (await solving)?.[place];
  if (answer === undefined) throw new Error('The solver left a list out.');
  return answer;
};
