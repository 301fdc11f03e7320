/** The thread that solves: gets one problem, sends back its answer. Started by `in-worker.ts`. */
import { parentPort, workerData } from 'node:worker_threads';
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
    case 'cutting-lists': {
      const answers: CuttingAnswer[] = [];
      for (const problem of task.problems) answers.push(await solveCutting(problem, task.seconds));
      return answers;
    }
  }
};

// A worker that is imported by mistake has no parent and does nothing.
if (parentPort !== null) parentPort.postMessage(await solved(workerData as SolveTask));
