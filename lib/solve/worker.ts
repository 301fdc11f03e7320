/** The thread that solves: gets one problem, sends back its answer. Started by `in-worker.ts`. */
import { parentPort, workerData } from 'node:worker_threads';
import type { CuttingProblem } from '@/lib/domain/shop/cutting';
import { solveCutting } from './cutting/solve';
import type { CuttingAnswer } from './cutting/solve';
import type { SolveTask } from './in-worker';
import { pinCosts } from './order/pin-costs';
import { solveOrder } from './order/solve';

const solved = async (task: SolveTask): Promise<unknown> => {
  switch (task.kind) {
    case 'cutting':
      return solveCutting(task.problem, task.seconds);
    case 'order':
      return solveOrder(task.problem, task.seconds);
    case 'pins':
      return pinCosts(task.problem, task.withPins, task.seconds);
    case 'cutting-lists':
      return inTurn(task.problems, task.seconds);
  }
};

/** Each may take its share of the time that is left, so that what the easy ones don't need is there for the hard ones. */
const inTurn = async (
  problems: readonly CuttingProblem[],
  seconds: number,
): Promise<readonly CuttingAnswer[]> => {
  const end = performance.now() + seconds * 1000;
  const answers: CuttingAnswer[] = [];
  for (const [done, problem] of problems.entries()) {
    const left = Math.max(0, end - performance.now()) / 1000;
    answers.push(await solveCutting(problem, left / (problems.length - done)));
  }
  return answers;
};

// A worker that is imported by mistake has no parent and does nothing.
if (parentPort !== null) parentPort.postMessage(await solved(workerData as SolveTask));
